/** What the invented houses are built of: everyday materials with everyday figures (PRACTICE). */
import type { Layer } from '../../../src/house.ts';

export const solid = (
  name: string,
  mm: number,
  conductivity: number,
  density: number,
  heat: number,
): Layer => ({
  name,
  thicknessMm: mm,
  conductivityWmK: conductivity,
  densityKgM3: density,
  specificHeatJkgK: heat,
});

export const timber = (name: string, widthMm: number, spacingMm: number, extraFraction = 0) => ({
  name,
  widthMm,
  spacingMm,
  extraFraction,
  conductivityWmK: 0.13,
  densityKgM3: 500,
  specificHeatJkgK: 1600,
});

export const plasterboard = solid('Plasterboard', 12.5, 0.21, 700, 1000);
export const plaster = solid('Plaster', 13, 0.4, 1100, 1000);
export const render = solid('Render', 10, 0.8, 1600, 1000);
export const block = solid('Dense block', 100, 0.9, 1800, 1000);
export const brick = (mm: number) => solid('Brick', mm, 0.77, 1700, 800);
export const mineralWool = (mm: number, conductivity: number) =>
  solid('Mineral wool', mm, conductivity, 25, 1030);
export const rigidFoam = (mm: number, conductivity: number) =>
  solid('Rigid foam', mm, conductivity, 32, 1400);
export const woodFibre = (mm: number) => solid('Wood fibre board', mm, 0.042, 180, 2100);
export const chipboard = (mm: number) => solid('Chipboard', mm, 0.13, 650, 1700);
export const softwood = (mm: number) => solid('Softwood', mm, 0.13, 480, 1600);
export const screed = solid('Screed', 65, 1.15, 2000, 1000);
export const slab = (mm: number) => solid('Concrete slab', mm, 2, 2400, 1000);
export const serviceSpace: Layer = { name: 'Service space', resistanceM2KW: 0.18 };

export const studWall: Layer[] = [
  plasterboard,
  { ...mineralWool(70, 0.038), bridge: timber('Studs', 38, 600, 0.05) },
  plasterboard,
];
export const blockWall: Layer[] = [plaster, block, plaster];
