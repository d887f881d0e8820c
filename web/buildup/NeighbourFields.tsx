/** How warm it is beyond the walls to heated neighbours: one figure of the house, for where no logger hangs. */
import { changeNeighbour, type NeighbourEntry } from './elementEdits.ts';
import { hints } from './hints.ts';
import { labels } from './labels.ts';
import { NumberField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

export function NeighbourFields({ editor }: { editor: Editor }) {
  const neighbour = editor.house.conditions?.neighbour;
  const figure = (key: keyof NeighbourEntry) => (
    <NumberField
      signed={key === 'temperatureC'}
      label={labels[key]}
      hint={hints[key]}
      value={neighbour?.[key]}
      onValue={(value) =>
        editor.type(`neighbour ${key}`, (house) => changeNeighbour(house, { [key]: value }))
      }
    />
  );
  return (
    <>
      {figure('temperatureC')}
      {neighbour === undefined ? null : figure('plusMinusK')}
    </>
  );
}
