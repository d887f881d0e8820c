/** The sentences of the design. */
import type { FabricFinding } from '../fabric/index.ts';
import { decimal, percent } from './figures.ts';
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
    text: `${n} layers are bridged; their timbers were taken to cross each other at random.`,
  }),
  'combined-method-out-of-range': ({ ratio, limit }) => ({
    text: `The two limits of the resistance differ by a factor of ${decimal(ratio, 2)}, above the ${limit} of ISO 6946: take this U-value with caution.`,
    remedy: 'Have it worked out by a two-dimensional calculation and give the result as "uValue".',
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
    text: `A slab on ground by ISO 13370, with walls of ${Math.round(wallThickness * 1000)} mm and ground of ${groundConductivity} W/(mK) assumed.`,
  }),
  'bridges-not-stated': () => ({
    text: 'No thermal bridges are stated, so the designed loss has none.',
    remedy: 'Give "thermalBridges".',
  }),
  'ventilation-not-stated': () => ({
    text: 'No ventilation is stated, so the designed loss has none.',
    remedy: 'Give "ventilation".',
  }),
  'heat-recovery-on-leakage': ({ heatRecovery }) => ({
    text: `Heat recovery of ${percent(heatRecovery)} was taken on air that may leak in beside the unit: the ventilation loss may be too low.`,
  }),
  'partition-without-layers': ({ name }) => ({ text: `“${name}” has no layers and adds no heat capacity.` }),
  'mass-unknown': ({ elements, arealHeatCapacity, relativeSd }) => ({
    text: `The mass of ${list(elements)} is not known; ${Math.round(arealHeatCapacity / 1000)} kJ/(m²K) was taken, give or take ${percent(relativeSd)}.`,
    remedy: 'Give their layers instead of a U-value.',
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
