/** Insulation. Conductivities differ by product: the declared value of the one on site is better. */
import { type Material, type SolidRow, solids, sources } from './value.ts';

const declared = { conductivity: 'practice', density: 'practice' } as const;
const oldFoam = { conductivity: 'cibse', density: 'cibse', specificHeat: 'cibse' } as const;
/** Specific heat and vapour resistance as the standard has them, the rest as the trade has it. */
const fromTables: readonly SolidRow[] = [
  [
    'mineral wool batt',
    'glass wool, rock wool, stone wool, fibreglass, slab',
    0.038,
    25,
    1030,
    1,
    1,
    { conductivity: 'old', density: 'old' },
  ],
  [
    'mineral wool quilt',
    'glass wool roll, loft roll, loft insulation',
    0.042,
    12,
    1030,
    1,
    1,
    { conductivity: 'old', density: 'old' },
  ],
  ['mineral wool, 0.035', 'glass wool 35, frame batt, rafter batt', 0.035, 25, 1030, 1, 1, declared],
  ['mineral wool, 0.032', 'glass wool 32, full-fill cavity batt', 0.032, 35, 1030, 1, 1, declared],
  ['mineral wool board, dense', 'rock wool board, stone wool external', 0.037, 120, 1030, 1, 1, declared],
  ['EPS', 'expanded polystyrene, polystyrene, white board', 0.04, 15, 1450, 60, 60],
  ['EPS, graphite', 'grey EPS, grey polystyrene', 0.031, 18, 1450, 60, 60, declared],
  ['XPS', 'extruded polystyrene', 0.034, 35, 1450, 150, 150, declared],
  ['PUR board, generic old value', 'polyurethane, foam board', 0.028, 30, 1470, 60, 60, oldFoam],
  ['PIR board, generic old value', 'polyisocyanurate, polyiso', 0.03, 45, 1470, 60, 60, oldFoam],
  ['phenolic foam', 'phenolic board', 0.021, 35, 1400, 50, 50, declared],
  ['cellular glass', 'foam glass, foamed glass board', 0.041, 115, 1000, 1e5, 1e5, declared],
  ['cork board', 'expanded cork, cork', 0.04, 115, 1560, 10, 5, declared],
];

const fromPractice: readonly SolidRow[] = [
  ['wood fibre, flexible', 'woodfibre batt, wood wool batt', 0.038, 50, 2100, 2, 2],
  ['wood fibre board', 'woodfibre board, sarking board', 0.043, 160, 2100, 5, 3],
  ['wood fibre board, dense', 'rain sarking board, sheathing woodfibre', 0.05, 250, 2100, 5, 3],
  ['cellulose, blown', 'cellulose fibre, recycled paper', 0.039, 50, 1900, 2, 2],
  ['hemp batt', 'hemp fibre, flax', 0.04, 40, 1600, 2, 1],
  ["sheep's wool", 'wool batt', 0.038, 20, 1720, 2, 1],
  ['straw bale', 'straw', 0.06, 100, 2000, 2, 2],
  ['spray foam, open cell', 'sprayed polyurethane open', 0.038, 10, 1400, 4, 3],
  ['spray foam, closed cell', 'sprayed polyurethane closed', 0.026, 35, 1400, 60, 60],
  ['calcium silicate board, insulating', 'climate board, capillary active board', 0.065, 240, 1000, 6, 3],
  ['mineral foam board', 'aerated insulation board', 0.045, 110, 1000, 5, 3],
  ['expanded clay, loose', 'clay balls', 0.1, 350, 1000, 2, 2],
  ['perlite, loose', 'vermiculite', 0.05, 90, 1000, 2, 2],
  ['aerogel blanket', 'aerogel', 0.016, 150, 1000, 5, 5],
  ['vacuum panel', 'VIP', 0.007, 190, 800, 1e5, 1e5],
];

/** The facing holds the vapour back, however thick the foam: an sd with joints taped. */
const foilFaced = { kind: 'thickness', thickness: 50, ...sources.practice } as const;
const foilBoards = solids('insulation', 'practice', [
  ['PIR board, foil-faced', 'polyisocyanurate, polyiso, foam board, foil board', 0.022, 32, 1400, 60, 60],
]).map((it) => ({ ...it, vapour: foilFaced }));

export const materialsInsulation: readonly Material[] = [
  ...solids('insulation', 'iso', fromTables),
  ...foilBoards,
  ...solids('insulation', 'practice', fromPractice),
];
