/** What is to be known of an element beside its layers. */
import type { DesignElement } from '../../src/house.ts';
import { Choice } from './Choice.tsx';
import { changeElement, elementAt, renameElement } from './elementEdits.ts';
import { labels } from './labels.ts';
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

type FigureKey = {
  [K in keyof DesignElement]-?: K extends keyof typeof labels
    ? NonNullable<DesignElement[K]> extends number
      ? K
      : never
    : never;
}[keyof DesignElement];

export function ElementFields({ editor, element }: { editor: Editor; element: number }) {
  const entry = elementAt(editor.house, element);
  const { to = 'outside', buildUp, airGapLevel = 0 } = entry;
  const alter = (change: Partial<DesignElement>) =>
    editor.act((house) => changeElement(house, element, change));
  const figure = (key: FigureKey, hint?: string) => (
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
        value={entry.name}
        onValue={(name = '') =>
          editor.type(`element ${element} name`, (house) => renameElement(house, element, name))
        }
      />
      {figure('areaM2')}
      {figure('uValue', buildUp === undefined ? undefined : 'Empty for that of its layers.')}
      <Choice
        label="Beyond it lies"
        value={to}
        options={beyond}
        onValue={(value) => alter(clearedFor(value, entry))}
      />
      {to === 'ground' ? figure('perimeterM', 'Along outside walls.') : null}
      {to === 'ground' ? figure('wallThicknessMm', '300 when left out.') : null}
      {to === 'void' ? figure('temperatureFactor', '0.9 when left out: nearly as cold as outdoors.') : null}
      {buildUp === undefined ? null : (
        <>
          <Choice
            label="Heat flows"
            value={buildUp.facing ?? 'across'}
            options={facings}
            onValue={(facing) => alter({ buildUp: { ...buildUp, facing } })}
          />
          <Choice
            label={labels.airGapLevel}
            hint="A correction by ISO 6946."
            value={`${airGapLevel}`}
            options={gapLevels}
            onValue={(level) => alter({ airGapLevel: Number(level) as 0 | 1 | 2 })}
          />
        </>
      )}
      {figure('orientationDeg', '0 north, 90 east, 180 south, 270 west.')}
      {figure('tiltDeg', '90 upright, 0 lying flat.')}
      {buildUp === undefined || entry.gValue !== undefined
        ? figure('gValue', 'Of a window; empty for all else.')
        : null}
    </div>
  );
}

/** What lies beyond, without what only the ground had. */
function clearedFor(to: keyof typeof beyond, entry: DesignElement): Partial<DesignElement> {
  if (to === 'ground') return { to, perimeterM: entry.perimeterM ?? Math.ceil(4 * Math.sqrt(entry.areaM2)) };
  return { to, edgeInsulation: undefined, underfloor: undefined, perimeterM: undefined };
}
