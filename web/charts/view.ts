/** The part of a record that is shown, and how it is moved: pure arithmetic on instants [s]. */
export interface View {
  readonly from: number;
  readonly to: number;
}

/** Nothing is to be seen below ten minutes. */
export const SHORTEST = 600; // [s]

/** Shorter (`factor` < 1) or longer about an instant that stays where it is, within the bounds. */
export function zoomed(view: View, about: number, factor: number, bounds: View): View {
  const span = Math.min(Math.max((view.to - view.from) * factor, SHORTEST), bounds.to - bounds.from);
  const share = (about - view.from) / (view.to - view.from);
  return within({ from: about - share * span, to: about + (1 - share) * span }, bounds);
}

/** Moved by so many seconds, of the same length, no further than the bounds. */
export const panned = (view: View, by: number, bounds: View): View =>
  within({ from: view.from + by, to: view.to + by }, bounds);

/** From one instant to another, whichever comes first, not too short and within the bounds. */
export function between(a: number, b: number, bounds: View): View {
  const middle = (a + b) / 2;
  const half = Math.max(Math.abs(b - a), SHORTEST) / 2;
  return within({ from: middle - half, to: middle + half }, bounds);
}

/** The view itself, or moved inside the bounds; all of them where it is longer. */
export function within(view: View, bounds: View): View {
  const span = view.to - view.from;
  if (span >= bounds.to - bounds.from) return bounds;
  const from = Math.min(Math.max(view.from, bounds.from), bounds.to - span);
  return { from, to: from + span };
}

export const sameView = (a: View, b: View) => a.from === b.from && a.to === b.to;
