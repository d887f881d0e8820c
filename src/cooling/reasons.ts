/** Why a night counts or does not: codes and figures; the sentences are in `words/`. */
export type NightReason =
  | { readonly code: 'no-inside-readings' }
  | { readonly code: 'no-outside-readings' }
  /** [s] */
  | { readonly code: 'gap-inside'; readonly missing: number }
  | { readonly code: 'gap-outside'; readonly missing: number }
  | { readonly code: 'no-cooling-window' }
  | { readonly code: 'too-short'; readonly duration: number; readonly needed: number }
  /** [K] */
  | { readonly code: 'difference-too-small'; readonly difference: number; readonly needed: number }
  /** Metered heat in the night [J]. */
  | { readonly code: 'heater-on'; readonly energy: number }
  | { readonly code: 'barely-fell'; readonly drop: number }
  | { readonly code: 'uneven-fall'; readonly rms: number }
  | { readonly code: 'put-in-by-hand'; readonly why: string | null }
  | { readonly code: 'left-out-by-hand'; readonly why: string | null };
