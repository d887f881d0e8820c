/** Walls with their dynamic characteristics by ISO 13786:2017, COMPUTED twice: see `heatCapacity.test.ts`. */
import type { BuildUpLayer } from '../../src/fabric/buildUp.ts';
import { solid, stated } from '../fabric/walls.ts';

interface DynamicWall {
  readonly name: string;
  readonly layers: readonly BuildUpLayer[];
  readonly U: number;
  /** |Y| [W/(m²K)] and lead [h] */
  readonly Y11: readonly [number, number];
  readonly Y22: readonly [number, number];
  readonly Y12: readonly [number, number];
  readonly f: number;
  /** [kJ/(m²K)] */
  readonly κ1: number;
  readonly κ2: number;
}

export const dynamicWalls: readonly DynamicWall[] = [
  {
    name: 'concrete',
    layers: [solid(0.2, 1.8, 2400, 1000)],
    U: 3.5573,
    Y11: [5.7043, 0.948],
    Y22: [11.5919, 1.873],
    Y12: [1.8271, -5.676],
    f: 0.5136,
    κ1: 86.17,
    κ2: 170.87,
  },
  {
    name: 'timber frame',
    layers: [
      solid(0.0125, 0.25, 900, 1000),
      solid(0.14, 0.038, 25, 1030),
      solid(0.009, 0.13, 650, 1700),
      stated(0.18),
      solid(0.102, 0.77, 1700, 800),
    ],
    U: 0.2333,
    Y11: [0.9081, 4.454],
    Y22: [7.5175, 3.191],
    Y12: [0.1601, -5.405],
    f: 0.6862,
    κ1: 14.4,
    κ2: 104.77,
  },
  {
    name: 'brick, insulated outside',
    layers: [
      solid(0.013, 0.57, 1300, 1000),
      solid(0.215, 0.56, 1700, 800),
      solid(0.1, 0.035, 20, 1450),
      solid(0.006, 1, 1800, 1000),
    ],
    U: 0.2907,
    Y11: [4.0915, 1.47],
    Y22: [0.9193, 4.422],
    Y12: [0.0426, -10.077],
    f: 0.1465,
    κ1: 56.84,
    κ2: 13.11,
  },
  {
    name: 'full-fill cavity',
    layers: [
      solid(0.013, 0.18, 600, 1000),
      solid(0.1, 0.15, 600, 1000),
      solid(0.1, 0.035, 25, 1030),
      solid(0.102, 0.77, 1700, 800),
    ],
    U: 0.2565,
    Y11: [2.2512, 2.446],
    Y22: [7.4076, 3.332],
    Y12: [0.0957, -9.32],
    f: 0.3732,
    κ1: 32.27,
    κ2: 103.16,
  },
];
