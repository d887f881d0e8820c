/** Edits of the thermal bridges of a house: line by line, as one sum, or as a share on every m². */
import { designOf, unknownYValue } from '../../src/fabric/index.ts';
import type { House, JunctionKind } from '../../src/house.ts';

export type Junction = NonNullable<NonNullable<House['thermalBridges']>['junctions']>[number];

/** How thermal bridges are known. */
export type BridgesBy = 'nothing' | 'junctions' | 'sum' | 'share';

const FIRST_LENGTH = 10; // [m]
/** Until its own figure is typed [W/(mK)]: about the middle of the defaults. PRACTICE */
const FIRST_PSI = 0.1;

export function bridgesBy({ thermalBridges }: House): BridgesBy {
  if (thermalBridges === undefined) return 'nothing';
  if (thermalBridges.junctions !== undefined) return 'junctions';
  return thermalBridges.psiLengthWK === undefined ? 'share' : 'sum';
}

/** Known in another way from then on, with the same loss as far as that way can tell it. */
export function knowBridgesBy(house: House, way: BridgesBy): void {
  if (way === bridgesBy(house)) return;
  const design = designOf(house);
  const area = design?.exposedArea ?? 0;
  const loss = house.thermalBridges === undefined ? unknownYValue * area : (design?.bridges ?? 0);
  const share = area > 0 ? Math.max(0, loss / area) : unknownYValue;
  if (way === 'nothing') delete house.thermalBridges;
  else
    house.thermalBridges = {
      sum: () => ({ psiLengthWK: Number(loss.toPrecision(3)) }),
      share: () => ({ yValue: Number(share.toPrecision(2)) }),
      junctions: () => ({ junctions: [firstJunction(house)] }),
    }[way]();
}

export function addJunction(house: House, kind: JunctionKind): void {
  house.thermalBridges?.junctions?.push({ kind, lengthM: FIRST_LENGTH });
}

/** Without the last of them none are stated. */
export function removeJunction(house: House, at: number): void {
  const { junctions } = house.thermalBridges ?? {};
  junctions?.splice(at, 1);
  if (junctions?.length === 0) delete house.thermalBridges;
}

/** A key that is undefined is left out from then on. */
export function changeJunction(house: House, at: number, change: Partial<Junction>): void {
  const junction = house.thermalBridges?.junctions?.[at];
  if (junction !== undefined) Object.assign(junction, change);
}

/** @param kind null for one that is in no table, and so has a figure of its own */
export function nameJunction(house: House, at: number, kind: JunctionKind | null): void {
  const junction = house.thermalBridges?.junctions?.[at];
  if (junction === undefined) return;
  if (kind === null) {
    delete junction.kind;
    junction.psiWmK ??= FIRST_PSI;
  } else junction.kind = kind;
}

/** Around the floor on the ground, whose length is known already; else any. */
function firstJunction({ elements }: House): Junction {
  const floor = elements?.find(({ perimeterM }) => perimeterM !== undefined);
  return { kind: 'ground-floor', lengthM: floor?.perimeterM ?? FIRST_LENGTH };
}
