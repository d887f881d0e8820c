/** The sentences of moisture in a build-up. */
import type { Between, MoistureFinding } from '../fabric/moisture/finding.ts';
import type { SentencesFor } from './sentence.ts';

const monthFormat = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });
/** 0 for January. */
const nameOf = (month: number) => monthFormat.format(Date.UTC(2001, month));
const monthList = new Intl.ListFormat('en-GB');
const grams = (mass: number) =>
  mass < 0.0005 ? 'less than 1 g/m²' : `${Math.round(mass * 1000).toLocaleString('en-GB')} g/m²`;
const place = ({ inner, outer }: Between) =>
  inner === outer ? `within “${inner}”` : `between “${inner}” and “${outer}”`;

export const aboutMoisture: SentencesFor<MoistureFinding> = {
  'vapour-resistance-missing': ({ name }) => ({
    text: `“${name}” does not say how it holds back vapour, so condensation was not worked out.`,
    remedy: 'Give its "vapourResistance" (mu) or "sdM".',
  }),
  'moisture-ground-not-covered': () => ({
    text: 'Condensation is not worked out for what lies on the ground: ISO 13788 does not reach there.',
  }),
  'moisture-airflow-not-covered': () => ({
    text: 'Air that leaks through joints carries far more vapour into a build-up than passes through its layers, and is not in this calculation: the inner layer must be airtight for it to hold.',
  }),
  'moisture-liquid-not-covered': () => ({
    text: 'Rain, rising damp, wet trades, and water that layers soak up and draw along are not in this calculation by ISO 13788.',
  }),
  'moisture-beside-bridge': ({ name }) => ({
    text: `Worked out through the insulation, beside “${name}”.`,
  }),
  'moisture-ends-at-ventilated': ({ name }) => ({
    text: `“${name}” is well ventilated: what lies outside of it was left out.`,
  }),
  'moisture-vent-taken-as-still': ({ name }) => ({
    text: `“${name}” was taken as still air: the little outdoor air that passes it, and may dry it, is not in this calculation.`,
  }),
  'surface-condensation': ({ months }) => ({
    text: `Water condenses on the inside surface itself in ${monthList.format(months.map(nameOf))}.`,
    remedy: 'More insulation, or less humidity inside.',
  }),
  'condensation-none': () => ({ text: 'No water condenses in this build-up in any month.' }),
  'condensation-dries': ({ mass, month, dryMonth, at }) => ({
    text: `Water condenses ${place(at)}: at most ${grams(mass)}, at the end of ${nameOf(month)}. It is dry again by the end of ${nameOf(dryMonth)}.`,
  }),
  'condensation-stays': ({ mass, at }) => ({
    text: `Water condenses ${place(at)} and does not dry: ${grams(mass)} is left after a year, and more each year.`,
    remedy: 'Put more vapour resistance inside, or less outside of the insulation.',
  }),
  'condensation-may-run': ({ mass, limit, at }) => ({
    text: `${grams(mass)} ${place(at)} is more than the ${grams(limit)} above which water may run off a surface that does not soak it up.`,
  }),
};
