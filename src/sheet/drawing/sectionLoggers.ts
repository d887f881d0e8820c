/** Where the loggers sit in the cut through the house, and which of them have room for a name. */
import type { Logger } from '../../house.ts';
import type { Point, SectionDrawing, Strip } from './sectionDrawing.ts';

export interface LoggerMark {
  readonly at: Point;
  /** To the right of the mark; empty where there is no room for it. */
  readonly label: string;
}

const LETTER = 6.8; // [px], mean width of a letter
const ASIDE = 10; // [px], from a mark to its label
const APART = 14; // [px], between marks that share a label
const ROOMY = 220; // [px] of width, for the names of rooms
const MOST_NAMES = 6;

export function placeLoggers(loggers: readonly Logger[], drawing: SectionDrawing): LoggerMark[] {
  const of = (place: Logger['place']) => loggers.filter((it) => it.place === place);
  return [
    ...insideMarks(of('inside'), drawing),
    ...underRoof(of('void').length, drawing.attic),
    ...side(of('outside').length, 'outdoors', { x: drawing.room.left - 4, y: 14 }),
    ...of('surface').flatMap(({ element }) => onStrip(drawing.strips.find(({ name }) => name === element))),
    ...of('adjacent').flatMap(() => onStrip(drawing.strips.find(({ kind }) => kind === 'neighbour'))),
  ];
}

/** Rising from the left, so that no name runs into the next. */
const insideMarks = (inside: readonly Logger[], { room }: SectionDrawing): LoggerMark[] => {
  const named = room.right - room.left >= ROOMY && inside.length <= MOST_NAMES;
  return inside.map((logger, i) => {
    const share = (i + 0.5) / inside.length;
    const x = room.left + (room.right - room.left) * (0.12 + 0.5 * share);
    const letters = Math.floor((room.right - x - ASIDE - 6) / LETTER);
    return {
      at: { x, y: room.floor - (room.floor - room.top) * share },
      label: named ? cut(logger.room ?? '', letters) : '',
    };
  });
};

/** In the lower part of the triangle, where it is wide, marks and label together in the middle. */
function underRoof(count: number, attic: SectionDrawing['attic']): LoggerMark[] {
  if (attic === null || count === 0) return [];
  const depth = 0.68;
  const room = attic.span * depth - 24;
  const marks = (count - 1) * APART;
  const words = 'under the roof';
  const labelled = marks + ASIDE + words.length * LETTER;
  const label = labelled <= room ? words : '';
  const width = label === '' ? marks : labelled;
  const at = { x: attic.middle - width / 2, y: attic.top + (attic.base - attic.top) * depth };
  return side(count, label, at);
}

/** Marks beside each other, with one label after the last. */
const side = (count: number, label: string, { x, y }: Point): LoggerMark[] =>
  Array.from({ length: count }, (_, i) => ({
    at: { x: x + i * APART, y },
    label: i === count - 1 ? label : '',
  }));

const onStrip = (strip: Strip | undefined): LoggerMark[] => {
  if (strip === undefined) return [];
  const mean = (axis: 'x' | 'y') =>
    strip.corners.reduce((sum, it) => sum + it[axis], 0) / strip.corners.length;
  return [{ at: { x: mean('x'), y: mean('y') }, label: '' }];
};

const cut = (text: string, letters: number) =>
  text.length <= letters ? text : letters < 3 ? '' : `${text.slice(0, letters - 1).trimEnd()}…`;
