/** The shares of a doubt as pieces of a rule. */
import type { StageResult } from '../../src/assessment.ts';
import { doubtNames } from '../../src/words/index.ts';

/** What is smaller is told together. */
const LEAST_SHARE = 0.05;

interface Piece {
  readonly name: string;
  readonly share: number;
  /** Where it begins, 0 to 1. */
  readonly from: number;
}

/** Laid end to end, so that all of them make up the whole. */
export function piecesOf(doubts: NonNullable<StageResult['doubts']>): Piece[] {
  const told = doubts.filter(({ share }) => share >= LEAST_SHARE);
  const rest = 1 - told.reduce((sum, { share }) => sum + share, 0);
  const named = [
    ...told.map(({ source, share }) => ({ name: doubtNames[source], share })),
    ...(told.length < doubts.length ? [{ name: 'all others together', share: rest }] : []),
  ];
  return named.map((piece, i) => ({
    ...piece,
    from: named.slice(0, i).reduce((sum, { share }) => sum + share, 0),
  }));
}
