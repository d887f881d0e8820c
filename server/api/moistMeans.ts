/** The means of moist air: of each logger over the record, and of each night. */
import { firstFrom } from '../../src/series/firstFrom.ts';
import type { Night } from '../../src/sky/nights.ts';
import type { LoggerMoisture, MeanMoisture } from './loggerShapes.ts';
import type { MoistPiece } from './moistPieces.ts';

/** @param nights in the order of time */
export function meansCollector(nights: readonly Night[]) {
  const loggers = new Map<
    string,
    Pick<MoistPiece, 'file' | 'room' | 'place'> & { sums: Sums; nights: Sums[] }
  >();
  const sunrises = Float64Array.from(nights, ({ sunrise }) => sunrise);
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  return {
    take(piece: MoistPiece) {
      const { file, room, place, air, begin, end } = piece;
      if (begin === end) return;
      const own = loggers.get(file) ?? {
        file,
        room,
        place,
        sums: emptySums(),
        nights: nights.map(emptySums),
      };
      loggers.set(file, own);
      first = Math.min(first, air.time[begin]);
      last = Math.max(last, air.time[end - 1]);
      sumUp(own.sums, piece, begin, end);
      const within = (instant: number) => Math.min(Math.max(firstFrom(air.time, instant), begin), end);
      for (let i = firstFrom(sunrises, air.time[begin]); i < nights.length; i++) {
        const { sunset, sunrise } = nights[i];
        if (sunset > air.time[end - 1]) break;
        sumUp(own.nights[i], piece, within(sunset), within(sunrise));
      }
    },
    /** Bounds of all readings [s]; infinite without any. */
    bounds: () => ({ first, last }),
    loggers: (): LoggerMoisture[] =>
      [...loggers.values()].map(({ file, room, place, sums, nights: own }) => ({
        file,
        room,
        place,
        mean: meanOf(sums),
        nights: own.flatMap((it, i) =>
          it.temperature.n === 0 ? [] : [{ date: nights[i].date, ...meanOf(it) }],
        ),
      })),
  };
}

interface Sum {
  n: number;
  sum: number;
}
type Sums = Record<'temperature' | 'humidity' | 'absolute' | 'dewPoint' | 'excess', Sum>;

const none = (): Sum => ({ n: 0, sum: 0 });
const emptySums = (): Sums => ({
  temperature: none(),
  humidity: none(),
  absolute: none(),
  dewPoint: none(),
  excess: none(),
});

/** Adds the readings from `begin` to before `end`; those not known are left out. */
function sumUp(sums: Sums, { air, excess }: MoistPiece, begin: number, end: number): void {
  const add = (into: Sum, values: Float64Array) => {
    let { n, sum } = into;
    for (let i = begin; i < end; i++) {
      if (Number.isNaN(values[i])) continue;
      n++;
      sum += values[i];
    }
    into.n = n;
    into.sum = sum;
  };
  add(sums.temperature, air.temperature);
  add(sums.humidity, air.relativeHumidity);
  add(sums.absolute, air.absoluteHumidity);
  add(sums.dewPoint, air.dewPoint);
  if (excess !== null) add(sums.excess, excess);
}

/** Of some readings. */
function meanOf({ temperature, humidity, absolute, dewPoint, excess }: Sums): MeanMoisture {
  const mean = ({ n, sum }: Sum) => sum / n;
  return {
    temperatureC: mean(temperature),
    humidityPercent: mean(humidity) * 100,
    absoluteGM3: mean(absolute) * 1000,
    dewPointC: dewPoint.n === 0 ? null : mean(dewPoint),
    excessGM3: excess.n === 0 ? null : mean(excess) * 1000,
  };
}
