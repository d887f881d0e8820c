/** Another element: from a common build-up in plain words, from its U-value alone, or empty. */
import { useState } from 'preact/hooks';
import { startingPoints } from '../../src/fabric/index.ts';
import { FormField } from '../parts/FormField.tsx';
import { addEmpty, addFrom, addWithUValue } from './elementEdits.ts';
import type { Edit } from './tried.ts';

export function AddElement({ onAdd }: { onAdd: (add: Edit) => void }) {
  const [chosen, setChosen] = useState(0);
  const point = startingPoints[chosen];
  return (
    <details class="screen-only">
      <summary>Add an element</summary>
      <div class="buildup-fields buildup-wide">
        <FormField label="A common build-up to begin from" hint={point.about}>
          {(ties) => (
            <select
              {...ties}
              value={chosen}
              onChange={({ currentTarget }) => setChosen(Number(currentTarget.value))}
            >
              {startingPoints.map(({ name }, i) => (
                <option key={name} value={i}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </FormField>
      </div>
      <p class="buildup-buttons">
        <button type="button" onClick={() => onAdd((house) => addFrom(house, point))}>
          Add it
        </button>
        <button type="button" onClick={() => onAdd(addWithUValue)}>
          Add one by its U-value alone
        </button>
        <button type="button" onClick={() => onAdd(addEmpty)}>
          Add one with a single board
        </button>
      </p>
      <p class="small lesser">It begins with 10 m² until you type its own area.</p>
    </details>
  );
}
