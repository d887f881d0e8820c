/** The colour "#rrggbb", or "#rgb" as the built stylesheet shortens it, let through by so much. */
export const thinned = (hex: string, share: number) =>
  `${hex.length === 4 ? hex.replace(/[\da-f]/gi, '$&$&') : hex}${Math.round(share * 255)
    .toString(16)
    .padStart(2, '0')}`;
