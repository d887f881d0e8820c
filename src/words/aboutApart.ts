/** Whether what goes with the air could be told from what goes through the shell. */
import type { StageResult } from '../assessment.ts';
import type { ApartNote } from '../heatloss/network/leakageApart.ts';
import { count, decimal, heatLossBetween, percent } from './figures.ts';
import type { SentencesFor } from './sentence.ts';

export const aboutApart: SentencesFor<ApartNote> = {
  'apart-no-wind': () => ({
    text: 'Leakage and fabric cannot be told apart here: no wind was logged. Draughts then look like any other loss.',
    remedy: 'Add a weather file with wind speed; that of a station nearby will do.',
  }),
  'apart-too-few-nights': ({ have, needed }) => ({
    text: `Leakage and fabric cannot be told apart from ${count(have, 'night or day', 'nights or days')}: it takes at least ${needed}, windy and calm ones.`,
  }),
  'apart-wind-steady': ({ variation }) => ({
    text: `Leakage and fabric cannot be told apart here: the wind hardly varied from night to night (by ${percent(variation)} about its mean).`,
    remedy: 'Log on until there were calm nights and windy ones.',
  }),
  'apart-too-wide': ({ factor }) => ({
    text: `Leakage and fabric cannot be told apart here: the nights follow the wind too little, or too unevenly. The leakage would be known to a factor of ${decimal(factor, 1)} either way, hardly better than beforehand.`,
    remedy: 'A pressure test tells the leakage; metered days with wind and sun logged narrow it.',
  }),
};

/** "By how the nights followed the wind, 15 to 60 W/K of it went with the air and 50 to 100 W/K through walls …" */
export function apartSentence({ apart }: StageResult): string | null {
  if (apart === undefined || apart === null) return null;
  const { leakageWK: air, fabricWK: shell } = apart;
  const between = (it: typeof air) => heatLossBetween(it).replace(/ \(.*/, '');
  return `Of all that it loses, by how the nights followed the wind, ${between(air)} go with the air and ${between(shell)} through walls, roof, floor and windows. That is in everyday weather, not under a pressure test.`;
}
