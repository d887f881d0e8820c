/** Where to look first: what was seen at each place, and what to look at there on site. */
import type { Estimate, StageResult } from '../assessment.ts';
import type { LookNote, LooksNote } from '../gap/index.ts';
import { standsOut } from '../gap/whereToLook/look.ts';
import { count, decimal, kelvins, percent, ratio, ratioBetween } from './figures.ts';
import type { SentencesFor } from './sentence.ts';

const inRoom =
  'On site, on a cold windy day: draughts by hand at sockets, window reveals, the floor edge, pipes and cables; boards not tight to the timber. Have an electrician open sockets, with the circuit off.';
const overhead =
  'Mind the ladder, and tread on joists only; leave cables, flues and downlights as they are. Never close the ventilation of a roof (eaves, ridge, tiles): local building rules say how much must stay open.';
const underVoid = `On site, from inside: joints at plates and ridge, the hatch and its seal, pipes and cables through the lining, boards not tight to the timber. ${overhead}`;

const wind = (metresPerSecond: number) => `${decimal(metresPerSecond, 1)} m/s`;
const index = (it: Estimate) => ratioBetween(it);
const density = (kilograms: number) => `${decimal(kilograms * 1000, 1)} g/m³`;
/** "(by chance: 0.4 %)"; below a tenth of a percent the figure means little. */
const byChance = (chance: number) =>
  chance < 0.001
    ? 'Chance alone shows so much less than once in a thousand records'
    : `Chance alone shows so much in ${chance < 0.0995 ? `${decimal(chance * 100, 1)} %` : percent(chance)} of records`;
const amongAll = ', counting everything that was looked at.';
const asDrawn = (expected: Estimate | null) =>
  expected === null
    ? ''
    : ` By its own elements ${ratio(expected.low)} to ${ratio(expected.high)} would be as drawn.`;

export const aboutWhereToLook: SentencesFor<LookNote | LooksNote> = {
  'look-room-faster': ({ room, ratio: it, expected, chance }) => ({
    text: `“${room}” cools faster than its share: its time constant is ${ratioBetween(it)} times the house’s.${expected === null ? ' Rooms of a sound house differ, but seldom so much.' : asDrawn(expected)} ${byChance(chance)}${amongAll}`,
    remedy: inRoom,
  }),
  'look-room-ordinary': ({ room, ratio: it, expected }) => ({
    text: `“${room}” cools fastest, with ${ratioBetween(it)} times the house’s time constant, but no faster than ${expected === null ? 'rooms of a sound house differ by their outer faces, windows and mass' : 'its own elements allow'}.${asDrawn(expected)} That is no fault found.`,
  }),
  'look-room-in-wind': ({ place, change, calm, windy, chance }) => ({
    text: `“${place}” cools faster in wind than the house does: in nights of ${wind(windy)} its time constant beside the house’s is ${ratioBetween(change)} times what it is at ${wind(calm)}, as where wind gets in. ${byChance(chance)}${amongAll}`,
    remedy: inRoom,
  }),
  'look-room-colder': ({ room, level, evening, chance }) => ({
    text: `“${room}” stands colder than the house and does not catch up: at the end of the nights it was at ${index(level)} of the way from outdoors to the house, in the evening at ${ratio(evening)}. Heated like the others, it loses more than they do; a room kept cool for days stands so too. ${byChance(chance)}${amongAll}`,
    remedy: `Heat all rooms alike for a day and look again. ${inRoom}`,
  }),
  'look-room-warmer': ({ room, excess }) => ({
    text: `“${room}” was ${kelvins(excess)} warmer than the house while it cooled, so part of its fall is heat that it gave to other rooms.`,
    remedy: 'Heat all rooms alike in the evening, with inner doors open.',
  }),
  'look-void-warm': ({ place, index: it, expected, assumed, chance }) => ({
    text: `“${place}” is warmer than drawn: it stands at ${index(it)} of the way from outdoors to the house, where ${ratio(expected.low)} to ${ratio(expected.high)} would be ${assumed ? 'usual (nothing was stated)' : 'as drawn'}. Warm air leaks into it, or insulation is missing below it; a tight, insulated roof over it does the same without a fault. ${byChance(chance)}${amongAll}`,
    remedy: underVoid,
  }),
  'look-void-warms-in-wind': ({ place, change, calm, windy, chance }) => ({
    text: `“${place}” grows warmer in wind: from ${wind(calm)} to ${wind(windy)} it moves by ${index(change)} of the way from outdoors to the house, and then stands above outdoors. Outdoor air would cool it, so this points to warm air of the house that wind drives into it. ${byChance(chance)}${amongAll}`,
    remedy: underVoid,
  }),
  'look-void-aired': ({ place, change, calm, windy }) => ({
    text: `“${place}” grows colder in wind: between ${wind(calm)} and ${wind(windy)} by ${index({ value: -change.value, low: -change.high, high: -change.low })} of the way from the house to outdoors. Outdoor air goes through it, as it should where it is ventilated.`,
  }),
  'look-void-moist': ({ place, excess, share, chance }) => ({
    text: `The air of “${place}” holds ${density(excess.low)} to ${density(excess.high)} more water than outdoors (${density(excess.value)})${share === null ? '' : `, ${percent(share)} of what the rooms hold above outdoors`}: moist air of the house gets in, or something in there dries. ${byChance(chance)}${amongAll}`,
    remedy: `Look for damp timber and frost under the covering as well. ${underVoid}`,
  }),
  'look-surface-cold': ({ place, element, factor, expected, chance }) => ({
    text: `The surface of “${element}” at the logger in “${place}” is colder than drawn: its temperature factor is ${ratioBetween(factor)}, where ${ratio(expected.low)} to ${ratio(expected.high)} would be as drawn. It tells of this spot only. ${byChance(chance)}${amongAll}`,
    remedy:
      'On site: insulation slumped, missing or not tight behind this spot, a member or a fixing right under the logger; reveals and edges nearby.',
  }),
  'look-may-be-chance': ({ chance, looked }) => ({
    text: `A weak hint at most: clear by itself, but of ${count(looked, 'figure')} looked at one is as far off as this by chance in ${percent(chance)} of records.`,
    remedy: 'More nights, calm and windy ones, would tell.',
  }),
  'look-nothing-stands-out': ({ looked }) => ({
    text: `Nothing stands out beyond chance (${count(looked, 'reading')} of rooms, voids and surfaces looked at). A fault spread over the whole house, or small beside its room, does not show this way.`,
  }),
  'look-one-logger-each': () => ({
    text: 'One logger stands for each room: rooms differ in size, in heating and in the sun of the day before, and exchange heat through doors and floors, which hides much: in a simulated house a room without any wall insulation cooled only a tenth faster than the rest. This says where to look, not what is there.',
  }),
  'look-rooms-not-named': () => ({
    text: 'What each room should lose by its own elements is not known, so rooms are set beside what rooms ordinarily differ by, which hides all but a large fault.',
    remedy:
      'Give each element its "room" (cut those that span several), each inside logger its "volumeM3", and the house its "volumeM3".',
  }),
  'look-wind-not-logged': () => ({
    text: 'No wind was given, so what draughts do in it was not looked at.',
    remedy: 'Add a weather file with wind speed.',
  }),
  'look-wind-alike': () => ({
    text: 'The used nights were too few or too alike in wind to tell what it does.',
  }),
};

/**
 * Where to look first, for those who live there: "The first place to look is “Bedroom”: …"
 *
 * @returns null where nothing could be looked at
 */
export function whereToLookSentence({ whereToLook: [first] = [] }: StageResult): string | null {
  if (first === undefined) return null;
  const { place, kind, chance, inWind } = first;
  const itself = standsOut(chance);
  if (!itself && !standsOut(inWind?.chance))
    return 'No room or roof space stands out from the rest by more than chance: there is no one place to look first.';
  const why = itself ? ownWords[kind] : windWords[kind];
  return `The first place to look is “${place}”: ${why}. It is a hint where to look, not proof of a fault.`;
}

type Kind = NonNullable<StageResult['whereToLook']>[number]['kind'];

const ownWords: Readonly<Record<Kind, string>> = {
  room: 'it loses its warmth faster than it should beside the other rooms',
  'room-level': 'it stays colder than the other rooms all night, more than rooms ordinarily differ',
  void: 'it is warmer than it should be, as if warm air of the house got into it',
  'void-moisture': 'its air is moister than outdoors, as if air of the house got into it',
  surface: 'the surface there is colder than it should be',
};
const windWords: Readonly<Record<Kind, string>> = {
  ...ownWords,
  room: 'on windy nights it loses its warmth faster than the rest of the house, as if wind got in',
  void: 'on windy nights it grows warmer, as if wind pushed warm air of the house into it',
};
