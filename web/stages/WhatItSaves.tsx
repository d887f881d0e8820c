/** The change in watts, in air changes if it were leakage, and in a year's heat. */

import { tied } from '../../src/sheet/drawing/tied.ts';
import { changeOfYearSentence, figures } from '../../src/words/index.ts';
import { changeInWattsSentence, energyChangeBetween } from '../../src/words/whatChanged.ts';
import { noted } from '../gap/noted.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { Rule } from '../parts/Rule.tsx';
import { Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';
import type { Compared } from './Comparison.tsx';
import { savingMarks } from './stageMarks.ts';

/** The notes that belong here. */
export const savingCodes = [
  'no-difference-for-mass',
  'no-difference-without-watts',
  'change-over-standard-year',
  'no-degree-days',
  'air-changes-if-leakage',
  'air-changes-cut',
  'no-room-for-leakage',
  'not-leakage-alone',
  'no-volume',
] as const;

export function WhatItSaves({ comparison }: { readonly comparison: Compared }) {
  const { before, after, notes } = comparison;
  const rows = changeRows(comparison);
  if (rows.length === 0) return null;
  const marks = savingMarks(comparison);
  const sentences = [changeInWattsSentence(comparison), changeOfYearSentence(comparison)].filter(
    (it) => it !== null,
  );
  return (
    <>
      <h3>What it saves</h3>
      {sentences.length === 0 ? null : <p>{tied(sentences.join(' '))}</p>}
      <p class="small lesser">
        After less before, in <Term of="W/K" />, <Term of="air changes" /> and kWh by the{' '}
        <Term of="degree days" /> of the place: less than 0 is a saving.
      </p>
      <Rule title={`Heat loss, ${after} less ${before}`} unit="W/K" marks={marks} />
      <Table
        caption="The change, after less before; 95 % intervals, the best single figure in brackets"
        rows={rows}
        keyOf={({ name }) => name}
        columns={[
          { head: 'Told as', cell: ({ name }) => tied(name) },
          { head: 'Change', cell: ({ figure }) => figure, numeric: true },
        ]}
      />
      <ProblemList problems={noted(notes, ...savingCodes)} />
    </>
  );
}

function changeRows(it: Compared): readonly { readonly name: string; readonly figure: string }[] {
  const { heatLossRatio, timeConstantRatio, heatLossDifferenceWK: watts, airChangesPerHour: air } = it;
  const year = it.degreeDays
    ? `kWh in a year of ${it.degreeDays.kelvinDays} K·day below ${it.degreeDays.baseC} °C (${it.degreeDays.place})`
    : 'kWh in a year';
  const rows = [
    ['Heat loss, after over before', heatLossRatio && figures.ratioBetween(heatLossRatio)],
    ['Time constant, after over before', timeConstantRatio && figures.ratioBetween(timeConstantRatio)],
    ['Watts per degree', watts && figures.heatLossBetween(watts)],
    ['Air changes per hour, if all of it were leakage', air && figures.ratioBetween(air)],
    [year, it.energyKWhPerYear && energyChangeBetween(it.energyKWhPerYear)],
  ] as const;
  return rows.flatMap(([name, figure]) => (figure ? [{ name, figure }] : []));
}
