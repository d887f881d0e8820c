/** What the house is, as far as the readings need it: its name, where it stands, how large it is. */
import { useState } from 'preact/hooks';
import { FormField } from '../parts/FormField.tsx';
import type { Begun } from './begun.ts';
import type { HouseDraft } from './draft.ts';
import { type HouseField, problemsOfDraft } from './problems.ts';
import { placedAt, townAt, townName, towns } from './towns.ts';
import { ZoneNames, zoneList } from './ZoneNames.tsx';

interface HouseFieldsProps {
  readonly begun: Begun;
  readonly change: (draft: HouseDraft) => void;
}

export function HouseFields({ begun: { draft, placeGuessed }, change }: HouseFieldsProps) {
  const [left, setLeft] = useState<ReadonlySet<HouseField>>(new Set());
  const { house } = problemsOfDraft(draft);
  const ties = (field: HouseField) => ({
    value: draft[field],
    onInput: ({ currentTarget }: { currentTarget: HTMLInputElement }) =>
      change({ ...draft, [field]: currentTarget.value }),
    onBlur: () => setLeft(new Set([...left, field])),
  });
  const told = (field: HouseField) => {
    const problem = left.has(field) || (field !== 'name' && draft[field] !== '') ? house[field] : undefined;
    return problem === undefined || !left.has(field) ? {} : { problem };
  };
  const town = townAt(draft);
  return (
    <section class="house-fields">
      <h2>The house</h2>
      <FormField label="Its name" {...told('name')}>
        {(it) => <input {...it} {...ties('name')} type="text" autocomplete="off" />}
      </FormField>
      <FormField
        label="The nearest town"
        hint={
          placeGuessed && town !== undefined
            ? 'Guessed from this computer’s clock: please check. It gives sunset, sunrise and the time zone.'
            : 'It gives sunset, sunrise and the time zone.'
        }
      >
        {(it) => (
          <select
            {...it}
            value={town === undefined ? '' : townName(town)}
            onChange={({ currentTarget }) => {
              const picked = towns.find((candidate) => townName(candidate) === currentTarget.value);
              if (picked !== undefined) change(placedAt(draft, picked));
            }}
          >
            <option value="">
              {town === undefined && draft.latitude !== '' ? 'Another place' : 'Choose one'}
            </option>
            {towns.map((candidate) => (
              <option key={candidate.timeZone}>{townName(candidate)}</option>
            ))}
          </select>
        )}
      </FormField>
      <details open={town === undefined && draft.latitude === '' ? true : undefined}>
        <summary>The place more exactly</summary>
        <div class="fields">
          <FormField label="Latitude, degrees" hint="North is positive." {...told('latitude')}>
            {(it) => <input {...it} {...ties('latitude')} type="text" inputMode="decimal" />}
          </FormField>
          <FormField label="Longitude, degrees" hint="East is positive." {...told('longitude')}>
            {(it) => <input {...it} {...ties('longitude')} type="text" inputMode="decimal" />}
          </FormField>
          <FormField label="Time zone" {...told('timeZone')}>
            {(it) => <input {...it} {...ties('timeZone')} type="text" list={zoneList} autocomplete="off" />}
          </FormField>
        </div>
      </details>
      <div class="fields">
        <FormField
          label="Floor area, m² (optional)"
          hint="All heated floors, within the outer walls. It turns the cooling into watts."
          {...told('floorArea')}
        >
          {(it) => <input {...it} {...ties('floorArea')} type="text" inputMode="decimal" />}
        </FormField>
        <FormField
          label="Heated volume, m³ (optional)"
          hint="Floor area times the height of the rooms is near enough."
          {...told('volume')}
        >
          {(it) => <input {...it} {...ties('volume')} type="text" inputMode="decimal" />}
        </FormField>
      </div>
      <ZoneNames />
    </section>
  );
}
