/** The words beside the cut through a house: names and shares to the left and right, each with a leader to its element. */
import { figures } from '../../words/index.ts';
import type { DrawnElement } from './elementKind.ts';
import type { Point, Strip } from './sectionDrawing.ts';

export interface Words {
  readonly name: string;
  /** The name on its lines, or one letter where the sheet is narrow. */
  readonly lines: readonly string[];
  readonly share: string;
  readonly at: Point;
  readonly side: 'left' | 'right';
  /** From the words to the strip. */
  readonly leader: readonly [Point, Point];
}

const WORDS_HEIGHT = 44; // [px] of one element's words, with air
const MOST_LINES = 2; // of a name
const LETTER = 7.4; // [px], mean width of a letter

/** Words to the left and right, in the order of their strips, pushed apart until they do not touch. */
export function placeWords(
  elements: readonly DrawnElement[],
  strips: readonly Strip[],
  loss: number,
  width: number,
  /** Room for names on each side [px]; null for letters. */
  margin: number | null,
): Words[] {
  const wanted = elements.flatMap((element) => {
    const own = strips.filter(({ name }) => name === element.name);
    if (own.length === 0) return [];
    const best = own.toSorted((a, b) => lengthOf(b) - lengthOf(a))[0];
    return [{ element, own, target: centre(best) }];
  });
  const sides: Record<Words['side'], typeof wanted> = { left: [], right: [] };
  for (const item of wanted.toSorted((a, b) => a.target.y - b.target.y)) {
    const { x } = item.target;
    const acrossBoth =
      new Set(item.own.map((it) => Math.sign(Math.round(centre(it).x - width / 2)))).size !== 1;
    const middle = acrossBoth || Math.abs(x - width / 2) < 20;
    const emptier = sides.left.length <= sides.right.length ? 'left' : 'right';
    const side = middle ? emptier : x < width / 2 ? 'left' : 'right';
    sides[side].push({ ...item, target: nearest(item.own, side) });
  }
  const alphabet = elements.map(({ name }) => name);
  const inset = (margin ?? 18) - 4;
  return (['left', 'right'] as const).flatMap((side) => {
    let free = 16;
    return sides[side].map(({ element: { name, heatLossWK, to }, target }): Words => {
      const lines =
        margin === null
          ? [String.fromCharCode(97 + (alphabet.indexOf(name) % 26))]
          : wrap(name, Math.floor(margin / LETTER));
      const y = Math.max(free, target.y - (margin === null ? -4 : 8));
      free = y + (margin === null ? 20 : WORDS_HEIGHT + (lines.length - 1) * 15);
      const x = side === 'left' ? inset : width - inset;
      return {
        name,
        lines,
        share: shareOf(heatLossWK, to, loss),
        at: { x, y },
        side,
        leader: [{ x: side === 'left' ? x + 5 : x - 5, y: y - 4 }, target],
      };
    });
  });
}

function shareOf(heatLoss: number | null, to: DrawnElement['to'], loss: number): string {
  if (to === 'adjacent') return 'not counted';
  return heatLoss === null ? '—' : figures.percent(heatLoss / loss);
}

const lengthOf = ({ corners: [a, b] }: Strip) => Math.hypot(b.x - a.x, b.y - a.y);

const centre = ({ corners }: Strip): Point => ({
  x: corners.reduce((sum, { x }) => sum + x, 0) / corners.length,
  y: corners.reduce((sum, { y }) => sum + y, 0) / corners.length,
});

/** Where a leader meets an element: the longest of its pieces on that side, near the end that is turned to it. */
function nearest(own: readonly Strip[], side: Words['side']): Point {
  const sign = side === 'left' ? 1 : -1;
  const outermost = Math.min(...own.map((it) => sign * centre(it).x));
  const piece = own
    .filter((it) => sign * centre(it).x < outermost + 20)
    .toSorted((a, b) => lengthOf(b) - lengthOf(a))[0];
  const [a, b, c, d] = piece.corners;
  const [p, q] = [middleOf(a, d), middleOf(b, c)];
  if (Math.abs(p.x - q.x) < 20) return centre(piece);
  const [near, far] = sign * p.x < sign * q.x ? [p, q] : [q, p];
  return { x: near.x + (far.x - near.x) * 0.1, y: near.y + (far.y - near.y) * 0.1 };
}

const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** Words on lines of so many letters; what is longer is cut short. */
function wrap(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word.length > letters ? `${word.slice(0, letters - 1)}…` : word);
  }
  if (lines.length <= MOST_LINES) return lines;
  const kept = lines.slice(0, MOST_LINES);
  return [...kept.slice(0, -1), `${kept[MOST_LINES - 1].slice(0, letters - 1)}…`];
}
