/** Brick, block, concrete, screed, stone and tiles. */
import { type Material, type SolidRow, solids } from './value.ts';

const lambdaRead = { conductivity: 'isoRead', density: 'isoRead' } as const;
const uk = { conductivity: 'uk', density: 'uk', specificHeat: 'uk' } as const;
const old = { conductivity: 'old', density: 'old' } as const;

const fromTables: readonly SolidRow[] = [
  ['brick, outer leaf', 'facing brick, clay brick, exposed brick', 0.77, 1700, 800, 16, 10, uk],
  ['brick, inner leaf', 'common brick, clay brick, protected brick', 0.56, 1700, 800, 16, 10, uk],
  ['mortar, outer leaf', 'mortar joint', 0.94, 1750, 1000, 20, 10, { conductivity: 'uk' }],
  ['mortar, inner leaf', 'mortar joint', 0.88, 1750, 1000, 20, 10, { conductivity: 'uk' }],
  ['dense concrete block', 'heavy block, breeze block', 1.13, 1800, 1000, 10, 6, old],
  [
    'lightweight aggregate block',
    'lightweight concrete block, clinker block, medium block',
    0.57,
    1400,
    1000,
    10,
    6,
    old,
  ],
  ['aerated concrete block', 'aircrete, AAC, autoclaved block', 0.18, 600, 1000, 10, 6, old],
  ['concrete, light 1800', 'concrete', 1.15, 1800, 1000, 100, 60, lambdaRead],
  ['concrete, medium 2000', 'concrete', 1.35, 2000, 1000, 100, 60, lambdaRead],
  ['concrete, medium 2200', 'concrete', 1.65, 2200, 1000, 120, 70, lambdaRead],
  ['concrete, dense', 'cast concrete, concrete slab', 2.0, 2400, 1000, 130, 80, lambdaRead],
  ['reinforced concrete, 1 % steel', 'RC, concrete slab', 2.3, 2300, 1000, 130, 80, lambdaRead],
  ['reinforced concrete, 2 % steel', 'RC', 2.5, 2400, 1000, 130, 80, lambdaRead],
  [
    'cement screed',
    'sand cement screed, floor screed',
    1.15,
    1800,
    1000,
    10,
    6,
    { conductivity: 'uk', density: 'uk' },
  ],
  ['cement screed, light old value', 'screed', 0.41, 1200, 840, 10, 6, uk],
  ['sandstone', 'stone wall, stone', 2.3, 2600, 1000, 40, 30],
  ['limestone, hard', 'stone wall, stone', 1.7, 2200, 1000, 200, 150],
  ['limestone, soft', 'stone wall, stone', 1.1, 1800, 1000, 40, 25],
  ['granite', 'stone wall, stone', 2.8, 2600, 1000, 10_000, 10_000],
  ['slate', 'roof slate', 2.2, 2400, 1000, 1000, 800],
  ['clay roof tile', 'tiles', 1.0, 2000, 800, 40, 30],
  ['concrete roof tile', 'tiles', 1.5, 2100, 1000, 100, 60],
  ['ceramic tile', 'floor tile, porcelain', 1.3, 2300, 840, 1e5, 1e5],
  ['sand and gravel', 'hardcore, ballast, fill', 2.0, 1950, 1045, 50, 50],
];

const fromPractice: readonly SolidRow[] = [
  ['anhydrite screed', 'calcium sulphate screed, liquid screed', 1.2, 2000, 1000, 15, 10],
  ['rubble stone wall in lime', 'stone wall, random rubble', 1.5, 2200, 1000, 40, 25],
  ['calcium silicate brick', 'sand-lime brick, sandlime', 1.0, 1800, 1000, 25, 15],
  ['honeycomb clay block', 'perforated clay block, thermal brick', 0.14, 700, 1000, 10, 5],
  ['rammed earth', 'earth, cob, adobe', 0.9, 1800, 1000, 10, 5],
  ['hempcrete', 'hemp lime', 0.07, 330, 1500, 5, 3],
];

export const materialsMasonry: readonly Material[] = [
  ...solids('masonry and concrete', 'iso', fromTables),
  ...solids('masonry and concrete', 'practice', fromPractice),
];
