/** What is to be said of a logger on a surface: codes and figures; the sentences are in `words/`. */
export type SurfaceNote =
  | { readonly code: 'surface-without-element' }
  | { readonly code: 'surface-on-ground' }
  | { readonly code: 'surface-far-side-unknown' }
  | { readonly code: 'surface-no-steady-hours' }
  /** Ti − Tsi in the mean [K]. */
  | { readonly code: 'surface-warmer-than-air'; readonly drop: number }
  /** Ti − Tsi in the mean [K], and one standard deviation of what it may be off [K]. */
  | { readonly code: 'surface-too-wide'; readonly drop: number; readonly loggersSd: number }
  /** Rules of the average method that failed, of so many nights or days. */
  | { readonly code: 'surface-rule-duration'; readonly blocks: number }
  | { readonly code: 'surface-rule-last-day'; readonly blocks: number }
  | { readonly code: 'surface-rule-two-thirds'; readonly blocks: number }
  | { readonly code: 'surface-rule-storage'; readonly blocks: number }
  | { readonly code: 'surface-storage-not-judged' }
  | { readonly code: 'surface-nights-read' }
  | { readonly code: 'surface-days-read' }
  | { readonly code: 'surface-sun-not-known' }
  | { readonly code: 'surface-room-without-logger' }
  /** [m²K/W] */
  | { readonly code: 'surface-resistance-assumed'; readonly resistance: number };
