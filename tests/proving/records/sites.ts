/** Where the invented houses stand. Climates in round figures (PRACTICE), places invented. */
import { type Climate, inlandEngland } from '../weather.ts';

export interface Site {
  readonly name: string;
  readonly climate: Climate;
  readonly latitude: number;
  readonly longitude: number;
  /** Without summer time, so that a local hour is the same all winter. */
  readonly timeZone: string;
  /** Local time less UTC [h]. */
  readonly fromUtc: number;
}

export const sites: readonly Site[] = [
  { name: 'inland', climate: inlandEngland, latitude: 52.2, longitude: -1.5, timeZone: 'UTC', fromUtc: 0 },
  {
    name: 'windy coast',
    climate: {
      meanTemperature: 9.8,
      seasonalSwing: 4.2,
      synopticDeviation: 2,
      meanWindSpeed: 7,
      cloudiness: 0.8,
    },
    latitude: 57.5,
    longitude: -5,
    timeZone: 'UTC',
    fromUtc: 0,
  },
  {
    name: 'cold and continental',
    climate: {
      meanTemperature: 7,
      seasonalSwing: 10.5,
      synopticDeviation: 4,
      meanWindSpeed: 3.2,
      cloudiness: 0.3,
    },
    latitude: 49.5,
    longitude: 17,
    timeZone: 'Etc/GMT-1',
    fromUtc: 1,
  },
  {
    name: 'mild',
    climate: {
      meanTemperature: 12.6,
      seasonalSwing: 5.6,
      synopticDeviation: 2.3,
      meanWindSpeed: 3.8,
      cloudiness: 0.1,
    },
    latitude: 45,
    longitude: 0.5,
    timeZone: 'Etc/GMT-1',
    fromUtc: 1,
  },
  {
    name: 'northern',
    climate: {
      meanTemperature: 5.5,
      seasonalSwing: 9,
      synopticDeviation: 3.6,
      meanWindSpeed: 4.5,
      cloudiness: 0.7,
    },
    latitude: 60,
    longitude: 14,
    timeZone: 'Etc/GMT-1',
    fromUtc: 1,
  },
  {
    name: 'high valley',
    climate: {
      meanTemperature: 7.5,
      seasonalSwing: 9,
      synopticDeviation: 3,
      meanWindSpeed: 2.2,
      cloudiness: -0.2,
    },
    latitude: 47,
    longitude: 11,
    timeZone: 'Etc/GMT-1',
    fromUtc: 1,
  },
];
