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
  /** What a night lays over a chart of many days. */
  readonly nightShade: string;
  /** What the fitted hours lay over their night. */
  readonly windowShade: string;
  readonly font: string;
}

let current: Inks | null = null;

/** The colours of now; read once per change of the theme. */
export function inks(): Inks {
  current ??= readInks();
  return current;
}

/** Calls back when the colours have changed: by day or night, or for paper. @returns what stops it */
export function watchInks(changed: () => void): () => void {
  const reread = () => {
    current = null;
    changed();
  };
  const media = ['(prefers-color-scheme: dark)', 'print'].map((query) => matchMedia(query));
  for (const it of media) it.addEventListener('change', reread);
  return () => {
    for (const it of media) it.removeEventListener('change', reread);
  };
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
    nightShade: token('--night-shade'),
    windowShade: token('--window-shade'),
    font: getComputedStyle(document.body).fontFamily,
  };
}
