/** Whether moist air of the rooms gets into a void: its vapour above that outdoors, where both were logged. */
import { mean, standardDeviation } from 'simple-statistics';
import { absoluteHumidity, vapourPressure } from '../../air/index.ts';
import { NORMAL_95 } from '../../maths/logInterval.ts';
import { studentTQuantile } from '../../maths/studentT.ts';
import type { RoomSeries } from '../../series/record.ts';
import { chanceOf } from './chance.ts';
import { type Sight, standsOut } from './look.ts';
import { meanOver, type UsedNight } from './nights.ts';
import { FEWEST_NIGHTS } from './voids.ts';
import type { ToLook } from './whereToLook.ts';

/** Of a logger's relative humidity, one standard deviation [–]. PRACTICE: ±3 to 4 % as such sensors are sold. */
const HUMIDITY_SD = 0.02;
/** Timber and lining boards give off and take up so much more or less than outdoors has [kg/m³]. PRACTICE. */
const TIMBER_SD = 0.3e-3;

/** One for each void logger with humidity, where one outdoors has it too. */
export function moistureSeen({ record: { rooms } }: ToLook, nights: readonly UsedNight[]): Sight[] {
  const withHumidity = (place: RoomSeries['place']) =>
    rooms.filter((it) => it.place === place).flatMap((it) => vapourOf(it) ?? []);
  const outside = withHumidity('outside')[0];
  if (outside === undefined) return [];
  const inside = withHumidity('inside');
  return withHumidity('void').flatMap((it) => moistureOf(it, outside, inside, nights) ?? []);
}

interface Vapour {
  readonly logger: RoomSeries;
  /** [kg/m³], on the grid */
  readonly density: Float64Array;
  /** One standard deviation by the sensor, at a cell [kg/m³]. */
  readonly sd: (cell: number) => number;
}

function vapourOf(logger: RoomSeries): Vapour | null {
  const { temperature, relativeHumidity } = logger;
  if (relativeHumidity === null) return null;
  const at = (cell: number, humidity: number) =>
    absoluteHumidity(temperature[cell], vapourPressure(temperature[cell], humidity));
  return {
    logger,
    density: relativeHumidity.map((it, cell) => at(cell, it)),
    sd: (cell) => at(cell, HUMIDITY_SD),
  };
}

function moistureOf(
  { logger, density, sd }: Vapour,
  outside: Vapour,
  inside: readonly Vapour[],
  used: readonly UsedNight[],
): Sight | null {
  const { room: place, file } = logger;
  const over = (value: (cell: number) => number) => used.map(({ window }) => meanOver(window, value));
  const known = (values: readonly (number | null)[]) => values.filter((it) => it !== null);
  const excesses = known(over((i) => density[i] - outside.density[i]));
  if (excesses.length < FEWEST_NIGHTS) return null;
  const value = mean(excesses);
  const freedom = excesses.length - 1;
  const se = Math.max(LEAST_SE, standardDeviation(excesses) / Math.sqrt(freedom));
  const sensors = mean(known(over((i) => Math.hypot(sd(i), outside.sd(i)))));
  const half = Math.hypot(studentTQuantile(0.975, freedom) * se, NORMAL_95 * sensors);
  const rooms = known(inside.flatMap((it) => over((i) => it.density[i] - outside.density[i])));
  const roomsExcess = rooms.length > 0 ? mean(rooms) : 0;
  const share = roomsExcess > 0 ? value / roomsExcess : null;
  const figure = { value, low: value - half, high: value + half };
  return {
    place,
    file,
    kind: 'void-moisture',
    figure,
    expected: null,
    inWind: null,
    chance: chanceOf(value, se, freedom, Math.hypot(sensors, TIMBER_SD)),
    say: ({ chance }) =>
      chance !== null && standsOut(chance)
        ? [{ code: 'look-void-moist', place, excess: figure, share, chance }]
        : [],
  };
}

/** No two loggers agree better from night to night [kg/m³]. */
const LEAST_SE = 1e-6;
