/** Whether the weather was alike on both sides: what differs may pass for a change of the house. */
import type { Message } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { noted } from '../gap/noted.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Table } from '../parts/Table.tsx';
import type { Compared } from './Comparison.tsx';

/** The notes that belong here. */
export const weatherCodes = ['difference-apart', 'wind-apart'] as const;

type Weather = NonNullable<Compared['weather']>['before'];

const told = (value: number | null, write: (it: number) => string) =>
  value === null ? 'not known' : write(value);

const rows: readonly { readonly name: string; readonly cell: (it: Weather) => string }[] = [
  { name: 'Nights used', cell: ({ nights }) => String(nights) },
  { name: 'Outdoors', cell: ({ meanOutdoorC }) => told(meanOutdoorC, figures.temperature) },
  { name: 'Inside less outdoors', cell: ({ meanDifferenceK }) => told(meanDifferenceK, figures.kelvins) },
  { name: 'Wind', cell: ({ windMS }) => told(windMS, (it) => `${figures.decimal(it, 1)} m/s`) },
  {
    name: 'Sun of the day before',
    cell: ({ irradianceWM2 }) => told(irradianceWM2, (it) => `${figures.decimal(it, 0)} W/m²`),
  },
];

export function WeatherBeside({ comparison }: { readonly comparison: Compared }) {
  const { before, after, weather, notes } = comparison;
  if (weather === undefined) return null;
  const apart = noted(notes, ...weatherCodes);
  return (
    <>
      <h3>Matched for weather</h3>
      <p>{matchedSentence(apart)}</p>
      <Table
        caption={`“${before}” before and “${after}” after: means over the hours of the nights used`}
        rows={rows}
        keyOf={({ name }) => name}
        columns={[
          { head: 'Weather', cell: ({ name }) => name },
          { head: 'Before', cell: ({ cell }) => cell(weather.before), numeric: true },
          { head: 'After', cell: ({ cell }) => cell(weather.after), numeric: true },
        ]}
      />
      <ProblemList problems={apart} />
    </>
  );
}

const matchedSentence = (apart: readonly Message[]) =>
  apart.length === 0
    ? 'Both sides had weather alike enough to compare; what still differs stands here.'
    : 'The weather was not alike on both sides, and part of the change may be its doing.';
