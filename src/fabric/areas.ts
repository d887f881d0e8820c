/**
 * Areas, volumes and lengths that hardly fit together. Only what no ordinary house, extension or loft does is
 * questioned; the figures are taken as they stand.
 */
import { sum } from 'simple-statistics';
import type { DesignElement, House } from '../house.ts';
import type { ElementDesign } from './element.ts';
import type { FabricFinding } from './finding.ts';

/** The area around a sphere of volume V is this times V^(2/3): no shape has less [–]. */
const sphere = (36 * Math.PI) ** (1 / 3);
/** A cube has 6, a bungalow of 30 m by 3 m 9, a hall of 50 m by 50 m under 3 m 15 [–]. PRACTICE. */
const mostSpread = 20;
/** Volume over floor area [m]: rooms under slopes lie above, halls and barns below. PRACTICE. */
const heights = { least: 1.2, most: 10 } as const;
/** A slab measured with its walls, over a floor area measured within them [–]. PRACTICE. */
const wallsIncluded = 1.25;
/** How much of the floor a roof measured by other edges may lack [–]. PRACTICE. */
const leastRoof = 0.75;
/** From here on glass lies rather in a roof than in a wall [°]. ISO 6946:2017: "across" reaches 30° either side; MEMORY. */
const steepest = 60;
/** Of all area [–]; glass houses aside, large glazing takes a quarter. PRACTICE. */
const mostGlass = 0.5;
/** No floor is narrower [m]. PRACTICE. */
const narrowest = 1;

export function doubtsAboutAreas(house: House, elements: readonly ElementDesign[]): FabricFinding[] {
  const entries = house.elements ?? [];
  return [
    ...shellDoubts(house, areaOf(elements)),
    ...floorDoubts(house, elements),
    ...roofDoubts(elements, entries),
    ...glassDoubts(elements),
    ...entries.flatMap(perimeterDoubts),
  ];
}

const areaOf = (elements: readonly ElementDesign[]): number => sum(elements.map((it) => it.area));

function shellDoubts({ volumeM3: volume }: House, area: number): FabricFinding[] {
  if (volume === undefined) return [];
  const least = sphere * volume ** (2 / 3);
  if (area < least) return [{ code: 'shell-too-small', area, least, volume, where: { key: 'elements' } }];
  if (area > mostSpread * volume ** (2 / 3))
    return [{ code: 'shell-too-large', area, volume, where: { key: 'elements' } }];
  return [];
}

function floorDoubts(house: House, elements: readonly ElementDesign[]): FabricFinding[] {
  const { floorAreaM2: floorArea, volumeM3: volume } = house;
  if (floorArea === undefined) return [];
  const findings: FabricFinding[] = [];
  const height = volume === undefined ? null : volume / floorArea;
  if (height !== null && (height < heights.least || height > heights.most))
    findings.push({ code: 'height-doubtful', height, where: { key: 'volumeM3' } });
  const area = areaOf(elements.filter((it) => it.to === 'ground'));
  if (area > wallsIncluded * floorArea)
    findings.push({ code: 'ground-floor-too-large', area, floorArea, where: { key: 'floorAreaM2' } });
  return findings;
}

/**
 * What lies above a floor is at least as large as the floor, slopes more. Only a house whose every opaque element
 * says which way it faces can be judged.
 */
function roofDoubts(elements: readonly ElementDesign[], entries: readonly DesignElement[]): FabricFinding[] {
  const facings = elements.map((it, i) => facingOf(it, entries[i]));
  if (facings.includes(null)) return [];
  const facing = (way: 'up' | 'down') => areaOf(elements.filter((_, i) => facings[i] === way));
  const [roof, floor] = [facing('up'), facing('down')];
  if (roof === 0 || roof >= leastRoof * floor) return [];
  return [{ code: 'roof-smaller-than-floor', roof, floor, where: { key: 'elements' } }];
}

/** Null where it is not said. Windows of unknown tilt may lie in the roof, so they count to it. */
function facingOf({ to, glazed }: ElementDesign, { buildUp, tiltDeg }: DesignElement) {
  if (to === 'ground') return 'down';
  if (glazed) return tiltDeg === undefined || tiltDeg < steepest ? 'up' : 'across';
  return buildUp?.facing ?? null;
}

function glassDoubts(elements: readonly ElementDesign[]): FabricFinding[] {
  const area = areaOf(elements);
  const glass = areaOf(elements.filter((it) => it.glazed));
  if (elements.every((it) => it.glazed) || glass <= mostGlass * area) return [];
  return [{ code: 'mostly-glass', glass, area, where: { key: 'elements' } }];
}

/** Around a floor as narrow as a floor can be: 2·(w + A/w). */
function perimeterDoubts({ areaM2: area, perimeterM: perimeter }: DesignElement, i: number): FabricFinding[] {
  if (perimeter === undefined || perimeter <= 2 * (narrowest + area / narrowest)) return [];
  const where = { key: `elements[${i}].perimeterM` };
  return [{ code: 'perimeter-doubtful', perimeter, area, where }];
}
