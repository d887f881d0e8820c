/**
 * The cut through a house, as figures: which line stands where, how thick, and where its words go. A diagram:
 * proportions come from the areas, thickness from the designed heat loss.
 */
import type { Assessment } from '../../src/assessment.ts';
import type { DesignElement } from '../../src/house.ts';

export type DrawnElement = NonNullable<Assessment['design']>['elements'][number];

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** One line of the cut: a strip outward of the inner face. */
export interface Strip {
  readonly name: string;
  readonly kind: ElementKind;
  readonly corners: readonly Point[];
}

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

export interface SectionDrawing {
  readonly width: number;
  readonly height: number;
  readonly strips: readonly Strip[];
  readonly words: readonly Words[];
  /** Letters instead of names: the names are to be listed beneath. */
  readonly lettered: boolean;
  /** The roof over a ceiling: drawn thin, since it is not the shell. */
  readonly coldRoof: readonly Point[];
  readonly ground: { readonly y: number; readonly from: number; readonly to: number };
  /** The heated room: its floor, walls and ceiling from inside. */
  readonly room: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly floor: number;
  };
}

export type ElementKind = 'wall' | 'opening' | 'roof' | 'ceiling' | 'floor' | 'neighbour';

/** What an element is, from what the design says of it. */
export function kindOf(drawn: DrawnElement, designed: DesignElement | undefined): ElementKind {
  const facing = designed?.buildUp?.facing;
  const tilt = designed?.tiltDeg;
  if (drawn.to === 'adjacent') return 'neighbour';
  if (designed?.gValue !== undefined || /window|door|glaz|opening/i.test(drawn.name)) return 'opening';
  if (drawn.to === 'ground' || facing === 'down') return 'floor';
  if (/ceiling|loft|attic/i.test(drawn.name)) return 'ceiling';
  if (/floor|slab/i.test(drawn.name)) return 'floor';
  if (drawn.to === 'void') return 'ceiling';
  if (facing === 'up' || (tilt !== undefined && tilt < 60) || /roof|rafter/i.test(drawn.name))
    return tilt !== undefined && tilt < 10 ? 'ceiling' : 'roof';
  return 'wall';
}

interface Part {
  readonly element: DrawnElement;
  readonly kind: ElementKind;
}

const ROOM_FOR_WORDS = 118; // [px] on each side
const NARROW = 520; // [px]
const WORDS_HEIGHT = 44; // [px] of one element's words, with air
const BESIDE = 30; // [px] of ground drawn beside the house
const LETTER = 7.4; // [px], mean width of a letter

/**
 * @param elements with heat loss [W/K] and area [m²], as the assessment has them
 * @param designed as `house.json` has them, in the same order
 * @param loss     the whole designed heat loss, of which shares are told [W/K]
 * @param width    of the drawing [px]
 */
export function sectionDrawing(
  elements: readonly DrawnElement[],
  designed: readonly DesignElement[],
  loss: number,
  width: number,
): SectionDrawing {
  const parts = elements.map(
    (element): Part => ({
      element,
      kind: kindOf(
        element,
        designed.find(({ name }) => name === element.name),
      ),
    }),
  );
  const lettered = width < NARROW;
  const margin = lettered ? 18 : ROOM_FOR_WORDS;
  const room = roomOf(parts, width, margin);
  const { above, below, upright } = sorted(parts);
  const thickest = Math.max(...parts.map(({ element }) => element.heatLossWK));
  const perLoss = Math.min(44, width * 0.09) / thickest;
  const strips = [
    ...roofStrips(above, room, perLoss),
    ...wallStrips(upright, room, perLoss),
    ...layered(below, perLoss).map(({ part, from, to }) =>
      strip(
        part,
        { x: room.left, y: room.floor + from },
        { x: room.right, y: room.floor + from },
        0,
        to - from,
      ),
    ),
  ];
  const lowest = Math.max(...strips.flatMap(({ corners }) => corners.map(({ y }) => y)));
  const words = placeWords(parts, strips, loss, width, lettered ? null : margin);
  const end = Math.max(lowest, ...words.map(({ at, lines }) => at.y + lines.length * 15));
  return {
    width,
    height: Math.ceil(end + 24),
    strips,
    words,
    lettered,
    coldRoof:
      above.some(({ kind }) => kind === 'ceiling') && !above.some(({ kind }) => kind === 'roof')
        ? gable(room, -layered(above, perLoss).reduce((sum, { to, from }) => sum + to - from, 0))
        : [],
    ground: { y: room.floor, from: room.left - BESIDE, to: room.right + BESIDE },
    room,
  };
}

const sorted = (parts: readonly Part[]) => ({
  above: parts.filter(({ kind }) => kind === 'roof' || kind === 'ceiling'),
  below: parts.filter(({ kind }) => kind === 'floor'),
  upright: parts.filter(({ kind }) => kind === 'wall' || kind === 'opening' || kind === 'neighbour'),
});

const areaOf = (parts: readonly Part[]) => parts.reduce((sum, { element }) => sum + element.areaM2, 0);

/** A square house on its footprint, as high as its upright areas reach; held within what can be drawn. */
function roomOf(parts: readonly Part[], width: number, margin: number): SectionDrawing['room'] {
  const { above, below, upright } = sorted(parts);
  const footprint = areaOf(below) || areaOf(above) || areaOf(upright) / 3;
  const side = Math.sqrt(footprint);
  const tall = areaOf(upright) === 0 ? 0.4 : areaOf(upright) / (4 * side * side);
  const inner = width - 2 * margin - Math.min(100, width * 0.2);
  const span = Math.min(inner, 380);
  const left = (width - span) / 2;
  const height = span * Math.min(0.95, Math.max(0.4, tall));
  const top = span * RISE + 34;
  return { left, right: left + span, top, floor: top + height };
}

/** Rise of the roof over the span. */
const RISE = 0.34;

const gable = ({ left, right, top }: SectionDrawing['room'], lift: number): Point[] => [
  { x: left - 12, y: top + lift + 4 },
  { x: (left + right) / 2, y: top + lift - (right - left) * RISE * 0.8 },
  { x: right + 12, y: top + lift + 4 },
];

/** Parts of one place lie on each other, each as thick as its loss. */
function layered(parts: readonly Part[], perLoss: number) {
  let from = 0;
  return parts.map((part) => {
    const to = from + thickness(part, perLoss);
    const layer = { part, from, to };
    from = to;
    return layer;
  });
}

const thickness = ({ element }: Part, perLoss: number) => Math.max(2, element.heatLossWK * perLoss);

/** A strip along a line, from `inner` to `inner + deep` away from it (positive: down or to the right of the way). */
function strip({ element, kind }: Part, from: Point, to: Point, inner: number, deep: number): Strip {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const away = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
  const moved = ({ x, y }: Point, by: number) => ({ x: x + away.x * by, y: y + away.y * by });
  return {
    name: element.name,
    kind,
    corners: [moved(from, inner), moved(to, inner), moved(to, inner + deep), moved(from, inner + deep)],
  };
}

/** Two slopes share a pitched roof's thickness; a ceiling is one line. */
function roofStrips(above: readonly Part[], room: SectionDrawing['room'], perLoss: number): Strip[] {
  const ridge = { x: (room.left + room.right) / 2, y: room.top - (room.right - room.left) * RISE };
  const eaves = [
    { x: room.left, y: room.top },
    { x: room.right, y: room.top },
  ] as const;
  return [
    ...layered(
      above.filter(({ kind }) => kind === 'ceiling'),
      perLoss,
    ).map(({ part, from, to }) => strip(part, eaves[1], eaves[0], from, to - from)),
    ...layered(
      above.filter(({ kind }) => kind === 'roof'),
      perLoss / 2,
    ).flatMap(({ part, from, to }) => [
      strip(part, ridge, eaves[0], from, to - from),
      strip(part, eaves[1], ridge, from, to - from),
    ]),
  ];
}

/** The main wall stands on both sides and shares its thickness; the rest are pieces of it, as long as their area. */
function wallStrips(upright: readonly Part[], room: SectionDrawing['room'], perLoss: number): Strip[] {
  if (upright.length === 0) return [];
  const height = room.floor - room.top;
  const perArea = (2 * height) / areaOf(upright);
  const walls = upright.filter(({ kind }) => kind === 'wall');
  const main = walls.toSorted((a, b) => b.element.areaM2 - a.element.areaM2)[0];
  const pieces = upright
    .filter((part) => part !== main)
    .toSorted((a, b) => b.element.areaM2 - a.element.areaM2)
    .map((part) => ({ part, length: Math.max(5, part.element.areaM2 * perArea) }));
  const sides: [typeof pieces, typeof pieces] = [[], []];
  const filled = (side: typeof pieces) => side.reduce((sum, { length }) => sum + length, 0);
  for (const piece of pieces) sides[filled(sides[0]) <= filled(sides[1]) ? 0 : 1].push(piece);
  return sides.flatMap((side, i) => {
    const x = i === 0 ? room.left : room.right;
    const squeeze = Math.min(1, height / filled(side) || 1);
    const between = Math.max(0, height - filled(side)) / (side.length + 1);
    const along = (part: Part, y: number, length: number, share: number) => {
      const [top, bottom] = [
        { x, y },
        { x, y: y + length },
      ];
      const deep = Math.max(2, thickness(part, perLoss) * share);
      return i === 0 ? strip(part, top, bottom, 0, deep) : strip(part, bottom, top, 0, deep);
    };
    let y = room.top;
    const strips: Strip[] = [];
    const wallTo = (end: number) => {
      if (main !== undefined && end > y) strips.push(along(main, y, end - y, 0.5));
      y = end;
    };
    for (const { part, length } of side) {
      wallTo(y + between);
      strips.push(along(part, y, length * squeeze, 1));
      y += length * squeeze;
    }
    wallTo(room.floor);
    return strips;
  });
}

/** Words to the left and right, in the order of their strips, pushed apart until they do not touch. */
function placeWords(
  parts: readonly Part[],
  strips: readonly Strip[],
  loss: number,
  width: number,
  /** Room for names on each side [px]; null for letters. */
  margin: number | null,
): Words[] {
  const wanted = parts.flatMap(({ element }) => {
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
  const alphabet = parts.map(({ element }) => element.name);
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
        share: to === 'adjacent' ? 'not counted' : `${Math.round((heatLossWK / loss) * 100)} %`,
        at: { x, y },
        side,
        leader: [{ x: side === 'left' ? x + 5 : x - 5, y: y - 4 }, target],
      };
    });
  });
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
  return lines.slice(0, 2);
}
