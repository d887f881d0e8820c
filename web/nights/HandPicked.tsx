/** All nights that were decided by hand, each with its reason and the way back. */
import { figures } from '../../src/words/index.ts';
import { Table } from '../parts/Table.tsx';
import { changeTo } from './DecideNight.tsx';
import type { Decision } from './nightWords.ts';
import type { ByHand } from './useByHand.ts';

export interface HandPickedProps {
  readonly byHand: ByHand;
  readonly href: (date: string) => string;
  /** Called before a change: the row that was pressed goes away, so the focus has to go elsewhere. */
  readonly leave: () => void;
}

export function HandPicked({ byHand, href, leave }: HandPickedProps) {
  const { house, change, busy } = byHand;
  const decisions = house.house.nights ?? [];
  if (decisions.length === 0) return null;
  return (
    <section>
      <h2>Nights decided by hand</h2>
      <p>The rules judge every other night. Whoever reads the result is told of these.</p>
      <Table<Decision>
        caption="Nights put in or left out by hand"
        rows={decisions}
        keyOf={({ date }) => date}
        columns={[
          {
            head: 'Night of',
            cell: ({ date }) => (
              <a class="night-day" href={href(date)}>
                {figures.dayOfYear(date)}
              </a>
            ),
          },
          { head: 'Decided', cell: ({ used }) => (used ? 'put in' : 'left out') },
          { head: 'Why', cell: ({ why }) => <span class="hand-why">{why ?? 'no reason given'}</span> },
          {
            head: 'Take back',
            cell: (decision) => (
              <button
                type="button"
                class="quiet small hand-back"
                disabled={busy}
                onClick={() => {
                  leave();
                  change(changeTo(house.id, decision.date, decision, null));
                }}
              >
                Leave it to the rules<span class="spoken"> again, {figures.day(decision.date)}</span>
              </button>
            ),
          },
        ]}
      />
    </section>
  );
}
