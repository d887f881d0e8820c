/** Why a night counts or does not: codes and figures; the sentences are in `words/`. */
export type NightReason =
  | { readonly code: 'no-inside-readings' }
  | { readonly code: 'no-outside-readings' }
  /** [s] */
  | { readonly code: 'gap-inside'; readonly missing: number }
  | { readonly code: 'gap-outside'; readonly missing: number }
  | { readonly code: 'gap-neighbour'; readonly missing: number }
  | { readonly code: 'no-cooling-window' }
  | { readonly code: 'too-short'; readonly duration: number; readonly needed: number }
  /** [K] */
  | { readonly code: 'difference-too-small'; readonly difference: number; readonly needed: number }
  /** Metered heat in the night [J]. */
  | { readonly code: 'heater-on'; readonly energy: number }
  /** So many rises, of so much in the middle of them [K]. */
  | { readonly code: 'heating-cycled'; readonly times: number; readonly swing: number }
  /** It rose within the window [K], so long before sunrise [s]. */
  | { readonly code: 'heat-came-in'; readonly rise: number; readonly beforeSunrise: number }
  | { readonly code: 'room-warmed'; readonly room: string; readonly rise: number }
  /** It fell by so much within 20 minutes [K], so long before sunrise [s]. */
  | { readonly code: 'opened'; readonly fall: number; readonly beforeSunrise: number }
  /** The strongest hour [W/m²]. */
  | { readonly code: 'sun-still-on'; readonly irradiance: number }
  | { readonly code: 'outside-stood-still'; readonly temperature: number; readonly duration: number }
  | { readonly code: 'outside-jumped'; readonly jump: number }
  | { readonly code: 'outside-above-inside'; readonly duration: number }
  | { readonly code: 'barely-fell'; readonly drop: number }
  | { readonly code: 'uneven-fall'; readonly rms: number }
  | { readonly code: 'put-in-by-hand'; readonly why: string | null }
  | { readonly code: 'left-out-by-hand'; readonly why: string | null };
