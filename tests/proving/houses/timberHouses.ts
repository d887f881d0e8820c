/** Houses of wood and straw; all invented. */
import type { HouseType } from './houseType.ts';
import {
  chipboard,
  mineralWool,
  plasterboard,
  render,
  rigidFoam,
  screed,
  serviceSpace,
  slab,
  softwood,
  solid,
  studWall,
  timber,
  woodFibre,
} from './layers.ts';

const sheathing = solid('Sheathing board', 9, 0.13, 650, 1700);
const rafters = (mm: number) => [
  plasterboard,
  { ...mineralWool(mm, 0.036), bridge: timber('Rafters', 45, 600) },
  woodFibre(60),
];

export const timberFrame: HouseType = {
  name: 'timber frame',
  box: {
    length: 8.5,
    width: 6.5,
    storeys: 2,
    height: 2.6,
    rooms: 2,
    walls: [
      plasterboard,
      serviceSpace,
      { ...mineralWool(140, 0.036), bridge: timber('Studs and plates', 38, 600, 0.07) },
      sheathing,
      woodFibre(60),
      render,
    ],
    windows: { south: 9, north: 4, east: 3, west: 3 },
    glazing: { uValue: 1.2, gValue: 0.55 },
    door: { side: 'north', area: 2.1, uValue: 1.3 },
    top: {
      kind: 'roof void',
      ceiling: [
        plasterboard,
        { ...mineralWool(100, 0.04), bridge: timber('Joists', 47, 600) },
        { ...mineralWool(200, 0.04), name: 'Mineral wool over the joists' },
      ],
      drawn: 'layer',
    },
    bottom: { kind: 'slab', layers: [chipboard(22), rigidFoam(120, 0.022), slab(150)] },
    innerWalls: studWall,
    innerWallShare: 0.7,
    bridges: 9,
  },
  drawnAirChanges: { tested: 0.2, open: 0.45 },
  leakage: { least: 0.4, most: 2.8 },
};

/** Light, on posts, with a single room. */
export const cabin: HouseType = {
  name: 'timber cabin',
  box: {
    length: 7,
    width: 5,
    storeys: 1,
    height: 2.4,
    rooms: 1,
    walls: [
      softwood(18),
      { ...mineralWool(90, 0.037), bridge: timber('Studs', 45, 600, 0.06) },
      softwood(21),
    ],
    windows: { south: 4, north: 1, east: 1.5, west: 1.5 },
    glazing: { uValue: 1.6, gValue: 0.62 },
    door: { side: 'east', area: 1.9, uValue: 1.8 },
    top: { kind: 'pitched', layers: [softwood(18), ...rafters(140).slice(1, 2), softwood(18)], tilt: 25 },
    bottom: {
      kind: 'suspended',
      layers: [softwood(24), { ...mineralWool(120, 0.037), bridge: timber('Joists', 45, 450) }],
    },
    innerWalls: [softwood(45)],
    innerWallShare: 0.3,
    bridges: 4,
  },
  drawnAirChanges: { tested: 0.4, open: 0.6 },
  leakage: { least: 0.4, most: 2.5 },
};

/** Bales between posts, plastered with clay inside and lime outside. */
export const strawHouse: HouseType = {
  name: 'straw and lime',
  box: {
    length: 9,
    width: 8,
    storeys: 1,
    height: 2.8,
    rooms: 2,
    walls: [
      solid('Clay plaster', 40, 0.8, 1700, 1000),
      { ...solid('Straw', 360, 0.055, 105, 2000), bridge: timber('Posts', 60, 900) },
      solid('Lime render', 35, 0.8, 1600, 1000),
    ],
    windows: { south: 9, north: 2, east: 3, west: 3 },
    glazing: { uValue: 0.9, gValue: 0.5 },
    door: { side: 'north', area: 2.1, uValue: 1.1 },
    top: { kind: 'pitched', layers: rafters(300), tilt: 30 },
    bottom: {
      kind: 'slab',
      layers: [solid('Earth floor', 80, 1, 1900, 1000), rigidFoam(140, 0.035), slab(100)],
    },
    innerWalls: [solid('Earth blocks', 150, 0.9, 1800, 1000)],
    innerWallShare: 0.5,
    bridges: 8,
  },
  drawnAirChanges: { tested: 0.25, open: 0.4 },
  leakage: { least: 0.4, most: 2.5 },
};

export const crossLaminated: HouseType = {
  name: 'cross-laminated timber',
  box: {
    length: 10,
    width: 6,
    storeys: 2,
    height: 2.7,
    rooms: 2,
    walls: [solid('Cross-laminated timber', 100, 0.12, 480, 1600), woodFibre(180), softwood(20)],
    windows: { south: 14, north: 4, east: 3, west: 5 },
    glazing: { uValue: 0.85, gValue: 0.5 },
    door: { side: 'north', area: 2.1, uValue: 1 },
    top: {
      kind: 'flat',
      layers: [
        solid('Cross-laminated timber', 140, 0.12, 480, 1600),
        rigidFoam(180, 0.024),
        solid('Roof sheet', 5, 0.2, 1100, 1000),
      ],
    },
    bottom: { kind: 'slab', layers: [screed, rigidFoam(150, 0.022), slab(200)] },
    innerWalls: [solid('Cross-laminated timber', 90, 0.12, 480, 1600)],
    innerWallShare: 0.5,
    bridges: 9,
  },
  drawnAirChanges: { tested: 0.12, open: 0.4 },
  leakage: { least: 0.5, most: 3 },
};

/** Walls of wood alone. */
export const logHouse: HouseType = {
  name: 'log walls',
  box: {
    length: 9,
    width: 7,
    storeys: 1,
    height: 2.6,
    rooms: 2,
    walls: [solid('Logs', 230, 0.12, 470, 1600)],
    windows: { south: 6, north: 2, east: 2, west: 2 },
    glazing: { uValue: 1.1, gValue: 0.55 },
    door: { side: 'south', area: 2, uValue: 1.2 },
    top: { kind: 'pitched', layers: rafters(220), tilt: 35 },
    bottom: {
      kind: 'suspended',
      layers: [softwood(28), { ...mineralWool(220, 0.037), bridge: timber('Joists', 45, 600) }],
    },
    innerWalls: [solid('Logs', 120, 0.12, 470, 1600)],
    innerWallShare: 0.4,
    bridges: 6,
  },
  drawnAirChanges: { tested: 0.35, open: 0.5 },
  leakage: { least: 0.5, most: 2.5 },
};
