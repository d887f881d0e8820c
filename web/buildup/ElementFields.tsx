/** What is to be known of an element beside its layers. */
import type { ElementDesign } from '../../src/fabric/index.ts';
import { type DesignElement, massClasses } from '../../src/house.ts';
import { Choice } from './Choice.tsx';
import { changeElement, elementAt, putBeyond, renameElement } from './elementEdits.ts';
import { GroundFields } from './GroundFields.tsx';
import { hints } from './hints.ts';
import { labels } from './labels.ts';
import { NeighbourFields } from './NeighbourFields.tsx';
import { NumberField, TextField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

const beyond = {
  outside: 'Outdoors',
  ground: 'The ground',
  void: 'An unheated space',
  adjacent: 'A heated neighbour',
} as const;

const facings = {
  up: 'Up, as in a roof',
  across: 'Across, as in a wall',
  down: 'Down, as in a floor',
} as const;

const gapLevels = {
  0: 'None',
  1: 'Some reach through it',
  2: 'Air moves around it',
} as const;

/** ISO 52016-1, Table B.14, in plain words. */
const masses = {
  unknown: 'Nobody knows',
  'very light': 'Very light: a door, a thin panel',
  light: 'Light: 5 to 10 cm of light blocks inside',
  medium: 'Medium: 10 to 20 cm of light blocks, or thin brick',
  heavy: 'Heavy: 7 to 12 cm of brick or concrete inside',
  'very heavy': 'Very heavy: more than that',
} as const;

type FigureKey = {
  [K in keyof DesignElement]-?: K extends keyof typeof labels
    ? NonNullable<DesignElement[K]> extends number
      ? K
      : never
    : never;
}[keyof DesignElement];

export interface ElementFieldsProps {
  readonly editor: Editor;
  readonly element: number;
  readonly design: ElementDesign;
}

export function ElementFields({ editor, element, design }: ElementFieldsProps) {
  const entry = elementAt(editor.house, element);
  const { to = 'outside', buildUp, airGapLevel = 0 } = entry;

  const alter = (change: Partial<DesignElement>) =>
    editor.act((house) => changeElement(house, element, change));
  const figure = (key: FigureKey, hint = hints[key]) => (
    <NumberField
      label={labels[key]}
      hint={hint}
      value={entry[key]}
      onValue={(value) =>
        editor.type(`element ${element} ${key}`, (house) => changeElement(house, element, { [key]: value }))
      }
    />
  );
  return (
    <div class="buildup-fields screen-only">
      <h3>The element</h3>
      <TextField
        label="Name"
        hint="As you call it on site."
        value={entry.name}
        onValue={(name = '') =>
          editor.type(`element ${element} name`, (house) => renameElement(house, element, name))
        }
      />
      {figure('areaM2')}
      {figure('uValue', buildUp === undefined ? 'From the data sheet.' : 'Empty for that of its layers.')}
      <Choice
        label="Beyond it lies"
        hint="What its outer face touches."
        value={to}
        options={beyond}
        onValue={(value) => editor.act((house) => putBeyond(house, element, value))}
      />
      {to === 'ground' ? figure('perimeterM') : null}
      {to === 'ground' && buildUp !== undefined ? figure('wallThicknessMm') : null}
      {to === 'ground' && buildUp !== undefined && entry.perimeterM !== undefined ? (
        <GroundFields editor={editor} element={element} />
      ) : null}
      {to === 'void' || (to !== 'adjacent' && entry.temperatureFactor !== undefined)
        ? figure('temperatureFactor', to === 'void' ? hints.temperatureFactor : 'Empty for all of it.')
        : null}
      {to === 'adjacent' ? <NeighbourFields editor={editor} /> : null}
      {buildUp === undefined ? null : (
        <>
          <Choice
            label="Heat flows"
            hint="From the room outward."
            value={design.buildUp?.facing ?? 'across'}
            options={facings}
            onValue={(facing) => alter({ buildUp: { ...buildUp, facing } })}
          />
          <Choice
            label={labels.airGapLevel}
            hint="Where boards do not meet, or air gets behind them."
            value={`${airGapLevel}`}
            options={gapLevels}
            onValue={(level) => alter({ airGapLevel: Number(level) as 0 | 1 | 2 })}
          />
        </>
      )}
      {buildUp !== undefined || entry.gValue !== undefined ? null : (
        <Choice
          label={labels.massClass}
          hint="What it stores, where no layers tell."
          value={entry.massClass ?? 'unknown'}
          options={masses}
          onValue={(mass) => alter({ massClass: massClasses.find((it) => it === mass) })}
        />
      )}
      {figure('orientationDeg')}
      {figure('tiltDeg')}
      {buildUp === undefined || entry.gValue !== undefined ? figure('gValue') : null}
    </div>
  );
}
