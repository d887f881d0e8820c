/** Houses of brick, block and stone; all invented. */
import type { Box } from './box.ts';
import type { HouseType } from './houseType.ts';
import {
  block,
  blockWall,
  brick,
  chipboard,
  mineralWool,
  plaster,
  plasterboard,
  render,
  rigidFoam,
  screed,
  slab,
  solid,
  timber,
} from './layers.ts';

const twoStoreys: Omit<Box, 'walls' | 'top' | 'bottom' | 'bridges'> = {
  length: 8,
  width: 6,
  storeys: 2,
  height: 2.6,
  rooms: 2,
  windows: { south: 7.2, north: 4, east: 2.3, west: 2.3 },
  glazing: { uValue: 1.3, gValue: 0.6 },
  door: { side: 'north', area: 2.1, uValue: 1.4 },
  innerWalls: blockWall,
  innerWallShare: 0.6,
};
const ceiling = (over: number) => [
  plasterboard,
  { ...mineralWool(100, 0.04), bridge: timber('Joists', 47, 600) },
  { ...mineralWool(over, 0.04), name: 'Mineral wool over the joists' },
];
const insulatedSlab = [screed, rigidFoam(120, 0.022), slab(150)];

export const cavityHouse: HouseType = {
  name: 'cavity walls',
  box: {
    ...twoStoreys,
    walls: [plaster, { ...block, name: 'Block inner leaf' }, mineralWool(140, 0.035), brick(102)],
    top: { kind: 'roof void', ceiling: ceiling(170), drawn: 'layer' },
    bottom: { kind: 'slab', layers: insulatedSlab },
    bridges: 11,
  },
  drawnAirChanges: { tested: 0.25, open: 0.5 },
  leakage: { least: 0.45, most: 2.5 },
};

export const outsideInsulated: HouseType = {
  name: 'solid brick, insulated outside',
  box: {
    ...twoStoreys,
    length: 9,
    width: 7,
    walls: [plaster, brick(215), solid('Expanded polystyrene', 140, 0.035, 18, 1450), render],
    top: { kind: 'roof void', ceiling: ceiling(200), drawn: 'void' },
    bottom: { kind: 'slab', layers: [screed, rigidFoam(80, 0.024), slab(150)] },
    bridges: 14,
  },
  drawnAirChanges: { tested: 0.3, open: 0.55 },
  leakage: { least: 0.45, most: 2.5 },
};

export const insideInsulated: HouseType = {
  name: 'solid brick, insulated inside',
  box: {
    ...twoStoreys,
    walls: [plasterboard, rigidFoam(90, 0.024), plaster, brick(215)],
    top: { kind: 'roof void', ceiling: ceiling(150), drawn: 'layer' },
    bottom: {
      kind: 'suspended',
      layers: [chipboard(22), { ...mineralWool(150, 0.038), bridge: timber('Joists', 50, 450) }],
    },
    bridges: 17,
  },
  drawnAirChanges: { tested: 0.35, open: 0.6 },
  leakage: { least: 0.45, most: 2.5 },
};

/** Walls of stone without any insulation, and little elsewhere. */
export const bareMasonry: HouseType = {
  name: 'bare stone walls',
  box: {
    ...twoStoreys,
    length: 9,
    width: 5.5,
    walls: [plaster, solid('Rubble stone in lime', 450, 1.4, 2100, 900)],
    glazing: { uValue: 2.6, gValue: 0.7 },
    top: { kind: 'roof void', ceiling: ceiling(20), drawn: 'layer' },
    bottom: { kind: 'slab', layers: [screed, slab(100)] },
    bridges: 10,
  },
  drawnAirChanges: { tested: 0.6, open: 0.8 },
  leakage: { least: 0.5, most: 2 },
};

/** Between two houses: the long sides of its plan stand free. */
export const terrace: HouseType = {
  name: 'terrace, mid house',
  box: {
    ...twoStoreys,
    length: 5,
    width: 9,
    windows: { south: 7, north: 6, east: 0, west: 0 },
    walls: [plaster, brick(215), mineralWool(100, 0.036), render],
    against: { east: 0, west: 1 },
    partyWall: [plaster, brick(215), plaster],
    top: { kind: 'roof void', ceiling: ceiling(150), drawn: 'layer' },
    bottom: { kind: 'slab', layers: insulatedSlab },
    bridges: 8,
  },
  drawnAirChanges: { tested: 0.3, open: 0.5 },
  neighbourLogged: false,
  leakage: { least: 0.45, most: 2.3 },
};

export const bungalow: HouseType = {
  name: 'bungalow, big south windows',
  box: {
    ...twoStoreys,
    length: 12,
    width: 8,
    storeys: 1,
    height: 2.5,
    windows: { south: 15, north: 3, east: 2.5, west: 2.5 },
    glazing: { uValue: 1.0, gValue: 0.5 },
    walls: [plaster, block, mineralWool(180, 0.034), brick(102)],
    top: { kind: 'roof void', ceiling: ceiling(250), drawn: 'void' },
    bottom: { kind: 'slab', layers: [screed, rigidFoam(150, 0.022), slab(150)] },
    bridges: 12,
  },
  drawnAirChanges: { tested: 0.2, open: 0.45 },
  leakage: { least: 0.45, most: 2.5 },
};
