/** What is to be said of readings once they stand in order: doubted ones, gaps, coarse steps. */
import { gapsOf, isIrregular, resolutionOf } from '../series/steps.ts';
import { COARSE_TEMPERATURE } from './doubts/index.ts';
import { doubtKinds, type LogChannel, type LogFinding } from './log.ts';
import type { Merged } from './merge.ts';
import { mark, newTally } from './tally.ts';

/** @param line the line of each reading */
export function channelFindings(file: string, channel: LogChannel, line: Int32Array): LogFinding[] {
  const { column, quantity, value, doubt } = channel;
  const tallies = doubtKinds.map(newTally);
  for (let i = 0; i < doubt.length; i++) if (doubt[i] > 0) mark(tallies[doubt[i] - 1], line[i]);
  const doubted = doubtKinds.flatMap((why, k): LogFinding[] => {
    const tally = tallies[k];
    if (tally.count === 0) return [];
    return [{ code: 'readings-doubted', why, ...tally, where: { file, line: tally.lines[0], column } }];
  });
  const step = quantity === 'temperature' && value.length >= FEWEST ? resolutionOf(value) : 0;
  if (step < COARSE_TEMPERATURE) return doubted;
  return [...doubted, { code: 'coarse-steps', step, where: { file, column } }];
}

/** Of the times of all columns together. */
export function spacingFindings(file: string, { time, line }: Merged): LogFinding[] {
  if (time.length < FEWEST) return [];
  const { count, longest, at } = gapsOf(time);
  const lines = at.map((i) => line[i]);
  return [
    ...(count > 0 ? [{ code: 'gaps' as const, count, longest, lines, where: { file, line: lines[0] } }] : []),
    ...(isIrregular(time) ? [{ code: 'irregular-spacing' as const, where: { file } }] : []),
  ];
}

/** Of fewer readings nobody can say what is usual. */
const FEWEST = 12;
