/** Where the words of each mark on a ruler stand: over its interval, on the sheet, and clear of the lines through their row. */

/** One mark in its row; places in px from the ruler's beginning. */
export interface MarkRow {
  readonly kind: 'measured' | 'drawn' | 'other';
  readonly low: number;
  readonly at: number;
  readonly high: number;
  /** How long its words are. */
  readonly length: number;
}

export interface WordsPlace {
  readonly anchor: 'start' | 'middle' | 'end';
  readonly x: number;
}

const LABEL_LETTER = 8; // [px], mean width of a letter; bold ones are wider
const FIGURE_LETTER = 9; // [px]
const ASIDE = 8; // [px], between words and a line beside them
const FARTHEST = 16; // crossings of a fine line that words across the whole ruler from their mark count as
const BLEED = 12; // [px], that the ruler's body stands out at both ends

/** How much further down the figure stands where it is below its label [px]. */
export const LINE = 17;

export interface MarkWords {
  readonly label: string;
  readonly figure: string;
  /** Whether the label stands over the figure, as there is no room for both in one line. */
  readonly over: boolean;
  /** [px] */
  readonly length: number;
}

/** @param width of the ruler [px]; a label that is longer is cut */
export function markWords(label: string, figure: string, width: number): MarkWords {
  const beside = (label.length + 1) * LABEL_LETTER + figure.length * FIGURE_LETTER;
  if (beside <= width) return { label, figure, over: false, length: beside };
  const most = Math.floor(width / LABEL_LETTER);
  const cut = label.length <= most ? label : `${label.slice(0, most - 1).trimEnd()}…`;
  const length = Math.max(cut.length * LABEL_LETTER, figure.length * FIGURE_LETTER);
  return { label: cut, figure, over: true, length };
}

/** @param width of the ruler [px] */
export const placeWords = (rows: readonly MarkRow[], width: number): WordsPlace[] =>
  rows.map((row, i) => {
    const lines = linesThrough(rows, i);
    const possible = [
      ...wished(row, width),
      ...lines.flatMap(({ x }): WordsPlace[] => [
        { anchor: 'start', x: x + ASIDE },
        { anchor: 'end', x: x - ASIDE },
      ]),
    ].filter((place) => onSheet(place, row, width) && beside(place, row));
    const cost = (place: WordsPlace) => {
      const [from, to] = spanOf(place, row.length);
      const crossed = lines.filter(({ x }) => x > from - ASIDE / 2 && x < to + ASIDE / 2);
      const away = Math.max(0, from - row.at, row.at - to) / width;
      return crossed.reduce((sum, { weight }) => sum + weight, FARTHEST * away);
    };
    const best = possible.toSorted((a, b) => cost(a) - cost(b))[0];
    return (
      best ?? { anchor: 'middle', x: Math.min(Math.max(row.at, row.length / 2), width - row.length / 2) }
    );
  });

/** A drawn value is a bold line through all rows; a mark's fine line falls through the rows below its own. */
const linesThrough = (rows: readonly MarkRow[], i: number) =>
  rows
    .filter(({ kind }, j) => kind === 'drawn' || j < i)
    .map(({ kind, at }) => ({ x: at, weight: kind === 'drawn' ? 3 : 1 }));

/** At the interval's beginning, its end or over the value, as the mark lies left, right or in the middle. */
function wished({ kind, low, at, high }: MarkRow, width: number): WordsPlace[] {
  const right: WordsPlace = { anchor: 'start', x: at + ASIDE };
  const left: WordsPlace = { anchor: 'end', x: at - ASIDE };
  if (kind === 'drawn') return at < width / 2 ? [right, left] : [left, right];
  const begin: WordsPlace = { anchor: 'start', x: low };
  const end: WordsPlace = { anchor: 'end', x: high };
  const over: WordsPlace = { anchor: 'middle', x: at };
  const middle = (low + high) / 2 / width;
  if (middle < 0.35) return [begin, over, end];
  return middle > 0.65 ? [end, over, begin] : [over, begin, end];
}

/** From where to where words of so many px reach. */
export function spanOf({ anchor, x }: WordsPlace, length: number): [number, number] {
  const from = x - { start: 0, middle: 0.5, end: 1 }[anchor] * length;
  return [from, from + length];
}

function onSheet(place: WordsPlace, { length }: MarkRow, width: number): boolean {
  const [from, to] = spanOf(place, length);
  return from >= -BLEED && to <= width + BLEED;
}

/** Words that no longer touch their interval belong to nothing. */
function beside(place: WordsPlace, { low, high, length }: MarkRow): boolean {
  const [from, to] = spanOf(place, length);
  return from <= high + ASIDE && to >= low - ASIDE;
}
