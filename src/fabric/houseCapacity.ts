/** Heat capacity of the whole house over 24 hours, and how sure it is. */
import { sum } from 'simple-statistics';
import type { House, MassClass, Partition } from '../house.ts';
import type { ElementDesign } from './element.ts';
import { type FabricFinding, within } from './finding.ts';
import { buildUpFrom, statedHeatCapacity } from './fromHouse.ts';
import { periodicResponse } from './heatCapacity.ts';
import { classHeatCapacities, elementClassHeatCapacities, sdChosenClass } from './massClasses.ts';
import { surfacesOf } from './surfaces.ts';

export interface HouseCapacity {
  /** [J/K]; null when nothing is known */
  readonly heatCapacity: number | null;
  /** One standard deviation, relative [–]; null with the capacity. */
  readonly heatCapacitySd: number | null;
  readonly findings: readonly FabricFinding[];
}

/** Furniture and air, per floor area [J/(m²K)]. ISO 52016-1:2017, default; from memory, to be confirmed. */
const furnitureAndAir = 10e3;
/** The class of a house of which nothing is known. */
const anyClass = 'medium';
/** Of an opaque element of which nothing is known. */
const unknownMass = elementClassHeatCapacities['very light'];

/** Relative standard deviations [–] of a capacity by each way. PRACTICE. */
const sdStated = 0.25;
const sdLayers = 0.15;
const sdUnknownMass = 0.6;
const sdAnyClass = 0.35;

/**
 * Heat capacity of the house: as stated, else from the layers of its elements and partitions and the classes of
 * elements without, else by the class of the whole.
 * Elements to a neighbour count, since their inside face is as warm as any.
 *
 * @see ISO 13786:2017 for κ; ISO 52016-1:2017 and ISO 13790:2008 for what no layer tells
 */
export function houseCapacity(house: House, elements: readonly ElementDesign[]): HouseCapacity {
  const stated = statedHeatCapacity(house);
  if (stated !== null) return { heatCapacity: stated, heatCapacitySd: sdStated, findings: [] };
  if (house.heatCapacity?.class !== undefined) return byClass(house, house.heatCapacity.class);
  const partitions = (house.partitions ?? []).map(partitionCapacity);
  const inPartitions = sum(partitions.map((it) => it.heatCapacity));
  const massKnown =
    inPartitions > 0 || elements.some((it) => insideCapacity(it) > 0 || it.massClass !== null);
  const rest = massKnown ? byLayers(house, elements, inPartitions) : byClass(house);
  return { ...rest, findings: [...partitions.flatMap((it) => it.findings), ...rest.findings] };
}

function byLayers(house: House, elements: readonly ElementDesign[], inPartitions: number): HouseCapacity {
  const without = elements.filter((it) => insideCapacity(it) === 0);
  const classed = without.filter((it) => it.massClass !== null);
  const unknown = without.filter((it) => it.massClass === null && !it.glazed);
  const byClasses = sum(classed.map(classCapacity));
  const guessed = unknownMass * sum(unknown.map((it) => it.area));
  const known = sum(elements.map(insideCapacity)) + inPartitions + furnitureAndAir * (house.floorAreaM2 ?? 0);
  const heatCapacity = known + byClasses + guessed;
  const findings: FabricFinding[] = [];
  if (classed.length > 0)
    findings.push({
      code: 'mass-by-class',
      elements: classed.map((it) => it.name),
      relativeSd: sdChosenClass,
      where: { key: 'elements' },
    });
  if (unknown.length > 0)
    findings.push({
      code: 'mass-unknown',
      elements: unknown.map((it) => it.name),
      arealHeatCapacity: unknownMass,
      relativeSd: sdUnknownMass,
      where: { key: 'elements' },
    });
  if (house.floorAreaM2 === undefined)
    findings.push({ code: 'furniture-left-out', where: { key: 'floorAreaM2' } });
  return {
    heatCapacity,
    heatCapacitySd:
      Math.hypot(sdLayers * known, sdChosenClass * byClasses, sdUnknownMass * guessed) / heatCapacity,
    findings,
  };
}

/** @param chosen by somebody who knows the house; nobody did where it is left out */
function byClass({ floorAreaM2 }: House, chosen?: MassClass): HouseCapacity {
  if (floorAreaM2 === undefined) {
    const where = { key: 'floorAreaM2' };
    return { heatCapacity: null, heatCapacitySd: null, findings: [{ code: 'heat-capacity-unknown', where }] };
  }
  const arealHeatCapacity = classHeatCapacities[chosen ?? anyClass];
  const relativeSd = chosen === undefined ? sdAnyClass : sdChosenClass;
  const by = { arealHeatCapacity, relativeSd };
  return {
    heatCapacity: arealHeatCapacity * floorAreaM2,
    heatCapacitySd: relativeSd,
    findings:
      chosen === undefined ? [{ code: 'heat-capacity-by-class', ...by, where: { key: 'heatCapacity' } }] : [],
  };
}

/** [J/K] */
const insideCapacity = ({ periodic, area }: ElementDesign): number =>
  (periodic?.insideHeatCapacity ?? 0) * area;

/** [J/K] */
const classCapacity = ({ massClass, area }: ElementDesign): number =>
  massClass === null ? 0 : elementClassHeatCapacities[massClass] * area;

/** Both faces of a partition are warm [J/K]. */
function partitionCapacity({ name, areaM2, buildUp: layers }: Partition, index: number) {
  const key = `partitions[${index}]`;
  const buildUp = buildUpFrom(layers);
  const periodic = periodicResponse(buildUp, surfacesOf(buildUp.facing, 'adjacent'));
  const none: FabricFinding = { code: 'partition-without-layers', name, where: { key } };
  return {
    heatCapacity: (periodic.insideHeatCapacity + periodic.outsideHeatCapacity) * areaM2,
    findings: buildUp.layers.length === 0 ? [none] : within(`${key}.buildUp`, periodic.findings),
  };
}
