/** Facts that hold for every log, checked on generated ones. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { channelsOf, read } from './reading.ts';

interface Series {
  /** [s since 1970 UTC] */
  readonly start: number;
  readonly step: number;
  /** °C in hundredths, % in tenths. */
  readonly rows: readonly (readonly [temperature: number, humidity: number])[];
}

/** Whole minutes, in no doubled hour: the files below are written in UTC or with an offset. */
const series: fc.Arbitrary<Series> = fc.record({
  start: fc.integer({ min: 17_000_000, max: 33_000_000 }).map((minute) => minute * 60),
  step: fc.constantFrom(60, 300, 600, 900, 3600),
  rows: fc
    .array(fc.tuple(fc.integer({ min: -2000, max: 4000 }), fc.integer({ min: 150, max: 1000 })), {
      minLength: 2,
      maxLength: 60,
    })
    // a first 0 °C that jumps by 10 K is taken for a sensor that starts up (rows.test.ts)
    .filter(([[first]]) => first !== 0),
});

const two = (n: number) => String(n).padStart(2, '0');
interface Parts {
  readonly y: number;
  readonly mo: string;
  readonly d: string;
  readonly h: number;
  readonly mi: string;
  readonly instant: number;
}
const parts = (instant: number): Parts => {
  const at = new Date(instant * 1000);
  return {
    y: at.getUTCFullYear(),
    mo: two(at.getUTCMonth() + 1),
    d: two(at.getUTCDate()),
    h: at.getUTCHours(),
    mi: two(at.getUTCMinutes()),
    instant,
  };
};

const clocks: Record<string, (p: Parts) => string> = {
  iso: ({ y, mo, d, h, mi }) => `${y}-${mo}-${d}T${two(h)}:${mi}:00Z`,
  blank: ({ y, mo, d, h, mi }) => `${y}-${mo}-${d} ${two(h)}:${mi}`,
  offset: ({ instant }) => `${new Date((instant + 5400) * 1000).toISOString().slice(0, 19)}+01:30`,
  'day first': ({ y, mo, d, h, mi }) => `${d}/${mo}/${y} ${two(h)}:${mi}`,
  dotted: ({ y, mo, d, h, mi }) => `${d}.${mo}.${y} ${two(h)}:${mi}:00`,
  'month first': ({ y, mo, d, h, mi }) => `${mo}/${d}/${y} ${h % 12 || 12}:${mi} ${h < 12 ? 'AM' : 'PM'}`,
  epoch: ({ instant }) => String(instant),
  milliseconds: ({ instant }) => `${instant}000`,
};
const orders = { 'day first': 'day-first', dotted: 'day-first', 'month first': 'month-first' } as const;

const layout = fc.record({
  clock: fc.constantFrom(...Object.keys(clocks)),
  separator: fc.constantFrom(',', ';', '\t', '|'),
  decimal: fc.constantFrom('.', ','),
  quoted: fc.boolean(),
  lineBreak: fc.constantFrom('\n', '\r\n', '\r'),
  preamble: fc.constantFrom('', 'Logger;cellar\n\n', '# made up\n# 12 rows\n'),
  unit: fc.constantFrom('C', 'F'),
});

function write(
  { start, step, rows }: Series,
  how: typeof layout extends fc.Arbitrary<infer T> ? T : never,
): string {
  const quote = (text: string) => (how.quoted || how.separator === how.decimal ? `"${text}"` : text);
  const number = (value: string) => quote(value.replace('.', how.decimal));
  const degrees = (hundredths: number) =>
    (how.unit === 'C' ? hundredths / 100 : hundredths * 0.018 + 32).toFixed(3);
  const all = [
    ['Time', `Temperature (°${how.unit})`, 'Humidity (%)'],
    ...rows.map(([t, rh], i) => [
      quote(clocks[how.clock](parts(start + i * step))),
      number(degrees(t)),
      number((rh / 10).toFixed(1)),
    ]),
  ];
  const text = how.preamble + all.map((row) => row.join(how.separator)).join('\n');
  return `${text}\n`.replaceAll('\n', how.lineBreak);
}

describe('any log', () => {
  test('written in any of the layouts is read back as it was', () => {
    fc.assert(
      fc.property(series, layout, (log, how) => {
        const dateOrder = orders[how.clock as keyof typeof orders];
        const channels = channelsOf(read(write(log, how), { dateOrder }));
        expect(channels.map(([, quantity]) => quantity)).toEqual(['temperature', 'humidity']);
        const times = log.rows.map((_, i) =>
          new Date((log.start + i * log.step) * 1000).toISOString().replace('.000Z', 'Z'),
        );
        channels.forEach(([, , at, values], c) => {
          expect(at).toEqual(times);
          // written to the last digit, so that only rounding of the conversion remains
          values.forEach((value, i) => {
            expect(value).toBeCloseTo(c === 0 ? log.rows[i][0] / 100 : log.rows[i][1] / 1000, 9);
          });
        });
      }),
      { numRuns: 400 },
    );
  });

  test('never has day and month confused without a word', () => {
    fc.assert(
      fc.property(series, fc.constantFrom('day first', 'dotted', 'month first'), (log, clock) => {
        const how = {
          clock,
          separator: ';',
          decimal: '.',
          quoted: false,
          lineBreak: '\n',
          preamble: '',
          unit: 'C',
        } as const;
        const reading = read(write(log, how));
        const said = reading.findings.some(({ code }) => code === 'date-order-unknown');
        expect(
          said ||
            channelsOf(reading)[0][2][0] === new Date(log.start * 1000).toISOString().replace('.000Z', 'Z'),
        ).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  test('gives the same readings with its rows shuffled and some of them twice', () => {
    const how = {
      clock: 'day first',
      separator: ',',
      decimal: '.',
      quoted: false,
      lineBreak: '\n',
      preamble: '',
      unit: 'C',
    } as const;
    fc.assert(
      fc.property(series, fc.array(fc.nat()), fc.infiniteStream(fc.nat()), (log, again, keys) => {
        const [header, ...rows] = write(log, how).trimEnd().split('\n');
        const more = [...rows, ...again.map((k) => rows[k % rows.length])];
        const order = [...keys.take(more.length)];
        const shuffled = more
          .map((_, i) => i)
          .sort((a, b) => order[a] - order[b])
          .map((i) => more[i]);
        const before = read([header, ...rows, ''].join('\n'));
        const after = read([header, ...shuffled, ''].join('\n'));
        expect(channelsOf(after)).toEqual(channelsOf(before));
        expect(after).toMatchObject({ rows: more.length, rejected: again.length });
      }),
      { numRuns: 300 },
    );
  });
});

describe('any bytes', () => {
  const always = (bytes: Uint8Array) => {
    const reading = read(bytes, { timeZone: 'Europe/London' });
    if (reading.kind === 'unreadable') expect(reading.findings.length).toBeGreaterThan(0);
    else {
      expect(reading.channels.length).toBeGreaterThan(0);
      for (const { time, value } of reading.channels) {
        expect(time.length).toBe(value.length);
        expect(value.some(Number.isNaN)).toBe(false);
        expect(time.every((t, i) => Number.isFinite(t) && (i === 0 || t > time[i - 1]))).toBe(true);
      }
      expect(reading.rejected).toBeLessThan(reading.rows);
    }
  };

  test('end in readings, or in a reason why there are none', () => {
    fc.assert(fc.property(fc.uint8Array({ maxLength: 400 }), always), { numRuns: 500 });
  });

  test('even where they look like a log', () => {
    const piece = fc.constantFrom(
      ...[
        '2026-03-29',
        '29/03/2026',
        '01:30',
        '1774747800',
        '21.5',
        '21,5',
        '-999',
        '°C',
        '%',
        '"',
        '""',
        ',',
        ';',
        '\t',
        ' ',
        '|',
      ],
      ...[
        '\n',
        '\n',
        '\n',
        '\r',
        '#',
        'Time',
        'Temperature',
        'kWh',
        'AM',
        'Z',
        '+01:00',
        '\0',
        'é',
        '𝟙',
        '9999-12-31',
        '00/00/00',
      ],
    );
    const text = fc
      .array(piece, { maxLength: 80 })
      .map((pieces) => new TextEncoder().encode(pieces.join('')));
    fc.assert(fc.property(text, always), { numRuns: 2000 });
  });
});
