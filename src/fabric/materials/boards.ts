/** Boards without wood, plasters and renders. */
import { type Material, type SolidRow, solids } from './value.ts';

const fromTables: readonly SolidRow[] = [
  ['gypsum board', 'plasterboard, drywall, wallboard', 0.25, 900, 1000, 10, 4],
  ['gypsum board, light', 'plasterboard, light wallboard', 0.21, 700, 1000, 10, 4],
  ['gypsum plaster', 'finishing plaster, skim, undercoat', 0.57, 1300, 1000, 10, 6],
  ['gypsum plaster, light', 'lightweight plaster', 0.18, 600, 1000, 10, 6],
  ['lime plaster', 'lime render, lime sand plaster', 0.8, 1600, 1000, 10, 6],
  ['cement render', 'cement sand render, rendering', 1.0, 1800, 1000, 10, 6],
];

const fromPractice: readonly SolidRow[] = [
  ['gypsum board, moisture resistant', 'green plasterboard, bathroom board', 0.25, 900, 1000, 10, 4],
  ['gypsum fibre board', 'gypsum fibreboard', 0.32, 1150, 1100, 13, 13],
  ['clay board', 'loam board', 0.35, 1300, 1100, 10, 8],
  ['calcium silicate board, fire', 'fire board', 0.18, 900, 1000, 20, 10],
  ['fibre cement board', 'cement board, backer board', 0.35, 1300, 1000, 50, 30],
  ['clay plaster', 'loam plaster, earth plaster', 0.8, 1700, 1000, 10, 5],
  ['thin render on insulation', 'silicone render, acrylic render, topcoat', 0.7, 1700, 1000, 60, 30],
];

export const materialsBoards: readonly Material[] = [
  ...solids('boards and plasters', 'iso', fromTables),
  ...solids('boards and plasters', 'practice', fromPractice),
];
