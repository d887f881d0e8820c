/** The daily heat balance of invented houses whose truth is known, because they were made from it. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { House } from '../../src/house.ts';
import type { HouseRecord } from '../../src/series/record.ts';
import { balanceOf, HOUR, house, midnight, recordOf } from './meteredHouse.ts';

const TRUTH = 120; // [W/K]
const noWindow = { name: 'Walls', areaM2: 100, uValue: 1.2 };
/** 120 W/K in all: the walls 108, the window 12. */
const glazed: NonNullable<House['elements']> = [
  { name: 'Walls', areaM2: 90, uValue: 1.2 },
  { name: 'South window', areaM2: 10, uValue: 1.2, gValue: 0.6, orientationDeg: 180 },
];

const sunny = recordOf({ aperture: 3, gains: 150 });
const withGains = (extra: Partial<House> = {}) =>
  house({ constantGainsW: 150, elements: [noWindow], ...extra });
const edited = (
  record: HouseRecord,
  edit: (it: { -readonly [K in keyof HouseRecord]: HouseRecord[K] }) => void,
) => {
  const copy = {
    ...record,
    insideTemperature: record.insideTemperature.slice(),
    outsideTemperature: record.outsideTemperature.slice(),
    heatingPower: record.heatingPower?.slice() ?? null,
    irradiance: record.irradiance?.slice() ?? null,
  };
  edit(copy);
  return copy;
};
const cell = (day: number, hour: number) => (day * 24 + hour) * 6;

describe('metered days of a house that is one node', () => {
  test('give its heat loss within 3 %, and inside the interval', () => {
    const { value, low, high } = balanceOf(sunny, withGains());
    // the aperture for irradiance is the same all day here; what is left is the straight storage of one mean hour
    expect(Math.abs(value / TRUTH - 1)).toBeLessThan(0.03);
    expect(low).toBeLessThan(TRUTH);
    expect(high).toBeGreaterThan(TRUTH);
  });

  test('say how the answer moves with the hour at which a day begins', () => {
    const { note, value } = balanceOf(sunny, withGains());
    const moves = note('start-hour-moves');
    expect(moves?.lowest).toBeLessThanOrEqual(value);
    expect(moves?.highest).toBeGreaterThanOrEqual(value);
  });

  test('fewer than five that count give nothing, and it is said what is missing', () => {
    const { estimate, note } = balanceOf(recordOf({ days: 5, aperture: 3 }));
    expect(estimate).toBeNull();
    expect(note('too-few-metered-days')).toMatchObject({ used: 4, needed: 5 });
  });

  test('of which nothing is left for outdoors give nothing, and that is said', () => {
    // 60 W/K to a neighbour at −40 °C would take twice what was metered
    const elements: House['elements'] = [
      noWindow,
      { name: 'Party wall', areaM2: 40, uValue: 1.5, to: 'adjacent' },
    ];
    const { estimate, note } = balanceOf(
      sunny,
      house({ elements, conditions: { neighbour: { temperatureC: -40 } } }),
    );
    expect(estimate).toBeNull();
    expect(note('metered-days-contradict')?.used).toBe(13);
  });

  test('without metered heat give nothing and say nothing', () => {
    const { estimate, notes } = balanceOf({ ...sunny, heatingPower: null });
    expect(estimate).toBeNull();
    expect(notes).toEqual([]);
  });
});

describe('the sun', () => {
  test('without irradiance and without glass drawn reads low; it is said, and the upper end allows for it', () => {
    const { value, high, note } = balanceOf({ ...sunny, irradiance: null }, withGains());
    expect(note('no-irradiance')).toBeDefined();
    expect(value).toBeLessThan(TRUTH);
    expect(high).toBeGreaterThan(TRUTH);
  });

  test('without irradiance but with glass drawn is that of an ordinary sky, which is said', () => {
    const dark = { ...sunny, irradiance: null };
    const { value, low, high, note } = balanceOf(dark, withGains({ elements: glazed }));
    expect(note('sun-of-ordinary-sky')?.share).toBeGreaterThan(0);
    expect(value).toBeGreaterThan(balanceOf(dark, withGains()).value);
    expect(low).toBeLessThan(TRUTH);
    expect(high).toBeGreaterThan(TRUTH);
  });

  test('that rises and falls with the difference is said not to be separable', () => {
    // the same sky and weather every day
    const even = edited(sunny, (it) => {
      it.irradiance?.fill(40);
    });
    expect(balanceOf(even, withGains()).note('sun-not-separable')).toBeDefined();
    expect(balanceOf(even, withGains({ elements: glazed })).note('sun-held-by-glass')).toBeDefined();
  });

  test('that the days can tell from the difference is theirs: glass drawn twice too large moves it by less than 3 %', () => {
    const twice = glazed.map((it) => ('gValue' in it ? { ...it, areaM2: 2 * it.areaM2, uValue: 0.6 } : it));
    const { value, note } = balanceOf(sunny, withGains({ elements: twice }));
    expect(note('sun-held-by-glass')).toBeUndefined();
    expect(Math.abs(value / balanceOf(sunny, withGains({ elements: glazed })).value - 1)).toBeLessThan(0.03);
  });

  test('of a dead irradiance sensor counts as not logged', () => {
    const dead = edited(sunny, (it) => {
      it.irradiance?.fill(0);
    });
    expect(balanceOf(dead, withGains()).note('no-irradiance')).toBeDefined();
  });

  test('with a hole costs that day and no other', () => {
    const holed = edited(sunny, (it) => {
      it.irradiance?.fill(Number.NaN, cell(4, 9), cell(4, 14));
    });
    const { note, leftOut } = balanceOf(holed, withGains());
    expect(note('no-irradiance')).toBeUndefined();
    expect(leftOut).toEqual({ 'gap-in-sun': 1 });
  });
});

describe('a day is left out, counted and told', () => {
  test('for a gap in the heat', () => {
    const { leftOut } = balanceOf(
      edited(sunny, (it) => {
        it.heatingPower?.fill(Number.NaN, cell(5, 12), cell(5, 13));
      }),
    );
    expect(leftOut).toEqual({ 'gap-in-heat': 1 });
  });

  test('for two hours without a temperature, not for one reading', () => {
    const gap = (hours: number) =>
      balanceOf(
        edited(sunny, (it) => {
          it.outsideTemperature.fill(Number.NaN, cell(5, 12), cell(5, 12) + Math.ceil(hours * 6));
        }),
      ).leftOut;
    expect(gap(2)).toEqual({ 'gap-in-temperatures': 1 });
    expect(gap(0.1)).toEqual({});
  });

  test('for no heat, and for too small a difference', () => {
    const { leftOut } = balanceOf(
      edited(sunny, (it) => {
        it.heatingPower?.fill(0, cell(3, 0), cell(5, 0));
        it.outsideTemperature.fill(18.5, cell(8, 0), cell(10, 0));
      }),
    );
    expect(leftOut).toEqual({ 'no-heat': 1, 'small-difference': 1 });
  });

  test('for a window that was opened by day while the heating ran', () => {
    const opened = recordOf({ aperture: 3, gains: 150, openedAt: [midnight + (6 * 24 + 11) * HOUR] });
    const { leftOut, value } = balanceOf(opened, withGains());
    expect(leftOut).toEqual({ opened: 1 });
    expect(Math.abs(value / TRUTH - 1)).toBeLessThan(0.03);
  });

  test('when its night was left out by hand', () => {
    const { leftOut } = balanceOf(sunny, withGains({ nights: [{ date: '2027-01-15', used: false }] }));
    expect(leftOut).toEqual({ 'left-out-by-hand': 1 });
  });

  test('but a house with a heated night and four left out by hand meant no balance, and nothing is said', () => {
    const unheated = edited(sunny, ({ heatingPower }) => heatingPower?.fill(0, cell(2, 0)));
    const byHand = ['16', '17', '18', '19'].map((day) => ({ date: `2027-01-${day}`, used: false }));
    expect(balanceOf(unheated, withGains({ nights: byHand })).notes).toEqual([]);
  });
});

describe('a heated neighbour', () => {
  const beside: House['elements'] = [
    noWindow,
    { name: 'Party wall', areaM2: 40, uValue: 1.5, to: 'adjacent' },
  ];
  const warm = recordOf({ aperture: 3, toNeighbour: 60, neighbour: 12 });
  const logged: HouseRecord = {
    ...warm,
    rooms: [
      {
        file: 'next.csv',
        room: 'Next door',
        place: 'adjacent',
        temperature: new Float64Array(warm.grid.length).fill(12),
        relativeHumidity: null,
      },
    ],
  };

  test('that is logged is taken out: the heat loss is that to outside alone', () => {
    const { value, note } = balanceOf(logged, house({ elements: beside }));
    expect(Math.abs(value / TRUTH - 1)).toBeLessThan(0.03);
    expect(note('neighbour-flow-taken-out')?.known).toBe('logged');
    // 60 W/K times about 7.5 K
    expect(note('neighbour-flow-taken-out')?.flow).toBeGreaterThan(300);
  });

  test('that is only stated widens the interval, and one of whom nothing is said widens it more', () => {
    const width = ({ value, low, high }: ReturnType<typeof balanceOf>) => (high - low) / value;
    const stated = balanceOf(
      warm,
      house({ elements: beside, conditions: { neighbour: { temperatureC: 12, plusMinusK: 3 } } }),
    );
    const unknown = balanceOf(warm, house({ elements: beside }));
    const sure = balanceOf(logged, house({ elements: beside }));
    expect(width(stated)).toBeGreaterThan(width(sure));
    expect(width(unknown)).toBeGreaterThan(width(stated));
    expect(unknown.note('neighbour-flow-taken-out')?.known).toBe('assumed');
    expect(unknown.low).toBeLessThan(TRUTH);
    expect(unknown.high).toBeGreaterThan(TRUTH);
  });
});

describe('a constant inside temperature that stands for loggers', () => {
  const steady = { ...sunny, insideTemperature: sunny.insideTemperature.map(() => Number.NaN) };
  const assumed = (insideC: number) => balanceOf(steady, withGains({ conditions: { insideC } }));

  test('gives the heat loss inside an interval that is wider, and says so', () => {
    // a thermostat at 20 °C by day and 18 by night is 19.4 °C on average, so 20 is half a kelvin off
    const { value, low, high, note } = assumed(20);
    const measured = balanceOf(sunny, withGains());
    expect(note('inside-assumed')).toMatchObject({ temperature: 20 });
    expect(low).toBeLessThan(TRUTH);
    expect(high).toBeGreaterThan(TRUTH);
    expect((high - low) / value).toBeGreaterThan((measured.high - measured.low) / measured.value);
  });

  test('is not used where a temperature was logged', () => {
    const { note, value } = balanceOf(sunny, withGains({ conditions: { insideC: 12 } }));
    expect(note('inside-assumed')).toBeUndefined();
    expect(value).toBe(balanceOf(sunny, withGains()).value);
  });
});

describe('whatever the house', () => {
  test('twice all heat is twice the heat loss', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 5, noNaN: true }), (factor) => {
        const scaled = {
          ...sunny,
          heatingPower: sunny.heatingPower?.map((it) => it * factor) ?? null,
        };
        const without = balanceOf(sunny, house());
        const { value } = balanceOf(scaled, house());
        // Without a design nothing else is a heat, so nothing but rounding stands between them.
        expect(value / without.value / factor).toBeCloseTo(1, 9);
      }),
      { numRuns: 12 },
    );
  });

  test('all temperatures shifted alike change nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: -10, max: 10, noNaN: true }), (shift) => {
        const moved = {
          ...sunny,
          insideTemperature: sunny.insideTemperature.map((it) => it + shift),
          outsideTemperature: sunny.outsideTemperature.map((it) => it + shift),
        };
        expect(balanceOf(moved, withGains()).value / balanceOf(sunny, withGains()).value).toBeCloseTo(1, 6);
      }),
      { numRuns: 12 },
    );
  });

  test('the interval holds the loss that the house was made with', () => {
    fc.assert(
      fc.property(
        fc.record({
          heatLoss: fc.double({ min: 40, max: 300, noNaN: true }),
          aperture: fc.double({ min: 0.2, max: 4, noNaN: true }),
          gains: fc.double({ min: 0, max: 200, noNaN: true }),
        }),
        (truth) => {
          const { low, high } = balanceOf(
            recordOf(truth),
            house({ constantGainsW: truth.gains, elements: [noWindow] }),
          );
          expect(low).toBeLessThan(truth.heatLoss);
          expect(high).toBeGreaterThan(truth.heatLoss);
        },
      ),
      { numRuns: 15 },
    );
  });
});
