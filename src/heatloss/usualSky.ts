/** The sky where no sun was logged. */

/**
 * Of a clear sky's global irradiance on level ground, what an ordinary one lets through [–]. PRACTICE. The models that
 * take it find out for themselves how much comes in; the daily balance cannot, and has the share of heat through panes
 * that the proving ground's records had (`dailyBalance/sunThroughGlass.ts`).
 */
export const USUAL_CLEARNESS = 0.45;
