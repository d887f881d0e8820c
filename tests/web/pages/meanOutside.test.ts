import { expect, test } from 'vitest';
import { meanOutside } from '../../../src/sheet/drawing/meanOutside.ts';

const curve = {
  date: '2027-02-12',
  sunset: 0,
  sunrise: 40,
  time: [0, 10, 20, 30, 40],
  inside: [20, 20, 19, 18, 18],
  outside: [9, 4, null, 6, 9],
  fitted: [null, null, null, null, null],
  window: { from: 10, to: 30 },
};

test('the outdoor mean is over the hours of the fall only, gaps left out', () => {
  expect(meanOutside(curve)).toBe(5);
});

test('without a window or readings there is no outdoor mean', () => {
  expect(meanOutside({ ...curve, window: null })).toBeNull();
  expect(meanOutside({ ...curve, outside: [9, null, null, null, 9] })).toBeNull();
});
