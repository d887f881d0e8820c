/** What plug meters read by eye: those there are, taken out one by one, another one, and the way back. */
import { useState } from 'preact/hooks';
import type { HouseDetail } from '../../server/api/shapes.ts';
import type { Message } from '../../src/assessment.ts';
import type { HeatEntry } from '../../src/house.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { localMoment } from '../../src/words/loggerFacts.ts';
import { heatKnown, meterWords } from '../../src/words/testPlan.ts';
import { addHeat, problemsOf, removeHeat, undoImport } from '../api.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Table } from '../parts/Table.tsx';
import { HeatForm } from './HeatForm.tsx';

interface Props {
  readonly house: HouseDetail;
  /** Loads the house anew. */
  readonly again: () => void;
}

export function MeterReadings({ house: { id, house, assessment, state }, again }: Props) {
  const [busy, setBusy] = useState(false);
  const [told, setTold] = useState<{ words: string; canUndo: boolean } | null>(null);
  const [problems, setProblems] = useState<readonly Message[]>([]);
  const change = async (asked: () => Promise<unknown>, words: string, canUndo: boolean) => {
    setBusy(true);
    try {
      await asked();
      setTold({ words, canUndo });
      setProblems([]);
      again();
      return true;
    } catch (thrown) {
      setProblems(problemsOf(thrown));
      return false;
    } finally {
      setBusy(false);
    }
  };
  const heat = house.heat ?? [];
  const stated = heat.filter(({ file }) => file === undefined);
  const files = heat.flatMap(({ file }) => file ?? []);
  const tier = assessment?.stages.at(-1)?.tier;
  return (
    <section class="meter-readings">
      <h2>What a plug meter read</h2>
      {tier === undefined || state.kind !== 'assessed' ? null : <p class="heat-known">{heatKnown[tier]}</p>}
      <p class="screen-only">{meterWords.intro}</p>
      {files.length === 0 ? null : <p class="screen-only">{meterWords.logged(files)}</p>}
      {stated.length === 0 ? null : (
        <Stated
          entries={stated}
          busy={busy}
          onTakeOut={(entry) => change(() => removeHeat(id, entry), meterWords.takenOut, true)}
        />
      )}
      <div class="screen-only">
        <ProblemList problems={problems} urgent />
        <p role="status">
          {told?.words}{' '}
          {told?.canUndo === true ? (
            <button
              type="button"
              class="quiet"
              disabled={busy}
              onClick={() => change(() => undoImport(id), meterWords.undone, false)}
            >
              Undo
            </button>
          ) : null}
        </p>
        <HeatForm busy={busy} onAdd={(entry) => change(() => addHeat(id, entry), meterWords.added, true)} />
      </div>
    </section>
  );
}

interface StatedProps {
  readonly entries: readonly HeatEntry[];
  readonly busy: boolean;
  readonly onTakeOut: (entry: HeatEntry) => void;
}

const Stated = ({ entries, busy, onTakeOut }: StatedProps) => (
  <Table
    caption="Heat read by eye; times by the house’s clock"
    rows={entries}
    keyOf={(entry) => JSON.stringify(entry)}
    columns={[
      { head: meterWords.from, cell: ({ from = '' }) => tied(localMoment(from)) },
      { head: meterWords.to, cell: ({ to = '' }) => tied(localMoment(to)) },
      { head: 'Heat', cell: (entry) => tied(amountWords(entry)), numeric: true },
      {
        head: 'Give or take',
        cell: ({ plusMinusPercent }) =>
          plusMinusPercent === undefined ? 'about 4 %' : `${plusMinusPercent} %`,
        numeric: true,
      },
      {
        head: <span class="spoken">Take out</span>,
        cell: (entry) => (
          <button
            type="button"
            class="quiet"
            disabled={busy}
            onClick={() => onTakeOut(entry)}
            aria-label={`Take out the reading from ${localMoment(entry.from ?? '')}`}
          >
            Take out
          </button>
        ),
      },
    ]}
  />
);

const amountWords = ({ energyKWh, powerW }: HeatEntry) =>
  energyKWh === undefined ? figures.power(powerW ?? 0) : figures.energy(energyKWh * 3.6e6);
