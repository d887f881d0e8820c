/**
 * The cut through a house, as figures: which line stands where, how thick, and where its words go. A diagram:
 * proportions come from the areas, thickness from the designed heat loss.
 */
import type { DesignElement } from '../../house.ts';
import { type DrawnElement, type ElementKind, kindOf } from './elementKind.ts';
import { placeWords, type Words } from './sectionWords.ts';

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

export interface SectionDrawing {
  readonly width: number;
  readonly height: number;
  readonly strips: readonly Strip[];
  readonly words: readonly Words[];
  /** Letters instead of names: the names are to be listed beneath. */
  readonly lettered: boolean;
  /** The roof over a ceiling: drawn thin, since it is not the shell. */
  readonly coldRoof: readonly Point[];
  /** The space under the slopes, a triangle; null where there are none. */
  readonly attic: {
    readonly middle: number;
    readonly top: number;
    readonly base: number;
    readonly span: number;
  } | null;
  readonly ground: { readonly y: number; readonly from: number; readonly to: number };
  /** The heated room: its floor, walls and ceiling from inside. */
  readonly room: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly floor: number;
  };
}

interface Part {
  readonly element: DrawnElement;
  readonly kind: ElementKind;
}

const ROOM_FOR_WORDS = 118; // [px] on each side
const NARROW = 520; // [px]
const BESIDE = 30; // [px] of ground drawn beside the house

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
  const thickest = Math.max(...parts.map(({ element }) => element.heatLossWK ?? 0));
  const perLoss = Math.min(44, width * 0.09) / (thickest || 1);
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
  const words = placeWords(elements, strips, loss, width, lettered ? null : margin);
  const coldRoof = coldRoofOf(above, room, perLoss);
  const end = Math.max(lowest, ...words.map(({ at, lines }) => at.y + lines.length * 15));
  return {
    width,
    height: Math.ceil(end + 24),
    strips,
    words,
    lettered,
    coldRoof,
    attic: atticOf(above, room, coldRoof),
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
  const top = ABOVE + (above.length > 0 ? span * RISE : 0);
  return { left, right: left + span, top, floor: top + height };
}

/** Room over the house, for what is outdoors [px]. */
const ABOVE = 34;

/** Rise of the roof over the span. */
const RISE = 0.34;

/** Over a ceiling without a roof of its own the roof is not the shell, but it is there. */
function coldRoofOf(above: readonly Part[], room: SectionDrawing['room'], perLoss: number): Point[] {
  const ceilings = above.filter(({ kind }) => kind === 'ceiling');
  if (ceilings.length === 0 || ceilings.length < above.length) return [];
  const base = room.top - layered(ceilings, perLoss).reduce((sum, { to, from }) => sum + to - from, 0);
  return [
    { x: room.left - 12, y: base + 4 },
    { x: (room.left + room.right) / 2, y: base - (room.right - room.left) * RISE * 0.8 },
    { x: room.right + 12, y: base + 4 },
  ];
}

function atticOf(
  above: readonly Part[],
  { left, right, top }: SectionDrawing['room'],
  coldRoof: readonly Point[],
): SectionDrawing['attic'] {
  const [middle, span] = [(left + right) / 2, right - left];
  if (coldRoof.length > 0) return { middle, span, top: coldRoof[1].y, base: coldRoof[0].y - 4 };
  const pitched = above.some(({ kind }) => kind === 'roof');
  return pitched ? { middle, span, top: top - span * RISE, base: top } : null;
}

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

const thickness = ({ element }: Part, perLoss: number) => Math.max(2, (element.heatLossWK ?? 0) * perLoss);

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
