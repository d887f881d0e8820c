import { expect, test } from 'vitest';
import { thinned } from '../../../web/charts/thinned.ts';

test('a colour is let through, whole or as the built stylesheet shortens it', () => {
  // COMPUTED: 0.5 · 255 = 127.5, rounded up to 128 = 0x80
  expect(thinned('#85817a', 0.5)).toBe('#85817a80');
  expect(thinned('#666', 0.5)).toBe('#66666680');
  expect(thinned('#fff', 0.02)).toBe('#ffffff05');
});
