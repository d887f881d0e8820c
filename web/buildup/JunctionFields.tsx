/** One line where two parts meet: what it is, how long, and what it loses. */
import { junctionDefaults } from '../../src/fabric/index.ts';
import { junctionKinds } from '../../src/house.ts';
import { changeJunction, type Junction, nameJunction, removeJunction } from './bridgeEdits.ts';
import { Choice } from './Choice.tsx';
import { junctionNames } from './junctionNames.ts';
import { labels } from './labels.ts';
import { NumberField, TextField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

const kinds = { ...junctionNames, own: 'Another, with its own figure' };

export interface JunctionFieldsProps {
  readonly editor: Editor;
  readonly at: number;
  readonly junction: Junction;
  /** In words; empty while it is unknown. */
  readonly loss: string;
}

export function JunctionFields({ editor, at, junction, loss }: JunctionFieldsProps) {
  const { kind, name, lengthM, psiWmK } = junction;
  const called = name ?? (kind === undefined ? 'Another line' : junctionNames[kind]);
  const type = (key: keyof Junction) => (value: number | string | undefined) =>
    editor.type(`junction ${at} ${key}`, (house) => changeJunction(house, at, { [key]: value }));
  return (
    <fieldset>
      <legend>
        {called} <strong class="figure">{loss}</strong>
      </legend>
      <div class="buildup-fields screen-only">
        <Choice
          label="What meets"
          hint="Where the line runs."
          value={kind ?? 'own'}
          options={kinds}
          onValue={(wanted) =>
            editor.act((house) => nameJunction(house, at, junctionKinds.find((it) => it === wanted) ?? null))
          }
        />
        {kind === undefined || name !== undefined ? (
          <TextField
            label="Its name"
            hint="As you call it on site."
            value={name}
            onValue={(text) => type('name')(text === '' ? undefined : text)}
          />
        ) : null}
        <NumberField
          label={labels.lengthM}
          hint="All such lines together."
          value={lengthM}
          onValue={type('lengthM')}
        />
        <NumberField
          signed
          label={labels.psiWmK}
          hint={
            kind === undefined
              ? 'From a calculation or a catalogue of details.'
              : `Empty for the default, ${junctionDefaults[kind].usual}; with care about ${junctionDefaults[kind].careful}.`
          }
          value={psiWmK}
          onValue={type('psiWmK')}
        />
        <button
          type="button"
          class="quiet"
          onClick={() => editor.act((house) => removeJunction(house, at))}
          aria-label={`Remove “${called}”`}
        >
          Remove
        </button>
      </div>
    </fieldset>
  );
}
