/**
 * A library of building materials, by what they are and not by who makes them.
 *
 * The values are design values of tables. What is declared for the very product on site is better, and belongs
 * into the layer instead.
 */
import { materialsBoards } from './boards.ts';
import { materialsInsulation } from './insulation.ts';
import { materialsMasonry } from './masonry.ts';
import { materialsSheets } from './sheets.ts';
import { materialsTimber } from './timber.ts';
import type { Material } from './value.ts';

/** In the order of their groups. */
export const materials: readonly Material[] = [
  ...materialsBoards,
  ...materialsTimber,
  ...materialsInsulation,
  ...materialsMasonry,
  ...materialsSheets,
];
