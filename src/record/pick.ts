/** Which column of a file an entry of the house means. */
import type { Quantity } from '../assessment.ts';
import { findHeader, type LogChannel, type LogFinding } from '../logs/index.ts';
import type { RecordFinding } from './finding.ts';
import type { Entry, ReadFile } from './shelf.ts';

/**
 * The column that the house names for a quantity, else the only one that holds it; of several the first, unless the
 * house names columns of this file for other quantities and so has chosen not to name this one.
 */
export function pick(
  reading: ReadFile,
  quantity: Quantity,
  entry: Entry,
  findings: (RecordFinding | LogFinding)[],
): LogChannel | null {
  const holding = reading.channels.filter((channel) => channel.quantity === quantity);
  const wanted = columnNamed(entry, quantity);
  const named =
    wanted === undefined
      ? -1
      : findHeader(
          holding.map(({ column }) => column),
          wanted,
        );
  if (named >= 0) return holding[named];
  if (holding.length > 1 && namesQuantities(entry)) return null;
  if (holding.length > 1)
    findings.push({
      code: 'several-columns-first-taken',
      quantity,
      columns: holding.map(({ column }) => column),
      where: { file: reading.file },
    });
  return holding[0] ?? null;
}

const namesQuantities = ({ columns }: Entry) =>
  Object.keys(columns ?? {}).some((key) => key !== 'time' && key !== 'date');

const columnNamed = ({ columns }: Entry, quantity: Quantity): string | undefined =>
  Object.entries(columns ?? {}).find(([key]) => key === quantity)?.[1];
