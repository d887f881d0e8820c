/** How cold it was while the house fell. */
import type { NightCurve } from '../../curves.ts';

/** Mean outdoor temperature within the fitted window [°C]; null without a window or readings. */
export function meanOutside({ time, outside, window }: NightCurve): number | null {
  if (window === null) return null;
  const within = outside.filter(
    (value, i): value is number => value !== null && time[i] >= window.from && time[i] <= window.to,
  );
  return within.length === 0 ? null : within.reduce((sum, value) => sum + value, 0) / within.length;
}
