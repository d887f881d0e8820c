/** One two-storey detached house, 8 m by 6 m, in four ways of building its walls; all invented. */
import type { Layer } from '../../src/house.ts';
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
  serviceSpace,
  slab,
  solid,
  studWall,
  timber,
  woodFibre,
} from './houses/layers.ts';
import { type DetachedPlan, type PlacedPart, type Room, roofSpace } from './plan.ts';

export type WallKind = 'timber frame' | 'cavity' | 'solid, insulated outside' | 'solid, insulated inside';

const walls: Record<WallKind, Layer[]> = {
  'timber frame': [
    plasterboard,
    serviceSpace,
    { ...mineralWool(140, 0.036), bridge: timber('Studs and plates', 38, 600, 0.07) },
    solid('Sheathing board', 9, 0.13, 650, 1700),
    woodFibre(60),
    render,
  ],
  cavity: [plaster, { ...block, name: 'Block inner leaf' }, mineralWool(140, 0.035), brick(102)],
  'solid, insulated outside': [
    plaster,
    brick(215),
    solid('Expanded polystyrene', 140, 0.035, 18, 1450),
    render,
  ],
  'solid, insulated inside': [plasterboard, rigidFoam(90, 0.024), plaster, brick(215)],
};

const innerWall = (kind: WallKind): Layer[] => (kind === 'timber frame' ? studWall : blockWall);

const groundFloor = (kind: WallKind): Layer[] => [
  ...(kind === 'timber frame' ? [chipboard(22)] : [screed]),
  rigidFoam(120, 0.022),
  slab(150),
];

const rooms: Room[] = [
  { name: 'Living room', floorArea: 26, volume: 65, inletShare: 0.36, upTo: 'Upper floor', upShare: 0.7 },
  { name: 'Kitchen', floorArea: 22, volume: 55, inletShare: 0.34, upTo: 'Upper floor', upShare: 0.7 },
  { name: 'Upper floor', floorArea: 48, volume: 120, inletShare: 0.3, upTo: 'Roof void', upShare: 1 },
];

const bearings = { north: 0, east: 90, south: 180, west: 270 } as const;
type Bearing = keyof typeof bearings;

/** Of each room and side: the wall with its openings, the windows and the doors in it [m²]. */
const sides: readonly (readonly [string, Bearing, wall: number, windows: number, doors: number])[] = [
  ['Living room', 'south', 20.8, 4, 0],
  ['Living room', 'east', 8.45, 0, 0],
  ['Living room', 'west', 8.45, 1.5, 0],
  ['Kitchen', 'north', 20.8, 1.6, 2.1],
  ['Kitchen', 'east', 7.15, 1.5, 1.9],
  ['Kitchen', 'west', 7.15, 0, 0],
  ['Upper floor', 'south', 20.8, 3.2, 0],
  ['Upper floor', 'north', 20.8, 2.4, 0],
  ['Upper floor', 'east', 15.6, 0.8, 0],
  ['Upper floor', 'west', 15.6, 0.8, 0],
];

const outerParts = sides.flatMap(([room, side, wall, windows, doors]): PlacedPart[] => {
  const bearing = bearings[side];
  const parts = [{ of: 'External walls', area: wall - windows - doors, room, bearing }];
  if (windows > 0) parts.push({ of: `Windows ${side}`, area: windows, room, bearing });
  if (doors > 0) parts.push({ of: 'Doors', area: doors, room, bearing });
  return parts;
});

export function twoStoreyHouse(kind: WallKind): DetachedPlan {
  return {
    rooms,
    elements: [
      { name: 'External walls', buildUp: { facing: 'across', layers: walls[kind] } },
      {
        name: 'Ceiling',
        buildUp: {
          facing: 'up',
          layers: [
            plasterboard,
            { ...mineralWool(100, 0.04), bridge: timber('Joists', 47, 600) },
            { ...mineralWool(170, 0.04), name: 'Mineral wool over the joists' },
            roofSpace,
          ],
        },
      },
      ...(['south', 'north', 'east', 'west'] as const).map((side) => ({
        name: `Windows ${side}`,
        uValue: 1.3,
        gValue: 0.6,
        orientationDeg: bearings[side],
        tiltDeg: 90,
      })),
      { name: 'Doors', uValue: 1.4 },
    ],
    groundFloor: { name: 'Ground floor', layers: groundFloor(kind), perimeter: 28 },
    partitions: [
      { name: 'Inner walls', buildUp: { facing: 'across', layers: innerWall(kind) } },
      {
        name: 'Floor between the storeys',
        buildUp: {
          facing: 'up',
          layers: [plasterboard, { name: 'Space between the joists', resistanceM2KW: 0.18 }, chipboard(22)],
        },
      },
    ],
    parts: [
      ...outerParts,
      { of: 'Ceiling', area: 48, room: 'Upper floor' },
      { of: 'Ground floor', area: 26, room: 'Living room' },
      { of: 'Ground floor', area: 22, room: 'Kitchen' },
      { of: 'Inner walls', area: 18, room: 'Living room', beyond: 'Kitchen' },
      { of: 'Inner walls', area: 10, room: 'Kitchen' },
      { of: 'Inner walls', area: 42, room: 'Upper floor' },
      { of: 'Floor between the storeys', area: 26, room: 'Living room', beyond: 'Upper floor' },
      { of: 'Floor between the storeys', area: 22, room: 'Kitchen', beyond: 'Upper floor' },
    ],
    roofVoid: {
      over: 'Ceiling',
      volume: 50,
      vents: { steady: 3, wind: 1.2 },
      slopes: [
        { bearing: bearings.south, tilt: 35, area: 30 },
        { bearing: bearings.north, tilt: 35, area: 30 },
      ],
      layers: [{ name: 'Underlay and battens', resistanceM2KW: 0.06 }, solid('Tiles', 15, 1, 2000, 800)],
    },
    bridges: 11,
    exchanges: [
      { lower: 'Living room', upper: 'Kitchen', steady: 0.06, buoyant: 0 },
      { lower: 'Living room', upper: 'Upper floor', steady: 0.01, buoyant: 0.03 },
      { lower: 'Kitchen', upper: 'Upper floor', steady: 0.015, buoyant: 0.08 },
    ],
  };
}
