/** Rooms added to a house that is heated itself, and a workshop that nobody insulated below; all invented. */
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
  studWall,
  timber,
  woodFibre,
} from './layers.ts';

const extensionBox: Box = {
  length: 6,
  width: 4.5,
  storeys: 1,
  height: 2.5,
  rooms: 1,
  walls: [plaster, block, mineralWool(120, 0.034), brick(102)],
  against: { north: 0 },
  partyWall: [plaster, brick(215), plaster],
  windows: { south: 6, north: 0, east: 1.5, west: 1 },
  glazing: { uValue: 1.2, gValue: 0.55 },
  door: { side: 'east', area: 2, uValue: 1.4 },
  top: {
    kind: 'flat',
    layers: [
      plasterboard,
      { name: 'Space between the joists', resistanceM2KW: 0.16 },
      chipboard(18),
      rigidFoam(140, 0.023),
      solid('Roof sheet', 5, 0.2, 1100, 1000),
    ],
  },
  bottom: { kind: 'slab', layers: [screed, rigidFoam(100, 0.022), slab(150)] },
  innerWalls: blockWall,
  innerWallShare: 0.1,
  bridges: 4,
};
const extension = {
  box: extensionBox,
  drawnAirChanges: { tested: 0.25, open: 0.5 },
  leakage: { least: 0.4, most: 2.5 },
};

export const extensionLogged: HouseType = {
  ...extension,
  name: 'extension, neighbour logged',
  neighbourLogged: true,
};
export const extensionUnlogged: HouseType = {
  ...extension,
  name: 'extension, neighbour not logged',
  neighbourLogged: false,
};

/** Under the rafters of a heated house, its eaves cut off by knee walls. */
export const loftRoom: HouseType = {
  name: 'loft room',
  box: {
    length: 8,
    width: 4.5,
    storeys: 1,
    height: 2.4,
    rooms: 1,
    walls: [plasterboard, rigidFoam(60, 0.024), plaster, brick(215), render],
    windows: { south: 0, north: 0, east: 1.5, west: 2 },
    glazing: { uValue: 1.3, gValue: 0.55 },
    top: {
      kind: 'pitched',
      tilt: 40,
      layers: [
        plasterboard,
        rigidFoam(40, 0.024),
        { ...mineralWool(150, 0.035), bridge: timber('Rafters', 45, 500) },
        woodFibre(35),
      ],
      knee: {
        height: 1.1,
        layers: [plasterboard, { ...mineralWool(120, 0.036), bridge: timber('Studs', 45, 600, 0.04) }],
      },
    },
    bottom: {
      kind: 'neighbour',
      layers: [chipboard(22), { ...mineralWool(100, 0.04), bridge: timber('Joists', 50, 450) }, plasterboard],
    },
    innerWalls: studWall,
    innerWallShare: 0.5,
    bridges: 5,
  },
  drawnAirChanges: { tested: 0.3, open: 0.5 },
  neighbourLogged: true,
  leakage: { least: 0.4, most: 2.5 },
};

export const studio: HouseType = {
  name: 'studio on a bare slab',
  box: {
    length: 7.5,
    width: 5.5,
    storeys: 1,
    height: 2.6,
    rooms: 1,
    walls: [plasterboard, rigidFoam(50, 0.024), block, brick(102)],
    windows: { south: 3, north: 2, east: 0, west: 1 },
    glazing: { uValue: 1.5, gValue: 0.6 },
    door: { side: 'south', area: 4, uValue: 1.8 },
    top: {
      kind: 'roof void',
      ceiling: [plasterboard, { ...mineralWool(150, 0.04), bridge: timber('Joists', 47, 600) }],
      drawn: 'void',
    },
    bottom: { kind: 'slab', layers: [slab(150)] },
    innerWalls: blockWall,
    innerWallShare: 0.15,
    bridges: 6,
  },
  drawnAirChanges: { tested: 0.4, open: 0.6 },
  leakage: { least: 0.4, most: 2.3 },
};
