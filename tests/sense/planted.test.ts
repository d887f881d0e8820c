/** One fault at a time in a simulated heated winter house: it is found, and nothing else is. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SensedLogger, type SenseFinding, senseOf } from '../../src/sense/index.ts';
import { carriedAbout, exchanged, sunlit, withFault } from './planted.ts';
import { changed, DAY, HOUR, place, shifted, simulatedHouse } from './simulatedHouse.ts';

const houses = [301, 302, 303].map((seed) => simulatedHouse(seed));
const [house] = houses;

const asked = (loggers: readonly SensedLogger[], weather = house.weather) => senseOf(loggers, weather, place);
const alone = (loggers: readonly SensedLogger[]) => senseOf(loggers, null, place);
const named = (findings: readonly SenseFinding[]) => findings.map(({ code, where }) => [code, where.file]);
const only = <Code extends SenseFinding['code']>(findings: readonly SenseFinding[], code: Code) => {
  const found = findings.find((it): it is Extract<SenseFinding, { code: Code }> => it.code === code);
  if (found === undefined) throw new Error(`no ${code}`);
  return found;
};
const spansOf = ({ offers }: SenseFinding) => offers.flatMap((it) => ('leaveOut' in it ? it.leaveOut : []));

describe('places', () => {
  test.each(houses)(
    'a living-room logger entered as outside and the outside one as inside are swapped',
    (it) => {
      const loggers = exchanged(it, 'living.csv', 'outside.csv');
      const wanted = {
        code: 'loggers-swapped',
        where: { file: 'living.csv' },
        other: { file: 'outside.csv' },
      };
      expect(asked(loggers, it.weather)).toMatchObject([{ ...wanted, offers: [{ place: 'inside' }] }]);
      expect(alone(loggers)).toMatchObject([wanted]);
    },
  );

  test.each(houses)('a bedroom logger and that of the roof void are swapped', (it) => {
    const loggers = exchanged(it, 'bedroom.csv', 'void.csv');
    expect(named(alone(loggers))).toEqual([['loggers-swapped', 'bedroom.csv']]);
  });

  test('a second outside logger that lies in the kitchen looks like inside', () => {
    const loggers = withFault(house, 'kitchen.csv', (it) => ({ ...it, place: 'outside' }));
    expect(alone(loggers)).toMatchObject([
      { code: 'logger-placed-elsewhere', where: { file: 'kitchen.csv' }, looksLike: 'inside' },
    ]);
  });

  test('an inside logger that hangs outdoors beside the weather looks like outside', () => {
    const loggers = withFault(house, 'outside.csv', (it) => ({ ...it, place: 'inside' }));
    expect(asked(loggers)).toMatchObject([
      { code: 'logger-placed-elsewhere', where: { file: 'outside.csv' }, looksLike: 'outside' },
    ]);
  });

  test('a cellar that stays colder than the summer outdoors is no swap', () => {
    const summer = simulatedHouse(304, { month: 6, heated: false });
    const cellar = withFault(summer, 'bedroom.csv', (it) =>
      changed(it, (_, t) => 9 + 0.2 * Math.sin(t / 1e5)),
    );
    expect(named(senseOf(cellar, summer.weather, place))).toEqual([]);
    expect(named(alone(cellar))).toEqual([]);
  });
});

describe('the sun', () => {
  test.each(houses)('a logger on an east wall stands in the morning sun', (it) => {
    const east = { bearing: 130, within: 40, gain: 10, lag: 900 };
    const loggers = withFault(it, 'outside.csv', (logger) => sunlit(it, logger, east));
    for (const findings of [asked(loggers, it.weather), alone(loggers)]) {
      const found = only(findings, 'logger-in-sun');
      expect(named(findings)).toEqual([['logger-in-sun', 'outside.csv']]);
      // the sun passes 90 to 170 degrees: its bumps begin after the sunrise of January and end about noon
      expect(found.fromHour).toBeGreaterThan(8);
      expect(found.toHour).toBeLessThan(13);
      // 10 K were added, and a lag takes some of it
      expect(found.height).toBeGreaterThan(6);
      expect(found.height).toBeLessThan(11.5);
      expect(found.byNight).toBe(0);
      expect(spansOf(found)).toHaveLength(found.sunnyDays);
    }
    expect(only(asked(loggers, it.weather), 'logger-in-sun').sure).toBe(true);
    expect(only(alone(loggers), 'logger-in-sun').sure).toBe(false);
  });

  test('a patch of sun that passes over an inside logger is asked about as less sure', () => {
    const patch = { bearing: 200, within: 12, gain: 7, lag: 600 };
    const loggers = withFault(house, 'living.csv', (it) => sunlit(house, it, patch));
    expect(alone(loggers)).toMatchObject([
      { code: 'logger-in-sun', where: { file: 'living.csv' }, sure: false },
    ]);
  });
});

describe('carried about', () => {
  test.each([
    ['a pocket before it was placed', 'living.csv', 1.5, 30, false],
    ['a cold car before it was placed', 'bedroom.csv', 2, 4, false],
    ['a warm room before it was hung outdoors', 'outside.csv', 5, 21, false],
    ['a pocket at the end', 'kitchen.csv', 1, 29, true],
    ['a warm room at the end', 'outside.csv', 3, 20, true],
  ])(
    'a logger that was in %s is found, and the spell is offered to be left out',
    (_, file, hours, temperature, end) => {
      for (const it of houses) {
        const loggers = withFault(it, file, (logger) => carriedAbout(logger, hours, temperature, end));
        for (const findings of [asked(loggers, it.weather), alone(loggers)]) {
          expect(named(findings)).toEqual([['logger-carried', file]]);
          const found = only(findings, 'logger-carried');
          expect(found.end).toBe(end ? 'end' : 'beginning');
          // the spell itself, a cell or two at each end, and up to three hours of settling
          expect((found.to - found.from) / HOUR).toBeGreaterThan(hours - 0.4);
          expect((found.to - found.from) / HOUR).toBeLessThan(hours + 3.4);
          expect(spansOf(found)).toHaveLength(1);
        }
      }
    },
  );
});

describe('clocks against each other', () => {
  test('a clock an hour ahead of those of the other rooms is found, and the hour is offered', () => {
    for (const it of houses) {
      const loggers = withFault(it, 'living.csv', (logger) => shifted(logger, HOUR));
      expect(alone(loggers)).toMatchObject([
        {
          code: 'clock-off-peers',
          where: { file: 'living.csv' },
          majority: true,
          against: [{ file: 'kitchen.csv' }, { file: 'bedroom.csv' }],
          offers: [{ clockOffsetMin: -60 }],
        },
      ]);
    }
  });

  test('of two rooms it is said that either clock may be off', () => {
    const loggers = withFault(house, 'kitchen.csv', (it) => shifted(it, -2 * HOUR)).filter(
      ({ file }) => file !== 'bedroom.csv',
    );
    expect(alone(loggers)).toMatchObject([
      { code: 'clock-off-peers', majority: false, offers: [{ clockOffsetMin: 120 }] },
    ]);
  });

  test('an outside clock an hour ahead of a station with hourly means is found', () => {
    for (const it of houses) {
      const loggers = withFault(it, 'outside.csv', (logger) => shifted(logger, HOUR));
      expect(asked(loggers, it.weather)).toMatchObject([
        { code: 'clock-off-peers', where: { file: 'outside.csv' }, offers: [{ clockOffsetMin: -60 }] },
      ]);
    }
  });

  test('any shift from 40 minutes to half a day lies within the interval that is found', () => {
    const minutes = fc.integer({ min: 40, max: 700 });
    fc.assert(
      fc.property(minutes, fc.boolean(), (shift, ahead) => {
        const seconds = (ahead ? 60 : -60) * shift;
        const loggers = withFault(house, 'bedroom.csv', (it) => shifted(it, seconds));
        const [{ correction, low, high }] = only(alone(loggers), 'clock-off-peers').parts;
        expect(low).toBeLessThanOrEqual(-seconds);
        expect(high).toBeGreaterThanOrEqual(-seconds);
        expect(Math.abs(correction + seconds)).toBeLessThanOrEqual(HOUR / 6);
      }),
      { numRuns: 12 },
    );
  });

  test('a clock that stayed in winter time is a clock of that zone', () => {
    const autumn = simulatedHouse(305, { month: 9, days: 30 });
    const change = Date.UTC(2027, 9, 31, 1) / 1000;
    // read in local time: an hour early while the house has summer time, right after it
    const loggers = withFault(autumn, 'living.csv', (it) => {
      const time = it.temperature.time.map((t) => (t < change ? t - HOUR : t));
      return { file: it.file, place: it.place, temperature: { ...it.temperature, time } };
    });
    expect(only(alone(loggers), 'clock-off-peers').offers).toEqual([{ timeZone: 'UTC' }]);
  });

  test('morning and afternoon exchanged outdoors show by the day itself, without any other thermometer', () => {
    const loggers = withFault(house, 'outside.csv', (it) => shifted(it, DAY / 2));
    expect(named(alone(loggers))).toEqual([['clock-off-rhythm', 'outside.csv']]);
    const [{ low, high }] = only(alone(loggers), 'clock-off-rhythm').parts;
    // half a day on and half a day back are the same here
    const holds = (correction: number) => low <= correction && correction <= high;
    expect(holds(-DAY / 2) || holds(DAY / 2)).toBe(true);
  });
});

describe('a logger that stops', () => {
  test('on its fifth day and repeats itself ever after', () => {
    const loggers = withFault(house, 'living.csv', (it) => {
      const last = it.temperature.time[0] + 5 * DAY;
      return changed(it, (own, t) => (t < last ? own : 17.3));
    });
    const found = only(asked(loggers), 'logger-stopped');
    expect(found).toMatchObject({ where: { file: 'living.csv' }, value: expect.closeTo(17.3, 9) });
    expect(Math.abs(found.from - house.loggers[0].temperature.time[0] - 5 * DAY)).toBeLessThan(HOUR);
  });

  test('is not one that rests while its peers rest too', () => {
    const loggers = house.loggers.map((it) => (it.place === 'inside' ? changed(it, () => 17.3) : it));
    expect(named(asked(loggers)).filter(([code]) => code === 'logger-stopped')).toEqual([]);
  });
});
