/** Facts that hold for every record, checked on generated ones. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { doubtsOf, type Series } from '../../../src/logs/doubts/index.ts';
import { doubtKinds } from '../../../src/logs/log.ts';
import { random } from '../../proving/random.ts';
import { livedInRoom, logged } from './life.ts';
import { doubted, every, placesOf, range, withValues } from './series.ts';

/** Ten days of a smooth day and night about some level, with a noise that a thermometer has. */
const smooth = fc
  .record({
    seed: fc.integer({ min: 1, max: 1e6 }),
    interval: fc.constantFrom(5, 10, 15),
    level: fc.integer({ min: 12, max: 25 }),
    swing: fc.double({ min: 0.5, max: 4, noNaN: true }),
    noise: fc.double({ min: 0.01, max: 0.1, noNaN: true }),
  })
  .map(({ seed, interval, level, swing, noise }) => {
    const draws = random(seed, 'smooth');
    const perDay = 1440 / interval;
    const value = Array.from({ length: 10 * perDay }, (_, i) => {
      const it = level + swing * Math.sin((2 * Math.PI * i) / perDay) + noise * draws.normal();
      return Math.round(it * 10) / 10;
    });
    return every(interval, 'temperature', value);
  });
/** Where a fault begins, as a share of the record, away from its ends. */
const place = fc.double({ min: 0.05, max: 0.6, noNaN: true });
const placeIn = (series: Series, share: number) => Math.floor(share * series.value.length);
const flawed = (series: Series, from: number, width: number, fault: (value: number) => number) =>
  withValues(series, Object.fromEntries(range(from, from + width).map((i) => [i, fault(series.value[i])])));

describe('whatever the record', () => {
  test('an honest one has no doubts', () => {
    fc.assert(
      fc.property(smooth, (series) => {
        expect(doubted(series)).toEqual({});
      }),
    );
  });

  test('a spike is found, and nothing else', () => {
    fc.assert(
      fc.property(
        smooth,
        place,
        fc.integer({ min: 1, max: 3 }),
        // three readings at 15 minutes need 9 K beyond what the room itself does in that hour, about 1 K;
        // no whole tenth: neither 0 nor 85 °C comes of it
        fc.integer({ min: 12, max: 60 }).map((it) => it + 0.05),
        fc.boolean(),
        (series, share, width, height, isUp) => {
          const from = placeIn(series, share);
          const spiky = flawed(series, from, width, (it) => (isUp ? it + height : it - height));
          expect(doubted(spiky)).toEqual({ spike: range(from, from + width) });
        },
      ),
    );
  });

  test('a run of zeros is found, and nothing else', () => {
    fc.assert(
      fc.property(smooth, place, fc.integer({ min: 1, max: 30 }), (series, share, width) => {
        const from = placeIn(series, share);
        expect(doubted(flawed(series, from, width, () => 0))).toEqual({
          'false-zero': range(from, from + width),
        });
      }),
    );
  });

  test('a stuck run of two days is found, and no reading elsewhere that differs from it', () => {
    fc.assert(
      fc.property(smooth, place, (series, share) => {
        const from = placeIn(series, share);
        const end = from + (2 * 86400) / (series.time[1] - series.time[0]);
        const at = series.value[from];
        const found = doubted(flawed(series, from, end - from, () => at));
        expect(Object.keys(found)).toEqual(['stuck']);
        expect(found.stuck).toEqual(expect.arrayContaining(range(from + 1, end)));
        expect(found.stuck?.every((i) => series.value[i] === at || (i > from && i < end))).toBe(true);
      }),
    );
  });

  test('it is doubted alike at another time and at another level', () => {
    fc.assert(
      fc.property(
        smooth,
        place,
        fc.integer(),
        fc.integer({ min: -6, max: 20 }),
        (series, share, later, warmer) => {
          const from = placeIn(series, share);
          const both = flawed(
            flawed(series, from + 400, 2, (it) => it + 20),
            from,
            300,
            () => series.value[from],
          );
          const moved = {
            ...both,
            time: both.time.map((t) => t + later),
            // in tenths, so that what was equal stays equal
            value: both.value.map((it) => Math.round(10 * it + 10 * warmer) / 10),
          };
          expect(doubted(moved)).toEqual(doubted(both));
        },
      ),
    );
  });

  test('true zeros stay: weather that passes through 0 °C, calm, night and rest', () => {
    fc.assert(
      fc.property(
        smooth,
        fc.constantFrom('windSpeed', 'irradiance', 'power', 'energy'),
        (series, quantity) => {
          const middle = series.value.slice().sort()[series.value.length >> 1];
          const about = series.value.map((it) => Math.round(10 * it - 10 * middle) / 10);
          expect(about).toContain(0);
          expect(doubted({ ...series, value: about })).toEqual({});
          expect(doubted({ ...series, quantity, value: about.map((it) => Math.max(0, 3 * it)) })).toEqual({});
        },
      ),
    );
  });

  test('anything gets one code per reading, and the same codes again', () => {
    const quantity = fc.constantFrom<Series['quantity']>(
      'temperature',
      'humidity',
      'dewPoint',
      'meter',
      'pressure',
      'windSpeed',
    );
    const reading = fc.tuple(
      fc.integer({ min: 1, max: 1e5 }),
      fc.oneof(fc.constantFrom(0, 85, -160 / 9), fc.double({ min: -50, max: 1e5, noNaN: true })),
    );
    const series = fc
      .tuple(quantity, fc.array(reading, { maxLength: 80 }))
      .map(([what, readings]): Series => {
        let now = 0;
        const time = Float64Array.from(readings, ([step]) => {
          now += step;
          return now;
        });
        return { quantity: what, time, value: Float64Array.from(readings, ([, value]) => value) };
      });
    fc.assert(
      fc.property(fc.array(series, { maxLength: 4 }), (channels) => {
        const doubts = doubtsOf(channels);
        expect(doubts.map(({ length }) => length)).toEqual(channels.map(({ value }) => value.length));
        expect(doubts.every((codes) => codes.every((code) => code <= doubtKinds.length))).toBe(true);
        expect(doubtsOf(channels)).toEqual(doubts);
      }),
    );
  });
});

test('two months of showers, opened windows and sun on the logger have no doubts at 1 to 15 minutes', () => {
  for (const seed of [1, 2, 3]) {
    const room = livedInRoom(seed, 60);
    for (const interval of [1, 2, 5, 10, 15]) {
      const { temperature, humidity } = logged(seed, room, interval);
      expect(doubtsOf([temperature, humidity]).map(placesOf)).toEqual([{}, {}]);
    }
  }
});
