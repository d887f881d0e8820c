/** The loggers side by side: place, span, interval, steps, gaps, what is kept out, offsets and clock. */

import { tied } from '../../src/sheet/drawing/tied.ts';
import { isoWithOffset } from '../../src/sky/zone.ts';
import { figures } from '../../src/words/index.ts';
import {
  behindWords,
  clockShiftWords,
  doubtedWords,
  everyWords,
  gapsWords,
  placeWords,
  resolutionWords,
  statedOffsetWords,
} from '../../src/words/loggerFacts.ts';
import { type Column, Table } from '../parts/Table.tsx';
import type { LoggerRow } from './loggerRows.ts';

interface Props {
  readonly rows: readonly LoggerRow[];
  readonly timeZone: string;
}

export function LoggerTable({ rows, timeZone }: Props) {
  const known = rows.flatMap(({ facts }) => (facts === null ? [] : [facts.last]));
  const newest = Math.max(...known);
  const at = (instant: number) => tied(figures.moment(isoWithOffset(instant, timeZone)));
  const columns: Column<LoggerRow>[] = [
    { head: 'Logger', cell: ({ name }) => name },
    { head: 'Where', cell: ({ logger }) => tied(placeWords(logger)) },
    { head: 'First reading', cell: ({ facts }) => (facts === null ? 'nothing read' : at(facts.first)) },
    { head: 'Last reading', cell: ({ facts }) => (facts === null ? '' : lastWords(facts.last)) },
    { head: 'Every', cell: ({ facts }) => (facts === null ? '' : tied(everyWords(facts.every))) },
    {
      head: 'Steps of',
      cell: ({ facts }) => (facts === null ? '' : tied(resolutionWords(facts.resolution, '°C'))),
    },
    { head: 'Gaps', cell: ({ facts }) => (facts === null ? '' : tied(gapsWords(facts.gaps))) },
    {
      head: 'Kept out',
      cell: ({ facts }) => (facts === null ? '' : tied(doubtedWords(facts.doubted, facts.readings))),
    },
    {
      head: 'Offset',
      cell: ({ logger, sideBySide }) =>
        tied([sideBySide, statedOffsetWords(logger)].filter((it) => it !== null).join(' ') || 'none known'),
    },
    {
      head: 'Clock',
      cell: ({ logger, zone }) =>
        tied(
          [zone ?? 'each row with its offset', clockShiftWords(logger)]
            .filter((it) => it !== null)
            .join('; '),
        ),
    },
  ];
  const lastWords = (last: number) => {
    const behind = behindWords(newest - last);
    return behind === null ? at(last) : `${at(last)}, ${tied(behind)}`;
  };
  return (
    <Table
      caption="Temperature as each logged it; times by the house’s clock"
      rows={rows}
      keyOf={({ logger }) => logger.file}
      columns={columns}
    />
  );
}
