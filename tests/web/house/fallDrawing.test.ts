import { expect, test } from 'vitest';
import type { NightResult } from '../../../src/assessment.ts';
import type { NightCurve } from '../../../src/curves.ts';
import { fallDrawing } from '../../../web/house/fallDrawing.ts';

const HOUR = 3600;
const dusk = Date.parse('2027-01-10T16:00:00Z') / 1000;
const time = Array.from({ length: 16 }, (_, i) => dusk + i * HOUR);
/** Invented: an even fall of 0.2 K in the hour from 20 °C, fitted from the fourth to the thirteenth hour. */
const falling = time.map((_, i) => 20 - 0.2 * i);
const within = (i: number) => i >= 4 && i <= 13;
const only = (values: readonly number[]) => values.map((it, i) => (within(i) ? it : null));
const curve: NightCurve = {
  date: '2027-01-10',
  sunset: dusk,
  sunrise: dusk + 15 * HOUR,
  time,
  inside: falling,
  outside: time.map(() => 3),
  fitted: only(falling),
  window: { from: time[4], to: time[13] },
  foretold: {
    value: only(time.map((_, i) => 19.2 - 0.1 * (i - 4))),
    low: only(time.map((_, i) => 19.2 - 0.15 * (i - 4))),
    high: only(time.map((_, i) => 19.2 - 0.05 * (i - 4))),
  },
};
const night: NightResult = {
  date: '2027-01-10',
  from: '2027-01-10T20:00:00+00:00',
  to: '2027-01-11T05:00:00+00:00',
  used: true,
  heated: false,
  reasons: [],
  dropK: 1.8,
  rateKPerH: 0.2,
  meanDifferenceK: 15,
  timeConstantH: 75,
  timeConstantSeH: 5,
  foretoldDropK: { value: 0.9, low: 0.45, high: 1.35 },
};

test('what was lost stands on the ruler at the height where the line ends', () => {
  const drawing = fallDrawing(curve, night, 360, 'UTC');
  const heights = [...(drawing?.fitted ?? '').matchAll(/[ML]\S+ (\S+?)(?=[ML]|$)/g)].map(([, y]) =>
    Number(y),
  );
  expect(drawing?.ruler.top).toBeCloseTo(heights[0], 0);
  expect(drawing?.ruler.measured).toBeCloseTo(heights[heights.length - 1], 0);
});

test('a fall beyond what is drawn lies below its interval', () => {
  const ruler = fallDrawing(curve, night, 360, 'UTC')?.ruler;
  expect(ruler?.measured).toBeGreaterThan(ruler?.drawn?.to ?? Number.POSITIVE_INFINITY);
  expect(ruler?.drawn?.at).toBeGreaterThan(ruler?.drawn?.from ?? Number.POSITIVE_INFINITY);
});

test('the ruler has a nought, and figures that do not touch on a phone', () => {
  const graduations = fallDrawing(curve, night, 328, 'UTC')?.ruler.graduations ?? [];
  const figures = graduations.filter(({ text }) => text !== '');
  expect(Number(figures[0].text)).toBe(0);
  // Figures of 13 px need some air.
  for (const [i, { at }] of figures.slice(1).entries()) expect(at - figures[i].at).toBeGreaterThan(20);
});

test('without a design there is the fall alone', () => {
  const { foretold: _, ...alone } = curve;
  const { foretoldDropK: __, ...plain } = night;
  const drawing = fallDrawing(alone, plain, 640, 'UTC');
  expect(drawing?.band).toBeNull();
  expect(drawing?.ruler.drawn).toBeNull();
  expect(drawing?.inside).toMatch(/^M/);
});

test('a night without a window has no picture', () => {
  expect(fallDrawing({ ...curve, window: null }, night, 640, 'UTC')).toBeNull();
  expect(fallDrawing(curve, { ...night, dropK: null }, 640, 'UTC')).toBeNull();
});
