/** The curve of a night as a table, every half hour. */
import type { Foretold, NightCurve } from '../../src/curves.ts';
import { clock } from '../../src/sheet/drawing/clock.ts';
import { figures } from '../../src/words/index.ts';
import { Table } from '../parts/Table.tsx';

const EVERY = 1800; // [s]

export function NightTable({ curve, timeZone }: { curve: NightCurve; timeZone: string }) {
  const { time, inside, outside, fitted, foretold } = curve;
  const rows = time.flatMap((instant, i) => (instant % EVERY === 0 ? [i] : []));
  const cell = (column: readonly (number | null)[]) => (i: number) => {
    const value = column[i];
    return value === null ? '' : figures.temperature(value);
  };
  return (
    <Table
      caption={`The night of ${figures.day(curve.date)}, every half hour`}
      rows={rows}
      keyOf={(i) => time[i]}
      columns={[
        { head: 'Time', cell: (i) => clock(time[i], timeZone) },
        { head: 'Inside', cell: cell(inside), numeric: true },
        { head: 'Fitted', cell: cell(fitted), numeric: true },
        ...(foretold === undefined
          ? []
          : [{ head: 'As drawn, 95 %', cell: (i: number) => range(foretold, i), numeric: true }]),
        { head: 'Outside', cell: cell(outside), numeric: true },
      ]}
    />
  );
}

/** "16.9 to 18.2 °C" */
function range({ low, high }: Foretold, i: number): string {
  const [from, to] = [low[i], high[i]];
  return from === null || to === null ? '' : `${figures.decimal(from, 1)} to ${figures.temperature(to)}`;
}
