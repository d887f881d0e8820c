/** Timber and boards of wood. */
import { type Material, type SolidRow, solids } from './value.ts';

const solidWood = { conductivity: 'isoTimber', density: 'isoTimber', specificHeat: 'isoTimber' } as const;

const fromTables: readonly SolidRow[] = [
  [
    'softwood',
    'timber, timber frame, stud, rafter, joist, batten, spruce, pine, CLS',
    0.13,
    500,
    1600,
    50,
    20,
    solidWood,
  ],
  ['hardwood', 'oak, beech', 0.18, 700, 1600, 200, 50, solidWood],
  ['plywood, light', 'ply 500, softwood ply', 0.13, 500, 1600, 200, 70],
  ['plywood', 'ply, hardwood ply, WBP', 0.17, 700, 1600, 220, 90],
  ['OSB', 'oriented strand board', 0.13, 650, 1700, 50, 30],
  ['chipboard', 'particle board, flooring board, P5', 0.14, 600, 1700, 50, 15],
  ['cement-bonded particle board', 'cement particle board', 0.23, 1200, 1500, 50, 30],
  ['fibreboard, hard', 'hardboard', 0.18, 800, 1700, 20, 10],
  ['fibreboard, MDF', 'medium density fibreboard', 0.14, 600, 1700, 20, 12],
  ['fibreboard, soft', 'softboard, insulation board', 0.07, 250, 1700, 5, 3],
];

const fromPractice: readonly SolidRow[] = [
  ['cross-laminated timber', 'CLT, solid timber panel', 0.12, 480, 1600, 50, 25],
  ['wood wool board, cement-bonded', 'woodwool slab', 0.09, 400, 1470, 5, 3],
];

export const materialsTimber: readonly Material[] = [
  ...solids('timber', 'iso', fromTables),
  ...solids('timber', 'practice', fromPractice),
];
