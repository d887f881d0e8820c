/** How a file's clock and numbers are read, each to be said otherwise. */
import { useState } from 'preact/hooks';
import { FormField } from '../parts/FormField.tsx';
import type { Placement, Read } from './draft.ts';
import type { PlacementField } from './problems.ts';
import { zoneList } from './ZoneNames.tsx';

interface ReadFieldsProps {
  readonly placement: Placement;
  readonly problems: Readonly<Partial<Record<PlacementField, string>>>;
  /** Whether the file's times are a spreadsheet's days. */
  readonly serial: boolean;
  readonly read: (read: Read) => void;
  readonly change: (is: Partial<Pick<Placement, 'timeZone' | 'clockOffset'>>) => void;
}

export function ReadFields({ placement, problems, serial, read, change }: ReadFieldsProps) {
  const { timeZone, clockOffset } = placement;
  const [left, setLeft] = useState<ReadonlySet<PlacementField>>(new Set());
  const told = (field: PlacementField) => {
    const problem = left.has(field) ? problems[field] : undefined;
    return problem === undefined ? {} : { problem };
  };
  return (
    <div class="fields">
      <Answer
        label="Day and month"
        choices={dateOrders}
        value={placement.read.dateOrder}
        say={(dateOrder) => read({ dateOrder })}
      />
      <Answer
        label="Decimal mark"
        choices={decimals}
        value={placement.read.decimal}
        say={(decimal) => read({ decimal })}
      />
      <Answer
        label="Temperatures in"
        choices={units}
        value={placement.read.unit}
        say={(unit) => read({ unit })}
      />
      {serial ? (
        <Answer
          label="Days counted from"
          choices={years}
          value={placement.read.serialFrom}
          say={(serialFrom) => read({ serialFrom })}
        />
      ) : null}
      <FormField label="Zone of its clock" hint="Empty: as found." {...told('timeZone')}>
        {(ties) => (
          <input
            {...ties}
            type="text"
            autocomplete="off"
            list={zoneList}
            value={timeZone}
            onInput={({ currentTarget }) => change({ timeZone: currentTarget.value })}
            onBlur={() => setLeft(new Set([...left, 'timeZone']))}
          />
        )}
      </FormField>
      <FormField
        label="Minutes to add to its clock"
        hint="60 when it runs an hour slow."
        {...told('clockOffset')}
      >
        {(ties) => (
          <input
            {...ties}
            type="text"
            inputMode="numeric"
            value={clockOffset}
            onInput={({ currentTarget }) => change({ clockOffset: currentTarget.value })}
            onBlur={() => setLeft(new Set([...left, 'clockOffset']))}
          />
        )}
      </FormField>
    </div>
  );
}

const dateOrders = [
  ['day-first', 'Day first'],
  ['month-first', 'Month first'],
  ['year-first', 'Year first'],
] as const;
const decimals = [
  ['.', 'A point'],
  [',', 'A comma'],
] as const;
const units = [
  ['C', '°C'],
  ['F', '°F'],
  ['K', 'Kelvin'],
] as const;
const years = [
  [1900, '1900'],
  [1904, '1904'],
] as const;

interface AnswerProps<T extends string | number> {
  readonly label: string;
  readonly choices: readonly (readonly [T, string])[];
  readonly value: T | undefined;
  readonly say: (value: T | undefined) => void;
}

function Answer<T extends string | number>({ label, choices, value, say }: AnswerProps<T>) {
  return (
    <FormField label={label}>
      {(ties) => (
        <select
          {...ties}
          value={value ?? ''}
          onChange={({ currentTarget }) =>
            say(choices.find(([it]) => String(it) === currentTarget.value)?.[0])
          }
        >
          <option value="">As found</option>
          {choices.map(([it, words]) => (
            <option key={it} value={it}>
              {words}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
