/** What a heat loss rests on. */
import type { HeatLossNote, Leaving } from '../heatloss/index.ts';
import {
  count,
  day,
  days,
  decimal,
  heatLoss,
  kelvins,
  percent,
  power,
  rate,
  temperature,
} from './figures.ts';
import type { SentencesFor } from './sentence.ts';

const nightsOf = (dates: readonly string[]) => `${dates.length === 1 ? 'night' : 'nights'} of ${days(dates)}`;

/** Dates as long as they are few. */
const heatedNights = (dates: readonly string[]) =>
  dates.length > 4 ? count(dates.length, 'heated night') : `the heated ${nightsOf(dates)}`;

const litres = (of: number) => (of < 0.5 ? 'less than a litre' : `about ${count(Math.round(of), 'litre')}`);

export const aboutHeatLoss: SentencesFor<HeatLossNote> = {
  'known-bias': ({ readsLowBy }) => ({
    text: `This plain form reads about ${percent(readsLowBy)} low on simulated houses; the interval allows for it.`,
  }),
  'rests-on-capacity': ({ relativeSd }) => ({
    text: `It rests on the heat capacity worked out from the design, taken as known to ${percent(1.96 * relativeSd)} either way.`,
  }),
  'gains-allowed-for': ({ gains }) => ({ text: `${power(gains)} of constant gains were allowed for.` }),
  'gains-beyond-house': ({ gains, lost }) => ({
    text: `${power(gains)} of constant gains are more than the house as drawn loses at the temperatures of the record, about ${power(lost)}: no figure can be right with them.`,
    remedy: 'Check "constantGainsW" in house.json: it is in watts, and an average over day and night.',
  }),
  'heater-weak': ({ share }) => ({
    text: `The house loses ${percent(share)} of what the heater gave: too weak a heater to tell much.`,
    remedy: 'Repeat it with a stronger heater, or on a milder night.',
  }),
  'heater-strong': ({ share }) => ({
    text: `The house loses only ${percent(share)} of what the heater gave: a gentler heater would tell more.`,
  }),
  'borrowed-from-stage': ({ stage }) => ({
    text: `No heat was metered in this stage; the watts are those of “${stage}”, carried over by the ratio of the cooling rates.`,
  }),
  'calibrated-by-stage': ({ stage }) => ({
    text: `No heat was metered in this stage; the metered heat of “${stage}” tells how much heat the house holds, and that serves here too.`,
  }),
  'heated-nights-used': ({ dates }) => ({
    text: `From the heated ${nightsOf(dates)}.`,
  }),
  'heater-cycled': ({ dates }) => ({
    text: `The heater came and went in ${heatedNights(dates)}, as a thermostat has it: there are no two slopes to read.`,
    remedy:
      'For a heated night choose a heater too weak for its thermostat to switch it off, and then leave it off until morning.',
  }),
  'heater-uneven': ({ dates }) => ({
    text: `The heater was turned up and down in ${heatedNights(dates)}, so its warming is no slope of one power.`,
    remedy: 'Keep it at one power that its thermostat does not cut back.',
  }),
  'heater-on-too-short': ({ dates }) => ({
    text: `The heater was on for less than 3.5 hours on end in ${heatedNights(dates)}: too short for its slope to settle.`,
    remedy: 'Heat from dusk for five to seven hours.',
  }),
  'cooling-too-short': ({ dates }) => ({
    text: `Less than 3.5 hours without heat followed before sunrise in ${heatedNights(dates)}: too short for the cooling slope to settle.`,
    remedy: 'Switch the heater off by midnight, and leave it off until sunrise.',
  }),
  'heated-night-gap': ({ dates }) => ({
    text: `Temperatures or the heater’s power are not known all through the slopes of ${heatedNights(dates)}.`,
    remedy: 'Log both until sunrise; of a heater read off by eye state when it was on.',
  }),
  'slopes-contradict': ({ dates }) => ({
    text: `It did not grow warmer under the heater, or did not cool without it, in ${heatedNights(dates)}: the two slopes tell no heat loss.`,
    remedy: 'Repeat it with a stronger heater, after a day without heating.',
  }),
  'settling-not-known': ({ date }) => ({
    text: `The record does not show how warm or cold its mass was before the heater came on, on ${day(date)}.`,
  }),
  'mass-not-settled': ({ date, slope }) => ({
    text: `Its mass had not settled before the heater came on, on ${day(date)}: the air ${slope < 0 ? 'fell' : 'rose'} by ${rate(Math.abs(slope) * 3600)}.`,
    remedy: 'Leave the house unheated for some hours before a heated night.',
  }),
  'windy-night': ({ date, windSpeed }) => ({
    text: `It was windy in the heated night of ${day(date)}, ${decimal(windSpeed, 1)} m/s in the mean: it leaked more than on most nights.`,
  }),
  'wind-changed': ({ date, heating, cooling }) => ({
    text: `The wind changed in the heated night of ${day(date)}, from ${decimal(heating, 1)} m/s while it was heated to ${decimal(cooling, 1)} m/s while it cooled: the two slopes are not of the same leakage.`,
  }),
  'outdoors-drifted': ({ date, drift }) => ({
    text: `It grew ${kelvins(Math.abs(drift))} ${drift < 0 ? 'colder' : 'warmer'} outside through the heated night of ${day(date)}, and a mass that answers late still felt what was before.`,
  }),
  'neighbour-counted': ({ share }) => ({
    text: `A heated neighbour takes or gives by its share of all losses as drawn, ${percent(share)}; that is taken off.`,
  }),
  'days-used': ({ used, leftOut }) => ({
    text: `From ${count(used, 'metered day')}, each from dawn to dawn${leftOut === 0 ? '' : `; ${leftOut} left out`}.`,
  }),
  'too-few-metered-days': ({ used, needed }) => ({
    text: `${count(used, 'metered day')} can be used for a daily heat balance, which takes at least ${needed}.`,
    remedy: 'Log heat and temperatures for one or two weeks in cold weather.',
  }),
  'metered-days-contradict': ({ used }) => ({
    text: `No heat loss comes out of ${count(used, 'metered day')}: their heat does not go with the temperature difference.`,
    remedy: 'Check the unit and the clock of the heat, and which loggers are inside and outside.',
  }),
  'days-left-out': ({ why, count: n }) => ({ text: `${count(n, 'day')} left out: ${leavings[why]}.` }),
  'start-hour-moves': ({ lowest, highest }) => {
    const [least, most] = [heatLoss(lowest), heatLoss(highest)];
    return {
      text:
        least === most
          ? 'The hour at which a day begins makes no difference.'
          : `Depending on the hour at which a day begins it is ${least} to ${most}; the interval allows for it.`,
    };
  },
  'inside-assumed': ({ temperature: inside, plusMinus }) => ({
    text: `Nothing was logged inside: the house is taken to be at ${temperature(inside)} throughout, as house.json says, give or take ${kelvins(plusMinus)}. Its nights tell nothing.`,
    remedy: 'A logger in each of the main rooms narrows the interval, and shows how the house cools.',
  }),
  'neighbour-flow-taken-out': ({ flow, known }) => ({
    text: `${power(Math.abs(flow))} on average ${flow < 0 ? 'came in from' : 'went to'} the heated neighbour, by the wall as drawn and ${neighbourKnown[known]}; that is taken out.`,
    ...(known !== 'logged' && { remedy: 'A logger next door narrows the interval.' }),
  }),
  'sun-held-by-glass': ({ share }) => ({
    text: `Sun and temperature difference rose and fell together, so the sun’s heat is mostly that of the glass as drawn: ${percent(share)} of all heat.`,
  }),
  'sun-of-ordinary-sky': ({ share }) => ({
    text: `No irradiance was given: the sun’s heat is that of the glass as drawn under an ordinary sky, ${percent(share)} of all heat. The interval is wider for it.`,
    remedy: 'Add a weather file with global irradiance.',
  }),
  'sun-not-separable': () => ({
    text: 'Sun and temperature difference rose and fell together, so what each did cannot be told well apart.',
  }),
  'no-irradiance': () => ({
    text: 'No irradiance was given, so the sun’s heat is not taken out: the loss reads low.',
    remedy: 'Add a weather file with global irradiance.',
  }),
  'no-wind': () => ({
    text: 'No wind speed was given, so leakage is taken to follow the temperatures alone.',
    remedy: 'A weather file with wind speed from a station nearby narrows the interval.',
  }),
  'still-drying': ({ weeks }) => ({
    text: `Wet trades ${weeks === 0 ? 'are under way' : `ended within ${count(weeks, 'week')}`}: drying draws heat, as 10 litres of water a day take about 280 W. The interval is wider for it.`,
    remedy: 'Measure again when plaster and screed have dried.',
  }),
  'vapour-excess': ({ density, rate, assumedAir, heat, told }) => ({
    text: `At night the air inside held ${decimal(density * 1000, 1)} g/m³ more water than outdoors${told ? '' : ', more than a dwelling in ordinary use does'}. At ${assumedAir ? 'an ordinary air change, as none is stated,' : 'the air change as drawn'} it carries off ${litres(rate * 86_400)} a day; if that came out of plaster, screed or timber, drying drew about ${power(heat)}, which is no fault of the shell. The interval is wider for it.`,
    ...(told
      ? {}
      : { remedy: 'Say under "conditions" in "wetTradesWithinWeeks" how many weeks ago wet work ended.' }),
  }),
  'whole-days-used': ({ used, leftOut }) => ({
    text: `From ${count(used, 'whole metered day')}; ${leftOut} left out for gaps or too little heat.`,
  }),
  'coldest-stretch': ({ days: taken }) => ({
    text: `The record is longer; its coldest ${count(taken, 'day')} were taken.`,
  }),
  'states-told-apart': ({ states }) => ({ text: toldApart[states] }),
  'residuals-not-white': () => ({
    text: 'Something that repeats is left over that this model does not foretell, such as a rhythm of heating or sun. On simulated houses such records were no further off.',
  }),
  'sun-by-usual-sky': () => ({
    text: 'No irradiance was given: an ordinary sky was taken.',
    remedy: 'Add a weather file with global irradiance.',
  }),
};

/** By how many temperatures a stochastic model tells apart. */
const toldApart = {
  1: 'The readings follow one temperature for the whole house.',
  2: 'The readings tell the air inside and the mass of the shell apart.',
  3: 'The readings tell the air, the shell and a mass inside apart; the figure is the mean of models with two and with three.',
} as const;

const leavings: Readonly<Record<Leaving, string>> = {
  'gap-in-temperatures': 'more than an hour of a temperature is missing',
  'gap-in-heat': 'not all of its heat was metered',
  'gap-in-sun': 'more than an hour of the irradiance is missing',
  'no-heat': 'no heat was put in',
  'small-difference': 'inside and outside are less than 3 K apart',
  opened: 'the air fell suddenly, as when a window or door is opened',
  'left-out-by-hand': 'its night was left out by hand',
};

const neighbourKnown = {
  logged: 'the logger next door',
  stated: 'its temperature as stated',
  assumed: 'a temperature next door of about 20 °C, because house.json states none',
} as const;
