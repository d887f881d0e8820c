/** The plan of a house that is a box, from the few figures that tell such houses apart. */
import type { Layer } from '../../../src/house.ts';
import {
  type GroundFloor,
  type PlacedPart,
  type Plan,
  type RoofVoid,
  type Room,
  roofSpace,
  voidName,
} from '../plan.ts';
import { chipboard, plasterboard, solid } from './layers.ts';

export const bearings = { north: 0, east: 90, south: 180, west: 270 } as const;
export type Side = keyof typeof bearings;
const sides = ['south', 'north', 'east', 'west'] as const;

export interface Box {
  /** East to west, and south to north, inside [m]. */
  readonly length: number;
  readonly width: number;
  readonly storeys: 1 | 2;
  /** Of a storey [m]. */
  readonly height: number;
  /** Of a storey that has two: one to the south and one to the north. */
  readonly rooms: 1 | 2;
  readonly walls: readonly Layer[];
  /** Sides that are against a heated neighbour: the first or the second. */
  readonly against?: Readonly<Partial<Record<Side, 0 | 1>>>;
  readonly partyWall?: readonly Layer[];
  /** [m²] of each side, and what all of them are. */
  readonly windows: Readonly<Record<Side, number>>;
  readonly glazing: { readonly uValue: number; readonly gValue: number };
  /** On the side named [m²]. */
  readonly door?: { readonly side: Side; readonly area: number; readonly uValue: number };
  readonly top: Top;
  readonly bottom: Bottom;
  readonly innerWalls: readonly Layer[];
  /** One face, per floor area. */
  readonly innerWallShare: number;
  /** [W/K] */
  readonly bridges: number;
}

export type Top =
  /** A level ceiling under a vented roof void, which is drawn as a layer or as an unheated space. */
  | { readonly kind: 'roof void'; readonly ceiling: readonly Layer[]; readonly drawn: 'layer' | 'void' }
  | { readonly kind: 'flat'; readonly layers: readonly Layer[] }
  /** Two slopes down to knee walls, behind which lies the unheated rest of the roof [degrees, m]. */
  | {
      readonly kind: 'pitched';
      readonly layers: readonly Layer[];
      readonly tilt: number;
      readonly knee?: { readonly height: number; readonly layers: readonly Layer[] };
    };

export type Bottom = { readonly kind: 'slab' | 'suspended' | 'neighbour'; readonly layers: readonly Layer[] };

export function boxPlan(box: Box): Plan {
  const rooms = roomsOf(box);
  const ground = rooms.filter(({ storey }) => storey === 0);
  const top = rooms.filter(({ storey }) => storey === box.storeys - 1);
  const roof = roofOf(box, top);
  const { bottom } = box;
  return {
    rooms: rooms.map(({ storey: _storey, depth: _depth, faces: _faces, ...room }) => room),
    elements: [
      { name: 'External walls', buildUp: { facing: 'across', layers: [...box.walls] } },
      ...(box.partyWall === undefined
        ? []
        : [
            {
              name: 'Party walls',
              to: 'adjacent' as const,
              buildUp: { facing: 'across' as const, layers: [...box.partyWall] },
            },
          ]),
      ...roof.elements,
      ...sides
        .filter((side) => box.windows[side] > 0)
        .map((side) => ({
          name: `Windows ${side}`,
          ...box.glazing,
          orientationDeg: bearings[side],
          tiltDeg: 90,
        })),
      ...(box.door === undefined ? [] : [{ name: 'Doors', uValue: box.door.uValue }]),
      ...(bottom.kind === 'neighbour'
        ? [
            {
              name: 'Floor',
              to: 'adjacent' as const,
              buildUp: { facing: 'down' as const, layers: [...bottom.layers] },
            },
          ]
        : []),
    ],
    ...(bottom.kind !== 'neighbour' && { groundFloor: groundFloorOf(box, bottom.layers) }),
    ...(roof.roofVoid !== undefined && { roofVoid: roof.roofVoid }),
    partitions: [
      { name: 'Inner walls', buildUp: { facing: 'across', layers: [...box.innerWalls] } },
      ...(box.storeys === 1 ? [] : [{ name: 'Floor between the storeys', buildUp: betweenStoreys }]),
    ],
    parts: [
      ...rooms.flatMap((room) => wallParts(box, room)),
      ...roof.parts,
      ...ground.map(({ name, floorArea }) => ({
        of: bottom.kind === 'neighbour' ? 'Floor' : 'Ground floor',
        area: floorArea,
        room: name,
      })),
      ...innerParts(box, rooms),
    ],
    bridges: box.bridges,
    exchanges: exchangesOf(rooms),
  };
}

interface PlacedRoom extends Room {
  readonly storey: number;
  /** South to north [m]. */
  readonly depth: number;
  readonly faces: readonly Side[];
}

function roomsOf(box: Box): PlacedRoom[] {
  const underRoof = box.top.kind === 'roof void' ? { upTo: voidName, upShare: 1 } : {};
  const height = meanHeight(box);
  const room = (name: string, storey: number, share: number, faces: readonly Side[], upTo: object) => {
    const depth = box.width * share;
    const floorArea = box.length * depth;
    const volume = floorArea * (storey === box.storeys - 1 ? height : box.height);
    return { name, storey, depth, faces, floorArea, volume, inletShare: share / box.storeys, ...upTo };
  };
  const upper = box.storeys === 1 ? underRoof : { upTo: 'Upper floor', upShare: 0.7 };
  const ground =
    box.rooms === 1
      ? [room('Living room', 0, 1, sides, upper)]
      : [
          room('Living room', 0, 0.55, ['south', 'east', 'west'], upper),
          room('Kitchen', 0, 0.45, ['north', 'east', 'west'], upper),
        ];
  return box.storeys === 1 ? ground : [...ground, room('Upper floor', 1, 1, sides, underRoof)];
}

/** Of the top storey: under slopes, of the room between the knee walls [m]. */
function meanHeight({ top, height, width }: Box): number {
  if (top.kind !== 'pitched') return height;
  const knee = top.knee?.height ?? height;
  return knee + (width / 4) * Math.tan((top.tilt * Math.PI) / 180);
}

function wallParts(box: Box, room: PlacedRoom): PlacedPart[] {
  return room.faces.flatMap((side): PlacedPart[] => {
    const isLong = side === 'south' || side === 'north';
    const underKnee = box.top.kind === 'pitched' && box.top.knee !== undefined;
    if (isLong && underKnee) return [];
    const isTop = room.storey === box.storeys - 1;
    const height = isLong || !isTop ? box.height : meanHeight(box);
    const whole = (isLong ? box.length : room.depth) * height;
    const place = { room: room.name, bearing: bearings[side] };
    const neighbour = box.against?.[side];
    if (neighbour !== undefined) return [{ of: 'Party walls', area: whole, room: room.name, neighbour }];
    const share = isLong ? 1 / box.storeys : room.depth / (box.width * box.storeys);
    const windows = box.windows[side] * share;
    const door = box.door?.side === side && room.storey === 0 ? box.door.area : 0;
    const parts = [{ of: 'External walls', area: whole - windows - door, ...place }];
    if (windows > 0) parts.push({ of: `Windows ${side}`, area: windows, ...place });
    if (door > 0) parts.push({ of: 'Doors', area: door, ...place });
    return parts;
  });
}

function roofOf(
  box: Box,
  rooms: readonly PlacedRoom[],
): Pick<Plan, 'elements' | 'parts'> & { roofVoid?: RoofVoid } {
  const { top, length, width } = box;
  const over = (of: string) => rooms.map(({ name, floorArea }) => ({ of, area: floorArea, room: name }));
  if (top.kind === 'flat')
    return {
      elements: [{ name: 'Flat roof', buildUp: { facing: 'up', layers: [...top.layers] } }],
      parts: over('Flat roof').map((part) => ({ ...part, tilt: 0 })),
    };
  if (top.kind === 'roof void') {
    const drawn =
      top.drawn === 'layer' ? { layers: [...top.ceiling, roofSpace] } : { layers: [...top.ceiling] };
    return {
      elements: [
        {
          name: 'Ceiling',
          ...(top.drawn === 'void' && { to: 'void' as const }),
          buildUp: { facing: 'up', ...drawn },
        },
      ],
      parts: over('Ceiling'),
      roofVoid: voidOver(length, width),
    };
  }
  const slope = (length * width) / 2 / Math.cos((top.tilt * Math.PI) / 180);
  const kneeArea = length * (top.knee?.height ?? 0);
  return {
    elements: [
      { name: 'Pitched roof', tiltDeg: top.tilt, buildUp: { facing: 'up', layers: [...top.layers] } },
      ...(top.knee === undefined
        ? []
        : [
            {
              name: 'Knee walls',
              to: 'void' as const,
              buildUp: { facing: 'across' as const, layers: [...top.knee.layers] },
            },
          ]),
    ],
    parts: (['south', 'north'] as const).flatMap((side) => {
      const facing = rooms.filter(({ faces }) => faces.includes(side))[0];
      const place = { room: facing.name, bearing: bearings[side] };
      return [
        { of: 'Pitched roof', area: slope, tilt: top.tilt, ...place },
        ...(kneeArea > 0 ? [{ of: 'Knee walls', area: kneeArea, ...place }] : []),
      ];
    }),
  };
}

function voidOver(length: number, width: number): RoofVoid {
  const tilt = 35;
  const area = (length * width) / 2 / Math.cos((tilt * Math.PI) / 180);
  return {
    over: 'Ceiling',
    volume: (length * width ** 2 * Math.tan((tilt * Math.PI) / 180)) / 4,
    vents: { steady: 3, wind: 1.2 },
    slopes: [
      { bearing: bearings.south, tilt, area },
      { bearing: bearings.north, tilt, area },
    ],
    layers: [{ name: 'Underlay and battens', resistanceM2KW: 0.06 }, solid('Tiles', 15, 1, 2000, 800)],
  };
}

function groundFloorOf(box: Box, layers: readonly Layer[]): GroundFloor {
  const exposed = sides.filter((side) => box.against?.[side] === undefined);
  const perimeter = exposed.reduce(
    (sum, side) => sum + (side === 'south' || side === 'north' ? box.length : box.width),
    0,
  );
  return {
    name: 'Ground floor',
    layers,
    perimeter,
    ...(box.bottom.kind === 'suspended' && { suspended: true }),
  };
}

const betweenStoreys = {
  facing: 'up' as const,
  layers: [plasterboard, { name: 'Space between the joists', resistanceM2KW: 0.18 }, chipboard(22)],
};

function innerParts(box: Box, rooms: readonly PlacedRoom[]): PlacedPart[] {
  const ground = rooms.filter(({ storey }) => storey === 0);
  const upper = rooms.filter(({ storey }) => storey === 1);
  const dividing = ground.length > 1 ? box.length * box.height : 0;
  return [
    ...rooms.map(({ name, floorArea }) => ({
      of: 'Inner walls',
      area: box.innerWallShare * floorArea,
      room: name,
    })),
    ...(dividing > 0
      ? [{ of: 'Inner walls', area: dividing, room: ground[0].name, beyond: ground[1].name }]
      : []),
    ...upper.flatMap((above) =>
      ground.map(({ name, floorArea }) => ({
        of: 'Floor between the storeys',
        area: floorArea,
        room: name,
        beyond: above.name,
      })),
    ),
  ];
}

/** Through doors that stand open, and up the stairs. */
function exchangesOf(rooms: readonly PlacedRoom[]): Plan['exchanges'] {
  const [first, ...others] = rooms;
  return others.flatMap((room) =>
    room.storey === 0
      ? [{ lower: first.name, upper: room.name, steady: 0.06, buoyant: 0 }]
      : rooms
          .filter(({ storey }) => storey === 0)
          .map(({ name }) => ({ lower: name, upper: room.name, steady: 0.012, buoyant: 0.05 })),
  );
}
