/** The stages in exact figures, beside their handles on the chart: moved, kept, or put back. */
import { moveStages } from '../api.ts';
import type { ByHand } from '../nights/useByHand.ts';
import { DateField } from '../parts/DateField.tsx';
import { inBrief } from './readingsWords.ts';
import type { StageMoves } from './useStageMoves.ts';
import './readings.css';

export interface MoveStagesProps {
  readonly byHand: ByHand;
  readonly moves: StageMoves;
  readonly leave: () => void;
  readonly done: () => void;
}

export function MoveStages({ byHand, moves, leave, done }: MoveStagesProps) {
  const { house, busy, change } = byHand;
  const { id } = house;
  const keep = async (event: Event) => {
    event.preventDefault();
    const after = moves.moved;
    const before = (house.house.stages ?? []).flatMap(({ name, from, to }) =>
      after.some((it) => it.name === name) ? [{ name, from, to }] : [],
    );
    leave();
    const kept = await change({
      words: `${inBrief(after.map(({ name }) => name))} moved`,
      make: () => moveStages(id, after),
      takeBack: () => moveStages(id, before),
    });
    if (kept) done();
  };
  return (
    <form class="readings-form" onSubmit={keep} noValidate>
      <p class="small lesser">
        Drag the handles over the first chart, or move one by the arrow keys: an hour at a time, with Shift a
        day. Or write the times here.
      </p>
      {moves.local.map(({ name, from, to }) => (
        <fieldset key={name}>
          <legend>{name}</legend>
          {(['from', 'to'] as const).map((end) => (
            <DateField
              key={end}
              label={end === 'from' ? 'Begins' : 'Ends'}
              type="datetime-local"
              value={asDateTime(end === 'from' ? from : to)}
              problem={end === 'to' ? moves.problems.get(name) : undefined}
              onWrite={(local) => moves.write(name, end, local)}
            />
          ))}
        </fieldset>
      ))}
      <p class="readings-buttons">
        <button
          type="submit"
          class="main"
          disabled={busy || moves.moved.length === 0 || moves.problems.size > 0}
        >
          Keep these stages
        </button>
        <button type="button" class="quiet" disabled={moves.moved.length === 0} onClick={moves.reset}>
          As they were
        </button>
      </p>
    </form>
  );
}

/** house.json may have a date alone, or seconds. */
const asDateTime = (local: string) => (local.length === 10 ? `${local}T00:00` : local.slice(0, 16));
