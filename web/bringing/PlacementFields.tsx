/** Where a logger hung, or what else a file is. */
import { useState } from 'preact/hooks';
import { FormField } from '../parts/FormField.tsx';
import { atElement, type Guess, type Place, type Placement, places } from './draft.ts';
import type { PlacementField } from './problems.ts';

interface PlacementFieldsProps {
  readonly placement: Placement;
  readonly problems: Readonly<Partial<Record<PlacementField, string>>>;
  /** Whether this is one of several uses of the file. */
  readonly several: boolean;
  readonly change: (is: Partial<Placement>) => void;
  /** Files of other loggers that this one may be a later export of. */
  readonly others: readonly string[];
  readonly laterOf: (file: string) => void;
  /** That it may belong to, by name. */
  readonly elements: readonly string[];
}

export function PlacementFields({
  placement,
  problems,
  several,
  change,
  others,
  laterOf,
  elements,
}: PlacementFieldsProps) {
  const { file, place, room, volume, element, columns, guess } = placement;
  const [left, setLeft] = useState(false);
  const of = several ? (columns.temperature ?? file) : file;
  const says =
    several && columns.temperature !== undefined ? `Where “${columns.temperature}” was` : 'Where it was';
  const reason = guess === null ? undefined : guessWords[guess];
  const wrong = left && problems.volume !== undefined ? { problem: problems.volume } : {};
  return (
    <fieldset class="fields placing">
      <legend class="spoken">Place of {of}</legend>
      <FormField label={says} {...(reason === undefined ? {} : { hint: reason })}>
        {(ties) => (
          <select
            {...ties}
            value={place}
            onChange={({ currentTarget: { value } }) => {
              const picked = places.find((it) => it === value);
              if (picked === undefined) laterOf(value);
              else change({ place: picked, guess: null, ...(atElement(picked) ? {} : { element: '' }) });
            }}
          >
            {places.map((it) => (
              <option key={it} value={it}>
                {placeNames[it]}
              </option>
            ))}
            {others.length === 0 || several ? null : (
              <optgroup label="A later export of">
                {others.map((it) => (
                  <option key={it}>{it}</option>
                ))}
              </optgroup>
            )}
          </select>
        )}
      </FormField>
      {place === 'inside' ? (
        <>
          <FormField label="Room">
            {(ties) => (
              <input
                {...ties}
                type="text"
                autocomplete="off"
                value={room}
                onInput={({ currentTarget }) => change({ room: currentTarget.value })}
              />
            )}
          </FormField>
          <FormField label="Its volume, m³ (optional)" {...wrong}>
            {(ties) => (
              <input
                {...ties}
                type="text"
                inputMode="decimal"
                value={volume}
                onInput={({ currentTarget }) => change({ volume: currentTarget.value })}
                onBlur={() => setLeft(true)}
              />
            )}
          </FormField>
        </>
      ) : atElement(place) && elements.length > 0 ? (
        <FormField label={elementLabels[place]}>
          {(ties) => (
            <select
              {...ties}
              value={element}
              onChange={({ currentTarget }) => change({ element: currentTarget.value })}
            >
              <option value="">Not said</option>
              {elements.map((it) => (
                <option key={it}>{it}</option>
              ))}
            </select>
          )}
        </FormField>
      ) : null}
    </fieldset>
  );
}

export const placeNames: Readonly<Record<Place, string>> = {
  inside: 'Inside, in a room',
  outside: 'Outside',
  void: 'In a void: loft, roof space, under the floor',
  surface: 'On a surface',
  adjacent: 'Next door',
  weather: 'A weather station',
  power: 'A heat meter: power',
  energy: 'A heat meter: energy per interval',
  meter: 'A heat meter: running reading',
  'left out': 'Leave it out',
};

const elementLabels = {
  void: 'Behind which element',
  surface: 'On which element',
  adjacent: 'Beyond which element',
} as const;

const guessWords: Readonly<Record<Guess, string>> = {
  name: 'Guessed from its name: please check.',
  columns: 'Guessed from what it holds: please check.',
  values: 'Guessed from its values: please check.',
  nothing: 'A guess: please say where it hung.',
};
