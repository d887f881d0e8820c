/** A heated night read by its two slopes: warming under a known power, then cooling without it. */
import { linearLeastSquares } from '../maths/leastSquares.ts';
import { logInterval } from '../maths/logInterval.ts';
import { type Grid, indexAt, timesBetween } from '../series/grid.ts';
import type { HouseRecord } from '../series/record.ts';
import type { HeatLossEstimate, HeatLossNote } from './estimate.ts';

/** The end of a phase: heating power, mean inside less outside, and the slope of the inside temperature. */
export interface Phase {
  /** [W] */
  readonly power: number;
  /** [K] */
  readonly difference: number;
  /** [K/s] */
  readonly slope: number;
}

/** The two-slope answer; both are infinite or negative where the phases tell nothing. */
export interface TwoSlopes {
  /** [W/K] */
  readonly heatLossCoefficient: number;
  /** Capacity that took part [J/K]. */
  readonly heatCapacity: number;
}

/**
 * One node, C·dT/dt = P − H·D in each of two phases, solved for H and C.
 *
 * @see Pandraud and Fitton 2014; Alzetto et al. 2018 (heat-then-cool test), written from memory of both
 */
export function twoSlopes(heating: Phase, cooling: Phase): TwoSlopes {
  const { power: p1, difference: d1, slope: a1 } = heating;
  const { power: p2, difference: d2, slope: a2 } = cooling;
  return {
    heatLossCoefficient: (p1 * a2 - p2 * a1) / (d1 * a2 - d2 * a1),
    heatCapacity: (p1 * d2 - p2 * d1) / (a1 * d2 - a2 * d1),
  };
}

/** Each slope is taken over the end of its phase [s]. */
const SLOPE_SPAN = 2 * 3600;
/** Air and linings settle after each switch; a phase needs this long before its slope begins [s]. */
const SETTLING = 1.5 * 3600;
/**
 * The mass does not act as one node over hours. A prototype found half-widths of 29 % to cover 83 to 97 %; this
 * standard deviation of the logarithm makes the interval a little wider than that.
 */
const MODEL_LOG_SD = 0.17;

/**
 * Heat-loss coefficient from the heated nights of a stage.
 *
 * @param nights sunset and sunrise of each night with a metered heater [s]
 * @param constantGains heat that is always given off inside [W]
 * @returns null when no night has both phases long enough, or the slopes contradict each other
 */
export function heatThenCool(
  record: HouseRecord,
  nights: readonly { readonly date: string; readonly sunset: number; readonly sunrise: number }[],
  constantGains: number,
): HeatLossEstimate | null {
  const answers = nights.flatMap((night) => {
    const answer = readNight(record, night, constantGains);
    return answer === null ? [] : [{ ...answer, date: night.date }];
  });
  if (answers.length === 0) return null;
  const logs = answers.map(({ value }) => Math.log(value));
  const mean = logs.reduce((sum, v) => sum + v, 0) / logs.length;
  const reading = Math.sqrt(answers.reduce((sum, { logSd }) => sum + logSd ** 2, 0)) / answers.length;
  const logSd = Math.hypot(reading, MODEL_LOG_SD, record.heatingPowerSd);
  return {
    method: 'heat-then-cool',
    tier: 'heated-night',
    heatLossCoefficient: logInterval(Math.exp(mean), logSd),
    notes: [
      { code: 'heated-nights-used', dates: answers.map(({ date }) => date) },
      ...answers.flatMap(({ notes }) => notes),
    ],
  };
}

function readNight(
  record: HouseRecord,
  { sunset, sunrise }: { sunset: number; sunrise: number },
  constantGains: number,
): { value: number; logSd: number; notes: HeatLossNote[] } | null {
  const { grid, heatingPower } = record;
  if (heatingPower === null) return null;
  const heater = heaterSpan(grid, heatingPower, sunset, sunrise);
  if (heater === null) return null;
  const heating = slopeAtEnd(record, heater.first, heater.last);
  const length = heater.last - heater.first;
  const cooling = slopeAtEnd(
    record,
    heater.last + 1,
    Math.min(heater.last + 1 + length, indexAt(grid, sunrise), grid.length - 1),
  );
  if (heating === null || cooling === null || heating.slope <= 0 || cooling.slope >= 0) return null;
  const p1 = heater.power + constantGains;
  const { heatLossCoefficient: value } = twoSlopes(
    { power: p1, ...heating },
    { power: constantGains, ...cooling },
  );
  if (!(value > 0)) return null;
  const nudged = (heatingStep: number, coolingStep: number) =>
    twoSlopes(
      { power: p1, ...heating, slope: heating.slope + heatingStep },
      { power: constantGains, ...cooling, slope: cooling.slope + coolingStep },
    ).heatLossCoefficient - value;
  const sd = Math.hypot(nudged(heating.se, 0), nudged(0, cooling.se));
  const loggersSd = record.differenceSd / heating.difference;
  return { value, logSd: Math.hypot(sd / value, loggersSd), notes: worth((value * heating.difference) / p1) };
}

/** Best where the house loses 30 to 60 % of the heater's power; far from it the slopes say little. */
function worth(share: number): HeatLossNote[] {
  if (share > 0.8) return [{ code: 'heater-weak', share }];
  return share < 0.15 ? [{ code: 'heater-strong', share }] : [];
}

/** The longest run of cells with the heater on, evening to sunrise, and its mean power. */
function heaterSpan(grid: Grid, power: Float64Array, sunset: number, sunrise: number) {
  const from = Math.max(0, indexAt(grid, sunset - 4 * 3600));
  const to = Math.min(grid.length - 1, indexAt(grid, sunrise));
  let best: { first: number; last: number } | null = null;
  let first = from;
  for (let i = from; i <= to + 1; i++) {
    if (i <= to && power[i] > ON) continue;
    if (i > first && (best === null || i - 1 - first > best.last - best.first)) best = { first, last: i - 1 };
    first = i + 1;
  }
  if (best === null) return null;
  const inner = power.subarray(best.first + 1, best.last);
  if (inner.length === 0) return null;
  return { ...best, power: inner.reduce((sum, p) => sum + p, 0) / inner.length };
}

const ON = 50; // [W]

function slopeAtEnd(
  { grid, insideTemperature, outsideTemperature }: HouseRecord,
  first: number,
  last: number,
) {
  const span = Math.round(SLOPE_SPAN / grid.step);
  const begin = last - span;
  if (begin < first + Math.round(SETTLING / grid.step)) return null;
  const times = timesBetween(grid, begin, last);
  const inside = insideTemperature.subarray(begin, last + 1);
  const outside = outsideTemperature.subarray(begin, last + 1);
  if (inside.some(Number.isNaN) || outside.some(Number.isNaN)) return null;
  const line = linearLeastSquares(
    Array.from(times, (t) => [1, t - times[0]]),
    Array.from(inside),
  );
  if (line.kind === 'not fitted') return null;
  const difference = inside.reduce((sum, t, i) => sum + t - outside[i], 0) / inside.length;
  return { slope: line.coefficients[1], se: Math.sqrt(line.covariance[1][1]), difference };
}
