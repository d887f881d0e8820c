import { expect, test } from 'vitest';
import { tied } from '../../../src/sheet/drawing/tied.ts';

test('a figure keeps its unit on its line, an interval may break between its ends', () => {
  expect(tied('88 to 189 W/K and 4.1 °C')).toBe('88\u00a0to 189\u00a0W/K and 4.1\u00a0°C');
});
