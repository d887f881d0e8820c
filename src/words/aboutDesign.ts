/** The sentences of the design. */
import type { FabricFinding } from '../fabric/index.ts';
import { area, decimal, percent, transmittance } from './figures.ts';
import { list, type SentencesFor } from './sentence.ts';

export const aboutDesign: SentencesFor<FabricFinding> = {
  'openings-assumed': ({ opening }) => ({
    text: `The openings of this slightly ventilated space are not stated; ${Math.round(opening * 1e6)} mm² per metre was taken.`,
    remedy: 'Give "openingMm2PerM".',
  }),
  'air-layer-thick': ({ thickness, taken }) => ({
    text: `An air space of ${Math.round(thickness * 1000)} mm is thicker than ISO 6946 covers; it counts as ${Math.round(taken * 1000)} mm.`,
  }),
  'bridges-cross': ({ count: n }) => ({
    text: `${n} layers are bridged by members of their own, which were taken to cross each other.`,
    remedy: 'Where the same members go on through the next layer, give its bridge "continues": true.',
  }),
  'combined-method-out-of-range': ({ ratio, limit }) => ({
    text: `The two limits of the resistance differ by a factor of ${decimal(ratio, 2)}; above ${limit} ISO 6946 allows no U-value by this method.`,
    remedy:
      'Have it worked out by a two-dimensional calculation and give the result as "uValue" beside the layers.',
  }),
  'metal-bridges-insulation': ({ name, conductivity }) => ({
    text: `“${name}” with ${significant(conductivity)} W/(mK) is metal through insulation, for which ISO 6946 allows no U-value by this method.`,
    remedy:
      'Have it worked out by a two-dimensional calculation and give the result as "uValue" beside the layers. Single fasteners go under "fasteners" instead.',
  }),
  'no-transmittance': ({ elements }) => ({
    text: `${list(elements)} ${elements.length === 1 ? 'has' : 'have'} no U-value, so the house has no designed heat loss to set a measurement beside.`,
    remedy: 'Give "uValue" beside the layers; the reason stands with each element.',
  }),
  'stated-beside-layers': ({ stated, byLayers }) => ({
    text: `The stated U-value of ${transmittance(stated)} was taken; ${byLayers === null ? 'its layers give none.' : `its layers come to ${transmittance(byLayers)}.`}`,
  }),
  'thickness-doubtful': ({ thickness, likely, where }) => ({
    text: `${significant(thickness * 1000)} mm is very little for this; ${significant(likely * 1000)} mm was likely meant.`,
    remedy: `"${where.key?.split('.').at(-1) ?? 'thicknessMm'}" is in millimetres, not metres.`,
  }),
  'conductivity-doubtful': ({ conductivity, likely }) => ({
    text: `A conductivity of ${significant(conductivity)} W/(mK) is hardly possible here; ${significant(likely)} was likely meant.`,
    remedy: '"conductivityWmK" is in W/(mK): insulation has about 0.02 to 0.05, timber 0.13, brick 0.8.',
  }),
  'density-doubtful': ({ density, likely }) => ({
    text: `A density of ${significant(density)} kg/m³ is hardly possible here; ${significant(likely)} was likely meant.`,
    remedy: '"densityKgM3" is in kg/m³.',
  }),
  'specific-heat-doubtful': ({ specificHeat, likely }) => ({
    text: `A specific heat of ${significant(specificHeat)} J/(kgK) is hardly possible; ${significant(likely)} was likely meant.`,
    remedy: '"specificHeatJkgK" is in J/(kgK), not kJ.',
  }),
  'mass-changed-over': ({ density, specificHeat }) => ({
    text: `A density of ${significant(density)} kg/m³ with a specific heat of ${significant(specificHeat)} J/(kgK) looks changed over: ${significant(specificHeat)} kg/m³ and ${significant(density)} J/(kgK) was likely meant.`,
    remedy: 'Exchange "densityKgM3" and "specificHeatJkgK".',
  }),
  'transmittance-doubtful': ({ transmittance: value, likely }) => ({
    text: `No building element has a U-value of ${significant(value)} W/(m²K); ${significant(likely)} was likely meant.`,
    remedy: 'Check "uValue".',
  }),
  'fasteners-without-thickness': () => ({
    text: 'The fasteners go through a layer without a thickness and were left out.',
    remedy: 'Give its "thicknessMm".',
  }),
  'layer-without-mass': () => ({
    text: 'This has no density or specific heat, so it stores nothing in the heat capacity.',
    remedy: 'Give "densityKgM3" and "specificHeatJkgK".',
  }),
  'ground-without-perimeter': () => ({
    text: 'Layers on the ground without the exposed perimeter: the ground itself was left out, so this loss is too high.',
    remedy: 'Give "perimeterM".',
  }),
  'ground-assumed': ({ wallThickness, groundConductivity }) => ({
    text: `A floor on the ground by ISO 13370, with walls of ${Math.round(wallThickness * 1000)} mm and ground of ${groundConductivity} W/(mK), of which not both were stated.`,
    remedy: 'Give "wallThicknessMm" and "soil".',
  }),
  'underfloor-assumed': ({ keys }) => ({
    text: 'Usual values were taken for part of the space under this floor.',
    remedy: `Give ${keys.map((key) => `"${key}"`).join(', ')} under "underfloor".`,
  }),
  'void-factor-assumed': ({ factor }) => ({
    text: `The unheated space beyond was taken to be nearly as cold as outdoors: ${decimal(factor, 1)} of the difference lies over this element.`,
    remedy: 'Give "temperatureFactor" if you know better.',
  }),
  'neighbour-unknown': ({ elements }) => ({
    text: `How warm it is beyond ${list(elements)} is neither logged nor stated, so heat to or from there is not known.`,
    remedy:
      'Hang a logger there, or give its "temperatureC" and "plusMinusK" under "conditions"."neighbour".',
  }),
  'neighbour-range-assumed': ({ plusMinus }) => ({
    text: `How far the neighbour's temperature may be off is not stated; ${significant(plusMinus)} K either way was taken.`,
    remedy: 'Give "plusMinusK" beside its "temperatureC".',
  }),
  'flow-to-neighbour-unknown': ({ elements }) => ({
    text: `${list(elements)} ${elements.length === 1 ? 'has' : 'have'} no U-value, so what flows to the neighbour is not known. The house's heat loss does not count it.`,
    remedy: 'Give "uValue" beside the layers; the reason stands with each element.',
  }),
  'shell-too-small': ({ area: given, least, volume }) => ({
    text: `The elements come to ${area(given)}, but no shape around ${significant(volume)} m³ has less than ${area(least)}.`,
    remedy:
      'Check "volumeM3" and the areas. Is an element missing? Walls, floors and ceilings to heated rooms belong here too, with "to": "adjacent".',
  }),
  'shell-too-large': ({ area: given, volume }) => ({
    text: `The elements come to ${area(given)}, very much for a volume of ${significant(volume)} m³.`,
    remedy: 'Check "volumeM3" and the areas: is a digit too many, or an element listed twice?',
  }),
  'height-doubtful': ({ height }) => ({
    text: `The volume over the floor area makes rooms ${significant(height)} m high.`,
    remedy: 'Check "volumeM3" in cubic metres, and "floorAreaM2" over all storeys in square metres.',
  }),
  'ground-floor-too-large': ({ area: given, floorArea }) => ({
    text: `The floor on the ground has ${area(given)}, more than the house's whole floor area of ${area(floorArea)}.`,
    remedy: 'Check both: "floorAreaM2" is over all storeys.',
  }),
  'roof-smaller-than-floor': ({ roof, floor }) => ({
    text: `Roofs and ceilings come to ${area(roof)}, but the floor below them has ${area(floor)}.`,
    remedy:
      'Check the areas. Is part of the roof missing, or a ceiling to heated rooms above ("to": "adjacent")?',
  }),
  'mostly-glass': ({ glass, area: given }) => ({
    text: `Of ${area(given)} in all, ${area(glass)} is glass.`,
    remedy: 'If this is no glass house, check the areas of what has a "gValue".',
  }),
  'perimeter-doubtful': ({ perimeter, area: given }) => ({
    text: `A perimeter of ${significant(perimeter)} m around ${area(given)} leaves a floor less than a metre wide.`,
    remedy: '"perimeterM" is the exposed edge of the floor, in metres.',
  }),
  'bridges-not-stated': () => ({
    text: 'No thermal bridges are stated, so the designed loss has none.',
    remedy: 'Give "thermalBridges".',
  }),
  'junctions-by-default': ({ kinds }) => ({
    text: `Default values were taken for ${list(kinds.map((kind) => kind.replaceAll('-', ' ')))}: they lie high on purpose, and a careful detail has about half.`,
    remedy: 'Give their "psiWmK" from your details.',
  }),
  'leakage-by-divisor': ({ divisor, low, high }) => ({
    text: `Everyday leakage is that at 50 Pa over ${significant(divisor)}, a rule of thumb: anything from ${significant(low)} to ${significant(high)} occurs.`,
  }),
  'ventilation-not-stated': () => ({
    text: 'No ventilation is stated, so the designed loss has none.',
    remedy: 'Give "ventilation".',
  }),
  'heat-recovery-on-leakage': ({ heatRecovery }) => ({
    text: `Heat recovery of ${percent(heatRecovery)} was taken on air that may leak in beside the unit: the ventilation loss may be too low.`,
  }),
  'partition-without-layers': ({ name }) => ({ text: `“${name}” has no layers and adds no heat capacity.` }),
  'mass-by-class': ({ elements, relativeSd }) => ({
    text: `What ${list(elements)} ${elements.length === 1 ? 'stores' : 'store'} is by the stated class of ISO 52016-1, give or take ${percent(relativeSd)}.`,
    remedy: 'Give the layers to know it better.',
  }),
  'mass-unknown': ({ elements, arealHeatCapacity, relativeSd }) => ({
    text: `The mass of ${list(elements)} is not known; ${Math.round(arealHeatCapacity / 1000)} kJ/(m²K) was taken, give or take ${percent(relativeSd)}.`,
    remedy: 'Give their layers instead of a U-value, or a "massClass".',
  }),
  'furniture-left-out': () => ({
    text: 'Without the floor area, furniture and air are not in the heat capacity.',
    remedy: 'Give "floorAreaM2".',
  }),
  'heat-capacity-by-class': ({ arealHeatCapacity, relativeSd }) => ({
    text: `No layers are known: the heat capacity is the “medium” class of ISO 13790, ${Math.round(arealHeatCapacity / 1000)} kJ/K per m² of floor, give or take ${percent(relativeSd)}.`,
    remedy: 'Give the layers of the elements, or "heatCapacity".',
  }),
  'heat-capacity-unknown': () => ({
    text: 'Neither layers nor a floor area are known, so there is no heat capacity and no watts from cooling alone.',
    remedy: 'Give "floorAreaM2", or the layers of the elements.',
  }),
};

/** Three digits, as a person would write them. */
const significant = (value: number) => String(Number(value.toPrecision(3)));
