/** Chains and drives to test the network with, written by hand and generated. */
import fc from 'fast-check';
import type { Chain } from '../../../src/heatloss/network/cells.ts';
import type { Drive } from '../../../src/heatloss/network/stepping.ts';

/** A row of equal cells; towards nothing where `toBeyond` is 0. */
export const rowOf = (
  area: number,
  facing: Chain['facing'],
  cells: number,
  capacity: number,
  conductance: number,
  toBeyond: number,
): Chain => ({
  area,
  facing,
  capacities: new Float64Array(cells).fill(capacity / cells),
  conductances: new Float64Array(cells - 1).fill(conductance * cells),
  toInside: 2 * conductance * cells,
  toBeyond,
});

/** A small invented house: outer walls, a roof, a floor, an inner wall, windows; no furniture. */
export const smallHouse: readonly Chain[] = [
  rowOf(90, 'wall', 4, 180e3, 8, 0.3),
  rowOf(50, 'ceiling', 2, 12e3, 15, 0.2),
  rowOf(50, 'floor', 5, 400e3, 6, 0.25),
  rowOf(60, 'wall', 2, 80e3, 12, 0),
  rowOf(14, 'wall', 1, 7.5e3, 250, 1.6),
];

export interface Acting {
  /** Number of instants. */
  readonly length: number;
  /** Each at instant k. */
  inside(k: number): number;
  beyond(k: number, chain: number): number;
  outside(k: number): number;
  readonly radiant?: number;
  readonly convective?: number;
  readonly direct?: number;
  readonly unknownRadiance?: number;
}

export function driveFrom(chains: number, acting: Acting): Drive {
  const { length, radiant = 0, convective = 0, direct = 0, unknownRadiance = 0 } = acting;
  const series = (value: (k: number) => number) => Float64Array.from({ length }, (_, k) => value(k));
  const constant = (value: number) => new Float64Array(length).fill(value);
  return {
    inside: series(acting.inside),
    beyond: Array.from({ length: chains }, (_, c) => series((k) => acting.beyond(k, c))),
    outside: series(acting.outside),
    radiant: constant(radiant),
    convective: constant(convective),
    direct: constant(direct),
    unknownRadiance: constant(unknownRadiance),
  };
}

/** A day's swing of all temperatures, at any step [s]. */
export const swinging = (step: number, hours: number, more: Partial<Acting> = {}): Acting => {
  const turn = (k: number, hoursLater: number) =>
    Math.cos((2 * Math.PI * (k * step - hoursLater * 3600)) / 86_400);
  return {
    length: Math.round((hours * 3600) / step) + 1,
    inside: (k) => 19 + 1.5 * turn(k, 16),
    outside: (k) => 4 + 4 * turn(k, 14),
    beyond: (k, c) => (c === 2 ? 10 : 3 + 5 * turn(k, 13 + c)),
    radiant: 150,
    convective: 200,
    direct: 25,
    ...more,
  };
};

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

export const anyChain: fc.Arbitrary<Chain> = fc
  .record({
    area: within(1, 100),
    facing: fc.constantFrom<Chain['facing']>('wall', 'floor', 'ceiling'),
    cells: fc.integer({ min: 1, max: 5 }),
    capacity: within(5e3, 400e3),
    conductance: within(0.5, 50),
    toBeyond: fc.oneof(fc.constant(0), within(0.05, 5)),
  })
  .map((it) => rowOf(it.area, it.facing, it.cells, it.capacity, it.conductance, it.toBeyond));

export const anyChains = fc.array(anyChain, { minLength: 1, maxLength: 6 });

/** At least one of them leads outside. */
export const anyShell = anyChains.map((chains) => [...chains, rowOf(20, 'wall', 2, 100e3, 5, 0.5)]);
