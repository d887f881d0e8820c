/** `house.json` of the demonstration house: what its drawings say. */
import type { House } from '../../src/house.ts';
import { areaOf } from './plan.ts';
import { constantGains, drawnAirChanges, place, plan, stages } from './sample.ts';

export function sampleHouse(): House {
  const volume = (room: string) => plan.rooms.find(({ name }) => name === room)?.volume;
  const total = (key: 'volume' | 'floorArea') => plan.rooms.reduce((sum, room) => sum + room[key], 0);
  const area = (name: string) => Number(areaOf(plan, name).toFixed(2));
  const ground = plan.groundFloor;
  return {
    name: 'Demonstration house (invented)',
    location: { ...place, timeZone: 'Europe/London' },
    floorAreaM2: total('floorArea'),
    volumeM3: total('volume'),
    loggers: [
      { file: 'living.csv', place: 'inside', room: 'Living room', volumeM3: volume('Living room') },
      { file: 'kitchen.csv', place: 'inside', room: 'Kitchen', volumeM3: volume('Kitchen') },
      { file: 'bedroom.csv', place: 'inside', room: 'Bedroom', volumeM3: volume('Upper floor') },
      { file: 'outside.csv', place: 'outside' },
      { file: 'roof-void.csv', place: 'void', element: 'Ceiling' },
    ],
    weather: [
      {
        file: 'weather.csv',
        timeZone: 'UTC',
        columns: {
          time: 'time_utc',
          temperature: 'air_temperature_c',
          windSpeed: 'wind_speed_m_s',
          irradiance: 'global_irradiance_w_m2',
        },
      },
    ],
    heat: [{ file: 'heater.csv', kind: 'power' }],
    notes: [
      { at: '2027-01-25T14:00', text: 'Service holes filled' },
      { at: '2027-01-27T11:30', text: 'Loft hatch fitted' },
      {
        at: '2027-02-04T17:00',
        text: 'Three electric heaters on one meter until 23:00; nobody in the house',
      },
    ],
    constantGainsW: constantGains.reduce((sum, gain) => sum + gain, 0),
    stages: stages.map((stage) => ({ ...stage })),
    elements: [
      ...plan.elements.map(({ name, ...element }) => ({ name, areaM2: area(name), ...element })),
      {
        name: ground.name,
        areaM2: area(ground.name),
        to: 'ground',
        perimeterM: ground.perimeter,
        buildUp: { facing: 'down' as const, layers: [...ground.layers] },
      },
    ],
    partitions: plan.partitions.map(({ name, buildUp }) => ({ name, areaM2: area(name), buildUp })),
    thermalBridges: { psiLengthWK: plan.bridges },
    ventilation: {
      airChangesPerHour: drawnAirChanges.ventsOpen,
      asTestedAirChangesPerHour: drawnAirChanges.ventsShut,
    },
  };
}
