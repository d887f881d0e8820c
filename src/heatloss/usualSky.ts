/** Whether the sun was logged, and the sky where it was not. */

/**
 * Of a clear sky's global irradiance on level ground, what an ordinary one lets through [–]. PRACTICE. The models that
 * take it find out for themselves how much comes in; the daily balance cannot, and has the share of heat through panes
 * that the proving ground's records had (`dailyBalance/sunThroughGlass.ts`).
 */
export const USUAL_CLEARNESS = 0.45;

/** By day so much of the sun must be known, and so much of a clear sky's must have come, for it to count as logged [–]. */
const MOSTLY = 0.95;
const LEAST_SUN = 0.03;

/**
 * Whether an irradiance tells the days that it covers: one logged by halves would be taken for darkness in its gaps.
 *
 * @param clear of a clear sky at the same instants [W/m²]
 */
export function sunIsLogged(irradiance: Float64Array, clear: Float64Array): boolean {
  let days = 0;
  let known = 0;
  let came = 0;
  let couldCome = 0;
  irradiance.forEach((it, k) => {
    if (clear[k] <= 0) return;
    days++;
    if (Number.isNaN(it)) return;
    known++;
    came += Math.max(0, it);
    couldCome += clear[k];
  });
  return known >= MOSTLY * days && came > LEAST_SUN * couldCome;
}
