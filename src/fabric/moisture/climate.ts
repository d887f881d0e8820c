/** The air on both sides of a build-up through a mean year. */
import { type HumidityClass, moistureExcess, saturationPressure, vapourPressure } from '../../air/index.ts';

/** Twelve monthly means, from January. */
export interface MonthlyAir {
  /** [°C] */
  readonly temperature: readonly number[];
  /** [–, 0 to 1] */
  readonly relativeHumidity: readonly number[];
}

export interface Climate extends MonthlyAir {
  readonly name: string;
}

/** The air inside: measured or agreed month by month, or by what the building is used for. */
export type InsideAir =
  | ({ readonly kind: 'given' } & MonthlyAir)
  | { readonly kind: 'class'; readonly humidityClass: HumidityClass; readonly temperature: number };

/** One month on both sides. */
export interface MonthOfAir {
  /** 0 for January. */
  readonly month: number;
  /** [s] */
  readonly duration: number;
  /** [°C] */
  readonly insideTemperature: number;
  readonly outsideTemperature: number;
  /** Of the vapour [Pa]. */
  readonly insidePressure: number;
  readonly outsidePressure: number;
}

const daysOfMonths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const secondsOfDay = 86_400;

/** Invented years to try a build-up with; for a real place, put its own twelve months in. */
export const exampleClimates: readonly Climate[] = [
  {
    name: 'Mild and damp (invented)',
    temperature: [4, 4, 6, 8, 11, 14, 16, 16, 14, 11, 7, 5],
    relativeHumidity: [0.88, 0.85, 0.81, 0.78, 0.76, 0.76, 0.77, 0.79, 0.82, 0.86, 0.88, 0.89],
  },
  {
    name: 'Cold winter, warm summer (invented)',
    temperature: [-4, -2, 3, 9, 14, 17, 19, 18, 14, 9, 3, -2],
    relativeHumidity: [0.86, 0.82, 0.75, 0.69, 0.68, 0.69, 0.7, 0.73, 0.78, 0.82, 0.87, 0.88],
  },
];

/**
 * Both sides of the build-up for each month, from January.
 *
 * By class, the air inside has the vapour of outside and the upper bound of its class on top, never more than
 * saturated.
 *
 * @throws RangeError unless there are twelve figures of each
 * @see ISO 13788:2012, clause 4.3 and Annex A
 */
export function monthsOfAir(outside: MonthlyAir, inside: InsideAir): MonthOfAir[] {
  assertTwelve(outside);
  if (inside.kind === 'given') assertTwelve(inside);
  return daysOfMonths.map((days, month) => {
    const outsideTemperature = outside.temperature[month];
    const outsidePressure = vapourPressure(outsideTemperature, outside.relativeHumidity[month]);
    return {
      month,
      duration: days * secondsOfDay,
      outsideTemperature,
      outsidePressure,
      ...insideMonth(inside, month, outsideTemperature, outsidePressure),
    };
  });
}

function insideMonth(
  inside: InsideAir,
  month: number,
  outsideTemperature: number,
  outsidePressure: number,
): Pick<MonthOfAir, 'insideTemperature' | 'insidePressure'> {
  if (inside.kind === 'given') {
    const insideTemperature = inside.temperature[month];
    const insidePressure = vapourPressure(insideTemperature, inside.relativeHumidity[month]);
    return { insideTemperature, insidePressure };
  }
  const excess = moistureExcess(inside.humidityClass, outsideTemperature).pressure;
  return {
    insideTemperature: inside.temperature,
    insidePressure: Math.min(outsidePressure + excess, saturationPressure(inside.temperature)),
  };
}

function assertTwelve({ temperature, relativeHumidity }: MonthlyAir): void {
  if (temperature.length !== 12 || relativeHumidity.length !== 12)
    throw new RangeError('a year has twelve temperatures and twelve humidities');
}
