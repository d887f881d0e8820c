/** The limiting U-values that elements are set beside: an example, or a table of one's own. Never a verdict. */
import { limitTableOf } from '../../src/fabric/index.ts';
import { limitKinds } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';
import { Table } from '../parts/Table.tsx';
import { Choice } from './Choice.tsx';
import { hints } from './hints.ts';
import { labels } from './labels.ts';
import { changeLimit, changeLimits, exampleAgain, type Limits, ownLimits } from './limitEdits.ts';
import { sourceOf } from './sourceWords.ts';
import { NumberField, TextField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

const ways = { example: 'The example that comes along', own: 'Our own table' } as const;

export function LimitsOfHouse({ editor }: { editor: Editor }) {
  const { limits } = editor.house;
  const table = limitTableOf(editor.house);
  return (
    <section>
      <h2>Limits to set beside it</h2>
      <p>
        {table.name}, {figures.dayOfYear(table.dated)}. {table.note} What applies to this house is for the
        local code to say, not for this page.
      </p>
      <div class="buildup-fields screen-only">
        <Choice
          label="Limits from"
          hint={
            limits === undefined
              ? 'Your own begins as a copy of the example.'
              : 'The example again drops your own; undo brings it back.'
          }
          value={limits === undefined ? 'example' : 'own'}
          options={ways}
          onValue={(way) => editor.act(way === 'own' ? ownLimits : exampleAgain)}
        />
        {limits === undefined ? null : <OwnLimits editor={editor} limits={limits} />}
      </div>
      {limits === undefined ? (
        <Table
          caption="The example"
          keyOf={({ kind }) => kind}
          columns={[
            { head: 'Of a', cell: ({ kind }) => kind },
            {
              head: 'Limit',
              cell: ({ transmittance }) => figures.transmittance(transmittance),
              numeric: true,
            },
            {
              head: 'From',
              cell: ({ mark, source }) => (mark === 'GIVEN' ? source : sourceOf({ mark, source })),
            },
          ]}
          rows={table.limits}
        />
      ) : null}
    </section>
  );
}

function OwnLimits({ editor, limits }: { editor: Editor; limits: Limits }) {
  const text = (key: 'name' | 'dated' | 'note', label: string, hint: string | undefined) => (
    <TextField
      label={label}
      hint={hint}
      value={limits[key]}
      onValue={(value) =>
        editor.type(`limits ${key}`, (house) =>
          changeLimits(house, { [key]: key === 'note' && value === '' ? undefined : value }),
        )
      }
    />
  );
  return (
    <>
      {text('name', 'Name of the table', 'As it is to stand beside its figures.')}
      {text('dated', labels.dated, hints.dated)}
      {text('note', 'Note', 'Where it is from, and what it holds for.')}
      <h3>Limits, W/(m²K)</h3>
      {limitKinds.map((kind) => (
        <NumberField
          key={kind}
          label={`Of a ${kind}`}
          value={limits.uValues[kind]}
          onValue={(value) => editor.type(`limit ${kind}`, (house) => changeLimit(house, kind, value))}
        />
      ))}
      <p class="small lesser">Empty for a kind without a limit.</p>
    </>
  );
}
