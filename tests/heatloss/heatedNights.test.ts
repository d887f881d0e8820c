/** When a heated night gives its two slopes, what is said beside them, and why there may be none. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heatThenCool } from '../../src/heatloss/index.ts';
import { say } from '../../src/words/index.ts';
import { firstNight, type HeatedHouse, heatedHouse, onBetween } from './heatedHouse.ts';

const steady = onBetween(17, 23, 4500);
const read = (house: Partial<HeatedHouse>, gains = 0) => {
  const record = heatedHouse({ power: steady, ...house });
  return heatThenCool(record, firstNight(record), gains);
};
const why = (house: Partial<HeatedHouse>) => {
  const { estimate, unanswered } = read(house);
  expect(estimate).toBeNull();
  return unanswered.map(({ code }) => code);
};
const said = (house: Partial<HeatedHouse>) => read(house).estimate?.notes.map(({ code }) => code);
const lossOf = (house: Partial<HeatedHouse>) => read(house).estimate?.heatLossCoefficient.value ?? Number.NaN;

describe('a house of one node', () => {
  // a phase's straight line against its mean course: (span / time constant)² / 60, below 0.1 % of 34 h
  test.each([60, 120, 200])('that loses %d W/K reads within 1 %%', (heatLoss) => {
    expect(Math.abs(lossOf({ heatLoss, capacity: 34 * 3600 * heatLoss }) / heatLoss - 1)).toBeLessThan(0.01);
  });

  test('reads the same while it grows 8 K colder outside, because the slopes are set against what was', () => {
    const outside = (hours: number) => 4 - (2 / 3) * (hours - 17);
    expect(Math.abs(lossOf({ outside }) / 120 - 1)).toBeLessThan(0.01);
    expect(said({ outside })).toContain('outdoors-drifted');
  });

  test('has an interval that allows for reading low, and says so', () => {
    const { estimate } = read({});
    const { value = 0, low = 0, high = 0 } = estimate?.heatLossCoefficient ?? {};
    expect(high / value).toBeGreaterThan(value / low);
    expect(estimate?.notes.map(({ code }) => code)).toContain('known-bias');
  });
});

describe('beside a heated neighbour', () => {
  const toNeighbour = 60;
  const house = { toNeighbour, neighbourTemperature: 24, power: steady };
  const record = heatedHouse(house);
  const weight = toNeighbour / (toNeighbour + 120);

  test('the loss to outside alone is told', () => {
    const { estimate } = heatThenCool(record, firstNight(record), 0, { weight, temperature: 24 });
    expect(Math.abs((estimate?.heatLossCoefficient.value ?? 0) / 120 - 1)).toBeLessThan(0.01);
    expect(estimate?.notes.map(({ code }) => code)).toContain('neighbour-counted');
  });

  test('left out of account the loss is wrong by more than a tenth', () => {
    const { estimate } = heatThenCool(record, firstNight(record), 0);
    expect(Math.abs((estimate?.heatLossCoefficient.value ?? 0) / 120 - 1)).toBeGreaterThan(0.1);
  });
});

describe('no two slopes, and it is said why', () => {
  test('where a thermostat switched it on and off', () => {
    const power = (hours: number) => (hours >= 17 && hours < 29 && (hours * 60) % 40 < 20 ? 4500 : 0);
    expect(why({ power })).toEqual(['heater-cycled']);
  });

  test('where it was turned down as the room grew warm', () => {
    const power = (hours: number) => (hours >= 17 && hours < 23 ? (hours < 19 ? 4500 : 1500) : 0);
    expect(why({ power })).toEqual(['heater-uneven']);
  });

  test('where it was on for three hours', () => {
    expect(why({ power: onBetween(17, 20, 4500) })).toEqual(['heater-on-too-short']);
  });

  test('where it was on until 05:00, or came on again two hours after it went off', () => {
    expect(why({ power: onBetween(17, 29, 4500) })).toEqual(['cooling-too-short']);
    const again = (hours: number) => steady(hours) + onBetween(25, 27, 4500)(hours);
    expect(why({ power: again })).toEqual(['cooling-too-short']);
  });

  test('where the house grew colder under the heater', () => {
    expect(why({ power: onBetween(17, 23, 600) })).toEqual(['slopes-contradict']);
  });

  test('where a reading of the slopes is missing', () => {
    const record = heatedHouse({ power: steady });
    const insideTemperature = record.insideTemperature.slice();
    insideTemperature[6 * 10] = Number.NaN; // 22:00
    const { unanswered } = heatThenCool({ ...record, insideTemperature }, firstNight(record), 0);
    expect(unanswered).toEqual([{ code: 'heated-night-gap', dates: ['2027-01-10'] }]);
  });

  describe('where the heat is not known all through', () => {
    const record = heatedHouse({ power: steady });
    const withPower = (edit: (watts: number, hours: number) => number) => {
      const heatingPower = record.heatingPower?.map((it, k) => edit(it, 12 + k / 6)) ?? null;
      return heatThenCool({ ...record, heatingPower }, firstNight(record), 0);
    };

    test('as of a log that breaks off while the heater is on, or soon after', () => {
      for (const from of [21.7, 24]) {
        const { estimate, unanswered } = withPower((it, hours) =>
          hours >= from && hours < 32 ? Number.NaN : it,
        );
        expect(estimate).toBeNull();
        expect(unanswered).toEqual([{ code: 'heated-night-gap', dates: ['2027-01-10'] }]);
      }
    });

    test('but a heater that was read off by eye, of which nothing else is known, was off otherwise', () => {
      const { estimate } = withPower((it) => (it > 0 ? it : Number.NaN));
      expect(Math.abs((estimate?.heatLossCoefficient.value ?? 0) / 120 - 1)).toBeLessThan(0.01);
    });
  });

  test('of many such nights their number is told, of few their dates', () => {
    const dates = ['2027-01-10', '2027-01-11'];
    expect(say({ code: 'heater-cycled', dates }).text).toContain('10 January and 11 January');
    expect(say({ code: 'heater-cycled', dates: Array<string>(9).fill('2027-01-10') }).text).toContain(
      '9 heated nights',
    );
  });
});

describe('what strains a heated night is said beside its figure', () => {
  const strains = ['heater-weak', 'mass-not-settled', 'windy-night', 'wind-changed', 'outdoors-drifted'];

  test('nothing of a calm night after an unheated day', () => {
    expect(said({ wind: () => 2 })?.filter((code) => strains.includes(code))).toEqual([]);
  });

  test('a heater of which the house loses more than four fifths', () => {
    expect(said({ power: onBetween(17, 23, 1800) })).toContain('heater-weak');
  });

  test('heating until an hour before, so that the air still falls as the heater comes on', () => {
    const power = (hours: number) => onBetween(13, 16, 6000)(hours) + steady(hours);
    expect(said({ power })).toContain('mass-not-settled');
  });

  test('wind of 8 m/s; wind that rises from 2 to 6 m/s as the heater goes off', () => {
    expect(said({ wind: () => 8 })).toContain('windy-night');
    expect(said({ wind: (hours) => (hours < 23 ? 2 : 6) })).toContain('wind-changed');
  });
});

describe('whatever the house', () => {
  const anyHouse = fc.record({
    heatLoss: fc.double({ min: 60, max: 200, noNaN: true }),
    hours: fc.double({ min: 25, max: 80, noNaN: true }),
  });

  test('twice the power under the same temperatures is twice the loss', () => {
    fc.assert(
      fc.property(anyHouse, fc.double({ min: 0.5, max: 3, noNaN: true }), ({ heatLoss, hours }, scale) => {
        const record = heatedHouse({ heatLoss, capacity: hours * 3600 * heatLoss, power: steady });
        const heatingPower = record.heatingPower?.map((it) => it * scale) ?? null;
        const once = heatThenCool(record, firstNight(record), 100).estimate;
        const scaled = heatThenCool({ ...record, heatingPower }, firstNight(record), 100 * scale).estimate;
        fc.pre(once !== null && scaled !== null);
        expect((scaled?.heatLossCoefficient.value ?? 0) / (once?.heatLossCoefficient.value ?? 1)).toBeCloseTo(
          scale,
          9,
        );
      }),
      { numRuns: 30 },
    );
  });

  test('all temperatures higher by the same changes nothing', () => {
    fc.assert(
      fc.property(anyHouse, fc.double({ min: -15, max: 15, noNaN: true }), ({ heatLoss, hours }, shift) => {
        const record = heatedHouse({ heatLoss, capacity: hours * 3600 * heatLoss, power: steady });
        const shifted = {
          ...record,
          insideTemperature: record.insideTemperature.map((it) => it + shift),
          outsideTemperature: record.outsideTemperature.map((it) => it + shift),
        };
        const here = heatThenCool(record, firstNight(record), 0).estimate;
        const there = heatThenCool(shifted, firstNight(record), 0).estimate;
        fc.pre(here !== null);
        const value = here?.heatLossCoefficient.value ?? 0;
        // a rounding of 1e-14 K in slopes of 1e-5 K/s
        expect(Math.abs((there?.heatLossCoefficient.value ?? 0) / value - 1)).toBeLessThan(1e-8);
      }),
      { numRuns: 30 },
    );
  });
});
