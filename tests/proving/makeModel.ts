/** The model of a house as built, from its plan. */
import type { Layer } from '../../src/house.ts';
import type { BareResistance, SlabLayer } from './conduction.ts';
import type { Face } from './films.ts';
import type { Model, Piece, Zone } from './model.ts';
import {
  areaOf,
  asBuilt,
  type Deviations,
  floorTransmittance,
  type GroundFloor,
  type PlacedPart,
  type Plan,
  type RoofVoid,
  voidFactor,
  voidName,
} from './plan.ts';
import { evenLayers, insideResistance, layersResistance, outsideResistance } from './transmittance.ts';

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
  const { roofVoid, groundFloor } = plan;
  const names = [...plan.rooms.map((room) => room.name), ...(roofVoid === undefined ? [] : [voidName])];
  const zoneOf = new Map(names.map((name, z) => [name, z]));
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
      passesTo: room.upTo === undefined ? [] : [{ zone: zone(room.upTo), share: room.upShare ?? 1 }],
      vents: { steady: 0, wind: 0 },
      moisture: { source: 3.2e-7 * room.volume, exchange: 1e-3 * room.volume, capacity: 0.12 * room.volume },
    }),
  );
  return {
    zones: roofVoid === undefined ? rooms : [...rooms, loftOf(roofVoid)],
    heatedZones: plan.rooms.map((_, z) => z),
    pieces: [
      ...shellPieces(plan, built, zone),
      ...(groundFloor === undefined ? [] : floorPieces(plan, groundFloor, built, zone)),
      ...innerPieces(plan, built, zone),
      ...(roofVoid === undefined ? [] : slopes(roofVoid, zone)),
    ],
    exchanges: plan.exchanges.map((it) => ({ ...it, lower: zone(it.lower), upper: zone(it.upper) })),
    shelter: 0.6,
    openSky: 0.7,
  };
}

type ZoneOf = (name: string) => number;

const loftOf = (roofVoid: RoofVoid): Zone => ({
  name: voidName,
  volume: roofVoid.volume,
  furnitureCapacity: 6e5, // rafters and trusses
  furnitureArea: 30,
  bridges: 0,
  inletShare: 0,
  passesTo: [],
  vents: roofVoid.vents,
  moisture: { source: 0, exchange: 0.3, capacity: 40 },
});

function shellPieces(plan: Plan, built: Deviations, zone: ZoneOf): Piece[] {
  return plan.elements.flatMap((element) =>
    partsOf(plan, element.name).map((part): Piece => {
      const facing = element.buildUp?.facing ?? 'across';
      const layers =
        element.buildUp !== undefined
          ? evenLayers(asBuilt(element.buildUp.layers, element.name, built), facing)
          : [bareResistance((element.uValue ?? 0) * (built.transmittance[element.name] ?? 1))];
      return {
        name: element.name,
        area: part.area,
        inside: { kind: 'zone', zone: zone(part.room), face: faces[facing] },
        solarShare: (element.gValue ?? 0) * frameAndShade,
        ...beyond(plan, element, part, layers, built, zone),
      };
    }),
  );
}

/** What lies behind an element's part, and its layers as far as that. */
function beyond(
  { roofVoid }: Plan,
  element: Plan['elements'][number],
  part: PlacedPart,
  layers: SlabLayer[],
  built: Deviations,
  zone: ZoneOf,
): Pick<Piece, 'layers' | 'outside'> {
  const facing = element.buildUp?.facing ?? 'across';
  if (element.name === roofVoid?.over) {
    const drawnRoof = element.to === 'void' ? 0 : 1; // the last layer then stands for the roof space
    return {
      layers: layers.slice(0, layers.length - drawnRoof),
      outside: { kind: 'zone', zone: zone(voidName), face: 'floor' },
    };
  }
  if (element.to === 'adjacent')
    return {
      layers,
      outside: { kind: 'neighbour', neighbour: part.neighbour ?? 0, resistance: insideResistance[facing] },
    };
  return {
    layers: element.to === 'void' ? [...layers, shelterBehind(element, layers, built)] : layers,
    outside: {
      kind: 'outside',
      bearing: part.bearing ?? 0,
      tilt: part.tilt ?? 90,
      absorptance: element.gValue === undefined && element.to !== 'void' ? 0.6 : 0,
    },
  };
}

/** An unheated space without a zone of its own: what it shelters, as a resistance. */
function shelterBehind(
  { name, temperatureFactor = voidFactor, buildUp }: Plan['elements'][number],
  layers: readonly SlabLayer[],
  built: Deviations,
): BareResistance {
  const film = insideResistance[buildUp?.facing ?? 'across'];
  const more = (1 / temperatureFactor - 1) * (built.shelter?.[name] ?? 1);
  return { resistance: more * (2 * film + layersResistance(layers)) + film - outsideResistance };
}

function floorPieces(plan: Plan, floor: GroundFloor, built: Deviations, zone: ZoneOf): Piece[] {
  const layers = evenLayers(asBuilt(floor.layers, floor.name, built), 'down');
  const { whole, airShare } = floorTransmittance(floor, areaOf(plan, floor.name), built);
  const earth = floor.suspended ? [] : evenLayers([soil], 'down');
  const resistance = 1 / whole - insideResistance.down - layersResistance([...layers, ...earth]);
  const share = floor.suspended
    ? { airShare }
    : floor.edgeShare === undefined
      ? {}
      : { edgeShare: floor.edgeShare };
  return partsOf(plan, floor.name).map(
    (part): Piece => ({
      name: floor.name,
      area: part.area,
      layers: [...layers, ...earth],
      inside: { kind: 'zone', zone: zone(part.room), face: 'floor' },
      outside: { kind: 'ground', resistance, ...share },
      solarShare: 0,
    }),
  );
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

function slopes(roofVoid: RoofVoid, zone: ZoneOf): Piece[] {
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
