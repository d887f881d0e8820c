/** All nights of a stage as a table; more than fit on two screens are folded by month. */
import { useState } from 'preact/hooks';
import type { NightResult, StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { usePrinting } from '../charts/paper.ts';
import { Table } from '../parts/Table.tsx';
import { type Month, monthSentence, monthsOf } from './months.ts';
import { fateOf, timeConstantOf, windSpeed } from './nightWords.ts';
import './NightsByMonth.css';

/** Up to here the table stands whole. */
const ONE_TABLE = 24;

export interface NightsByMonthProps {
  readonly stage: StageResult;
  readonly href: (date: string) => string;
  /** The mean wind of a night by its date [m/s]; null where none was logged at all. */
  readonly wind: ReadonlyMap<string, number | null> | null;
  /** The night whose month is unfolded from the beginning. */
  readonly open: string | undefined;
}

export function NightsByMonth({ stage, href, wind, open }: NightsByMonthProps) {
  const months = monthsOf(stage.nights);
  const [unfolded, setUnfolded] = useState<ReadonlySet<string>>(
    () => new Set(months.filter(({ key }) => key === open?.slice(0, 7)).map(({ key }) => key)),
  );
  const printing = usePrinting();
  if (months.length === 0) return null;
  const tableOf = (nights: readonly NightResult[], of: string) => (
    <NightsTable nights={nights} of={of} href={href} wind={wind} />
  );
  const folded = stage.nights.length > ONE_TABLE && months.length > 1;
  const all = months.every(({ key }) => unfolded.has(key));
  return (
    <>
      <h3>{stage.name}</h3>
      {folded ? (
        <>
          <button
            type="button"
            class="quiet small"
            onClick={() => setUnfolded(new Set(all ? [] : months.map(({ key }) => key)))}
          >
            {all ? 'Fold all months' : 'Unfold all months'}
          </button>
          {months.map((month) => (
            <Folded
              key={month.key}
              month={month}
              open={printing || unfolded.has(month.key)}
              setOpen={(it) => setUnfolded(toggled(unfolded, month.key, it))}
            >
              {(own) => tableOf(own.nights, `“${stage.name}” in ${own.title}`)}
            </Folded>
          ))}
        </>
      ) : (
        tableOf(stage.nights, `“${stage.name}”`)
      )}
    </>
  );
}

function toggled(set: ReadonlySet<string>, key: string, there: boolean): ReadonlySet<string> {
  const next = new Set(set);
  if (there) next.add(key);
  else next.delete(key);
  return next;
}

interface FoldedProps {
  readonly month: Month;
  readonly open: boolean;
  readonly setOpen: (open: boolean) => void;
  readonly children: (month: Month) => preact.ComponentChild;
}

/** Its table is made when it is unfolded: a year's rows are not for nothing. */
const Folded = ({ month, open, setOpen, children }: FoldedProps) => (
  <details
    class="night-month"
    open={open}
    onToggle={({ currentTarget }) => currentTarget.open !== open && setOpen(currentTarget.open)}
  >
    <summary>{monthSentence(month)}</summary>
    {open ? children(month) : null}
  </details>
);

interface NightsTableProps {
  readonly nights: readonly NightResult[];
  readonly of: string;
  readonly href: (date: string) => string;
  readonly wind: ReadonlyMap<string, number | null> | null;
}

function NightsTable({ nights, of, href, wind }: NightsTableProps) {
  const known = <T,>(value: T | null | undefined, write: (it: T) => string) =>
    value === null || value === undefined ? '' : write(value);
  return (
    <Table<NightResult>
      caption={`The nights of ${of}; the time constants are of single nights, with their standard errors`}
      rows={nights}
      keyOf={({ date }) => date}
      columns={[
        {
          head: 'Night of',
          cell: ({ date }) => (
            <a class="night-day" href={href(date)}>
              {figures.day(date)}
            </a>
          ),
        },
        { head: 'Drop', cell: ({ dropK }) => known(dropK, figures.kelvins), numeric: true },
        { head: 'Rate', cell: ({ rateKPerH }) => known(rateKPerH, figures.rate), numeric: true },
        {
          head: 'Mean difference',
          cell: ({ meanDifferenceK }) => known(meanDifferenceK, figures.kelvins),
          numeric: true,
        },
        ...(wind === null
          ? []
          : [
              {
                head: 'Wind',
                cell: ({ date }: NightResult) => known(wind.get(date), windSpeed),
                numeric: true,
              },
            ]),
        { head: 'Time constant', cell: timeConstantOf, numeric: true },
        { head: 'Used', cell: (night) => <span class="night-fate">{fateOf(night)}</span> },
      ]}
    />
  );
}
