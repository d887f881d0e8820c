/** What a change between stages comes to, what these nights could have shown, and a year's figures. */
import { mostNights } from '../gap/change/mostNights.ts';
import type { AnnualNote, ChangeNote, NightsToShow } from '../gap/index.ts';
import { count, days, decimal, heatLoss, kelvins, percent, temperature } from './figures.ts';
import { list, type SentencesFor } from './sentence.ts';

const year = ({ degreeDays, base }: { readonly degreeDays: number; readonly base: number }) =>
  `a standard year of the United Kingdom (${degreeDays} K·day below ${base} °C)`;

const speed = (metresPerSecond: number) => `${decimal(metresPerSecond, 1)} m/s`;

/** "5 nights on each side show a fall of 20 %; not even 60 show one of 5 % or 10 %" */
function planned(plan: readonly NightsToShow[]): string {
  const shown = plan.flatMap(({ change, nights }) =>
    nights === null ? [] : [`${count(nights, 'night')} on each side show a fall of ${percent(change)}`],
  );
  const hidden = plan.filter(({ nights }) => nights === null).map(({ change }) => percent(change));
  return [
    ...shown,
    ...(hidden.length > 0 ? [`not even ${mostNights} on each side show one of ${or.format(hidden)}`] : []),
  ].join('; ');
}
const or = new Intl.ListFormat('en-GB', { type: 'disjunction' });

export const aboutChange: SentencesFor<ChangeNote | AnnualNote> = {
  'smallest-change': ({ change, nights: [before, after] }) => ({
    text: `${before > 0 && after > 0 ? `With ${before} and ${after} nights, four` : 'Four'} tests in five would show a fall of ${percent(change)}; a smaller one can hide in the weather and the method.`,
  }),
  'nights-to-show': ({ plan }) => ({
    text: `As this house’s nights scatter, ${planned(plan)}.`,
  }),
  'only-one-stage': ({ plan }) => ({
    text:
      'There is one stage only, so nothing is compared yet.' +
      (plan.length === 0 ? '' : ` As its nights scatter, ${planned(plan)}.`),
    remedy: 'Name the span before or after the work under "stages" as well.',
  }),
  'side-without-nights': ({ names }) => ({
    text:
      names.length === 0
        ? 'Nothing compares the two stages.'
        : `${list(names)} ${names.length === 1 ? 'has' : 'have'} fewer than two nights that count, so there is no ratio.`,
    remedy: 'Log more nights, or move the bounds of the stages.',
  }),
  'shared-nights-left-out': ({ dates }) => ({
    text: `The stages overlap; ${dates.length === 1 ? 'the night' : 'the nights'} of ${days(dates)} ${dates.length === 1 ? 'lies' : 'lie'} in both and ${dates.length === 1 ? 'is' : 'are'} left out of the comparison.`,
    remedy: 'Move a bound.',
  }),
  'no-difference-for-mass': () => ({
    text: 'The stages differ in what the house is made of, and the design could not be fitted to both at once, so the ratio is not turned into watts.',
    remedy: 'Usual reasons: stages that overlap, an element without a U-value, a door open to a neighbour.',
  }),
  'no-difference-without-watts': () => ({
    text: 'Neither stage has a heat loss in watts, so the change stays a ratio.',
  }),
  'change-over-standard-year': (it) => ({
    text: `The kWh are heat over ${year(it)}; a mild coast has fewer degree days, a northern hill more, and what a boiler or heat pump loses itself comes on top.`,
  }),
  'no-degree-days': () => ({
    text: 'No degree days of this place are known, so the change is not told in kWh a year. Times the place’s degree days and 0.024, the difference in W/K is kWh.',
  }),
  'air-changes-if-leakage': () => ({
    text: 'The air changes are what it would be if all of the change were leakage; the nights alone do not tell leakage from insulation.',
  }),
  'air-changes-cut': () => ({
    text: 'The air changes are what it would be if all of the change were leakage. They are cut where the leakier stage could not hold more beside its fabric as drawn: beyond that it is not leakage alone, or the fabric is not as drawn.',
  }),
  'no-room-for-leakage': () => ({
    text: 'The fabric as drawn alone would lose more than was measured, so the drawing leaves leakage no room and the change is not told in air changes.',
  }),
  'not-leakage-alone': ({ names }) => ({
    text: `${list(names)} came or went between the stages, so the change is not told as leakage.`,
  }),
  'no-volume': () => ({
    text: 'Without the volume the change is not told in air changes.',
    remedy: 'Give "volumeM3".',
  }),
  'difference-apart': ({ before, after }) => ({
    text: `It was ${kelvins(before)} warmer inside than outside before and ${kelvins(after)} after: so unlike that the comparison leans on the model.`,
    remedy: 'Nights with weather alike on both sides would make it surer.',
  }),
  'wind-apart': ({ before, after }) => ({
    text: `The wind was ${speed(before)} before and ${speed(after)} after. Wind drives leakage, so part of the change may be the weather’s.`,
    remedy: 'Nights with wind alike on both sides would make it surer.',
  }),
  'annual-for-orientation': (it) => ({
    text: `For orientation only: usual occupants and ${year(it)}; the heat load at ${temperature(it.inside)} inside and ${temperature(it.outside)} outside, with nothing for heating up again and nothing off for sun and people.`,
  }),
  'annual-vents-added': ({ added, said }) => ({
    text: `The nights are ${said ? '' : 'taken to have been '}measured with vents shut and fans off; for the year ${heatLoss(added)} are added, what the house as drawn loses more in use.`,
  }),
  'annual-air-as-measured': ({ ventsShut }) => ({
    text: ventsShut
      ? 'The air counts as it was in the nights measured, vents perhaps shut: in use the house may need more.'
      : 'The air counts as it was in the nights measured, vents open.',
    ...(ventsShut ? { remedy: 'Give "asTestedAirChangesPerHour" beside the air changes in use.' } : {}),
  }),
  'annual-neighbour-as-warm': () => ({
    text: 'The heated neighbour is taken to be as warm as the house, since nobody says how warm it is.',
    remedy: 'Give "conditions.neighbour".',
  }),
  'annual-of-unfinished': () => ({
    text: 'The house was not finished in this stage: the year is that of the house as it stood.',
  }),
  'no-standard-year': () => ({
    text: 'No degree days of this place are known, so no heat is told for a year, and no heat load for a cold day.',
  }),
};
