/** The model of a house as built, from its plan. */
import type { Layer } from '../../src/house.ts';
import type { BareResistance } from './conduction.ts';
import type { Face } from './films.ts';
import type { Model, Piece, Zone } from './model.ts';
import {
  areaOf,
  asBuilt,
  type Deviations,
  floorLayers,
  type PlacedPart,
  type Plan,
  voidName,
} from './plan.ts';
import {
  evenLayers,
  insideResistance,
  layersResistance,
  outsideResistance,
  slabTransmittance,
} from './transmittance.ts';

const faces: Record<'up' | 'across' | 'down', Face> = { up: 'ceiling', across: 'wall', down: 'floor' };
const frameAndShade = 0.7 * 0.85; // glass of the window, and what curtains and reveals leave
const soil: Layer = {
  name: 'Soil',
  thicknessMm: 1000,
  conductivityWmK: 1.5, // clay or silt, 3.0 MJ/(m³K), ISO 13370:2017
  densityKgM3: 1800,
  specificHeatJkgK: 1670,
};

export function makeModel(plan: Plan, built: Deviations): Model {
  const zoneOf = new Map([...plan.rooms.map((room) => room.name), voidName].map((name, z) => [name, z]));
  const zone = (name: string) => {
    const z = zoneOf.get(name);
    if (z === undefined) throw new RangeError(`no room "${name}" in the plan`);
    return z;
  };
  const volume = plan.rooms.reduce((sum, room) => sum + room.volume, 0);
  const rooms = plan.rooms.map(
    (room): Zone => ({
      name: room.name,
      volume: room.volume,
      furnitureCapacity: 6000 * room.floorArea, // an unfurnished house: doors, kitchen units, crates
      furnitureArea: 0.4 * room.floorArea,
      bridges: (plan.bridges * built.bridges * room.volume) / volume,
      inletShare: room.inletShare,
      passesTo: [{ zone: zone(room.upTo), share: room.upShare }],
      vents: { steady: 0, wind: 0 },
      moisture: { source: 3.2e-7 * room.volume, exchange: 1e-3 * room.volume, capacity: 0.12 * room.volume },
    }),
  );
  const { roofVoid } = plan;
  const loft: Zone = {
    name: voidName,
    volume: roofVoid.volume,
    furnitureCapacity: 6e5, // rafters and trusses
    furnitureArea: 30,
    bridges: 0,
    inletShare: 0,
    passesTo: [],
    vents: roofVoid.vents,
    moisture: { source: 0, exchange: 0.3, capacity: 40 },
  };
  return {
    zones: [...rooms, loft],
    heatedZones: plan.rooms.map((_, z) => z),
    pieces: [...shellPieces(plan, built, zone), ...innerPieces(plan, built, zone), ...slopes(plan, zone)],
    exchanges: plan.exchanges.map((it) => ({ ...it, lower: zone(it.lower), upper: zone(it.upper) })),
    shelter: 0.6,
    openSky: 0.7,
  };
}

type ZoneOf = (name: string) => number;

function shellPieces(plan: Plan, built: Deviations, zone: ZoneOf): Piece[] {
  const { groundFloor, roofVoid } = plan;
  const inside = (part: PlacedPart, face: Face) => ({ kind: 'zone', zone: zone(part.room), face }) as const;
  const elements = plan.elements.flatMap((element) =>
    partsOf(plan, element.name).map((part): Piece => {
      const facing = element.buildUp?.facing ?? 'across';
      const isCeiling = element.name === roofVoid.over;
      return {
        name: element.name,
        area: part.area,
        layers: isCeiling
          ? evenLayers(asBuilt(element.buildUp?.layers ?? [], element.name, built), facing).slice(0, -1)
          : element.buildUp !== undefined
            ? evenLayers(asBuilt(element.buildUp.layers, element.name, built), facing)
            : [bareResistance((element.uValue ?? 0) * (built.transmittance[element.name] ?? 1))],
        inside: inside(part, faces[facing]),
        outside: isCeiling
          ? { kind: 'zone', zone: zone(voidName), face: 'floor' }
          : {
              kind: 'outside',
              bearing: part.bearing ?? 0,
              tilt: 90,
              absorptance: element.gValue === undefined ? 0.6 : 0,
            },
        solarShare: (element.gValue ?? 0) * frameAndShade,
      };
    }),
  );
  const layers = floorLayers(plan, built);
  const above = layersResistance(layers);
  const whole = 1 / slabTransmittance(above, areaOf(plan, groundFloor.name), groundFloor.perimeter);
  const earth = evenLayers([soil], 'down');
  const floors = partsOf(plan, groundFloor.name).map(
    (part): Piece => ({
      name: groundFloor.name,
      area: part.area,
      layers: [...layers, ...earth],
      inside: inside(part, 'floor'),
      outside: {
        kind: 'ground',
        resistance: whole - insideResistance.down - above - layersResistance(earth),
      },
      solarShare: 0,
    }),
  );
  return [...elements, ...floors];
}

/** A partition faces a room on either side; a floor between storeys is drawn from the lower room up. */
function innerPieces(plan: Plan, built: Deviations, zone: ZoneOf): Piece[] {
  return plan.partitions.flatMap(({ name, buildUp }) =>
    partsOf(plan, name).map(
      (part): Piece => ({
        name,
        area: part.area,
        layers: evenLayers(asBuilt(buildUp.layers, name, built), buildUp.facing ?? 'across'),
        inside: { kind: 'zone', zone: zone(part.room), face: faces[buildUp.facing ?? 'across'] },
        outside: {
          kind: 'zone',
          zone: zone(part.beyond ?? part.room),
          face: buildUp.facing === 'up' ? 'floor' : 'wall',
        },
        solarShare: 0,
      }),
    ),
  );
}

function slopes({ roofVoid }: Plan, zone: ZoneOf): Piece[] {
  return roofVoid.slopes.map(({ bearing, tilt, area }) => ({
    name: 'Roof slope',
    area,
    layers: evenLayers(roofVoid.layers, 'up'),
    inside: { kind: 'zone', zone: zone(voidName), face: 'ceiling' },
    outside: { kind: 'outside', bearing, tilt, absorptance: 0.75 },
    solarShare: 0,
  }));
}

const bareResistance = (uValue: number): BareResistance => ({
  resistance: 1 / uValue - insideResistance.across - outsideResistance,
});

const partsOf = (plan: Plan, name: string) => plan.parts.filter((part) => part.of === name);
