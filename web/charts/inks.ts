/** The theme's colours for a canvas, which cannot read them by itself. */
export interface Inks {
  readonly paper: string;
  readonly graphite: string;
  readonly pencil: string;
  readonly chalk: string;
  readonly line: string;
  readonly ember: string;
  readonly frost: string;
  readonly night: string;
  readonly nightWords: string;
  readonly nightLesser: string;
  readonly nightLine: string;
  readonly nightEmber: string;
  readonly nightFrost: string;
  readonly font: string;
}

let current: Inks | null = null;

/** The colours of now; read once per change of the theme. */
export function inks(): Inks {
  current ??= readInks();
  return current;
}

/** Calls back when the colours have changed. @returns what stops it */
export function watchInks(changed: () => void): () => void {
  const reread = () => {
    current = null;
    changed();
  };
  const scheme = matchMedia('(prefers-color-scheme: dark)');
  scheme.addEventListener('change', reread);
  return () => scheme.removeEventListener('change', reread);
}

function readInks(): Inks {
  const style = getComputedStyle(document.documentElement);
  const token = (name: string) => style.getPropertyValue(name).trim();
  return {
    paper: token('--paper'),
    graphite: token('--graphite'),
    pencil: token('--pencil'),
    chalk: token('--chalk'),
    line: token('--line'),
    ember: token('--ember'),
    frost: token('--frost'),
    night: token('--night'),
    nightWords: token('--night-words'),
    nightLesser: token('--night-lesser'),
    nightLine: token('--night-line'),
    nightEmber: token('--night-ember'),
    nightFrost: token('--night-frost'),
    font: getComputedStyle(document.body).fontFamily,
  };
}

/** The colour "#rrggbb" let through by so much. */
export const thinned = (hex: string, share: number) =>
  `${hex}${Math.round(share * 255)
    .toString(16)
    .padStart(2, '0')}`;
