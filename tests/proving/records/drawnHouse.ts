/** `house.json` of a simulated house: the design as drawn, and what the builder tells besides. */
import { designOf } from '../../../src/fabric/index.ts';
import type { House } from '../../../src/house.ts';
import { areaOf } from '../plan.ts';
import { drawsOf } from './draws.ts';
import type { HouseRun } from './houseRun.ts';
import type { HungLogger } from './logged.ts';

export function drawnHouse(
  { plan, type, site, ownSeed, neighbours }: HouseRun,
  loggers: readonly HungLogger[],
): House {
  const draws = drawsOf(ownSeed, 'what the builder tells');
  const total = (key: 'volume' | 'floorArea') =>
    Number(plan.rooms.reduce((sum, room) => sum + room[key], 0).toFixed(2));
  const area = (name: string) => Number(areaOf(plan, name).toFixed(3));
  const { groundFloor } = plan;
  const toldNeighbour = neighbours.length > 0 && type.neighbourLogged === false && draws.chance(0.6);
  const meanNeighbour = neighbours
    .flatMap((it) => [...it])
    .reduce((sum, it, _, all) => sum + it / all.length, 0);
  return {
    name: `${type.name} (invented)`,
    location: { latitude: site.latitude, longitude: site.longitude, timeZone: site.timeZone },
    floorAreaM2: total('floorArea'),
    volumeM3: total('volume'),
    loggers: loggers.map(({ file, place, room, volume, element }) => ({
      file,
      place,
      ...(place !== 'outside' && { room }),
      ...(place === 'inside' && { volumeM3: Number(volume.toFixed(2)) }),
      ...(element !== undefined && { element }),
    })),
    conditions: {
      ventsClosed: true,
      ...(toldNeighbour && {
        neighbour: { temperatureC: Math.round(meanNeighbour + draws.source.normal()), plusMinusK: 2 },
      }),
    },
    elements: [
      ...plan.elements.map(({ name, ...element }) => ({ name, areaM2: area(name), ...element })),
      ...(groundFloor === undefined
        ? []
        : [
            {
              name: groundFloor.name,
              areaM2: area(groundFloor.name),
              to: 'ground' as const,
              perimeterM: groundFloor.perimeter,
              buildUp: { facing: 'down' as const, layers: [...groundFloor.layers] },
              ...(groundFloor.suspended && { underfloor: {} }),
            },
          ]),
    ],
    partitions: plan.partitions
      .map(({ name, buildUp }) => ({ name, areaM2: area(name), buildUp }))
      .filter(({ areaM2 }) => areaM2 > 0),
    thermalBridges: { psiLengthWK: plan.bridges },
    ventilation: {
      airChangesPerHour: type.drawnAirChanges.open,
      asTestedAirChangesPerHour: type.drawnAirChanges.tested,
    },
  };
}

/** The same house known by transmittances alone, and a capacity that somebody reckoned: off by a factor, sd 0.2. */
export function byTransmittance(house: House, ownSeed: number): House {
  const design = designOf(house);
  if (design === null || design.heatCapacity === null || house.floorAreaM2 === undefined)
    throw new Error(`${house.name} has no design`);
  const { partitions: _partitions, ...rest } = house;
  const perFloor = design.heatCapacity / 1000 / house.floorAreaM2;
  return {
    ...rest,
    elements: (house.elements ?? []).map(({ buildUp: _buildUp, underfloor: _underfloor, ...element }, k) => ({
      ...element,
      uValue: design.elements[k].transmittance ?? Number.NaN,
    })),
    heatCapacity: { kJPerM2K: perFloor * drawsOf(ownSeed, 'capacity figure').scatter(0.2) },
  };
}

/** What `measured over design` is measured against [W/K]. */
export function designHeatLoss(house: House): number {
  const design = designOf(house);
  const heatLoss = design?.heatLossAsTested ?? design?.heatLoss ?? null;
  if (heatLoss === null) throw new Error(`${house.name} has no design`);
  return heatLoss;
}
