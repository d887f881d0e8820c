/** The next test as a paper to take on site: what is done hour by hour, what is switched off, and what to mind. */
import type { Tier } from '../assessment.ts';
import { decimal, power, temperature } from './figures.ts';
import { heaterCautions } from './nextSteps.ts';
import { ladderCaution } from './placingAdvice.ts';

/** The most that one heater gives, and that one circuit carries for hours [W]. PRACTICE: portable heaters; four fifths of a fuse. */
const ONE_HEATER = 2000;
const ONE_CIRCUIT = 3000;

/** "2 electric heaters of about 1.8 kW each, 3.5 kW in all, shared out on 2 separate circuits, for 6 hours: 21 kWh. …" @param powerW null where it is not known */
export function heatersSentence(powerW: number | null, durationH: number): string {
  if (powerW === null)
    return `Electric heaters of together about 2 to 3 kW for ${hoursLong(durationH)}, each plugged into a meter that counts kWh.`;
  const circuits = Math.max(1, Math.ceil(powerW / ONE_CIRCUIT));
  const heaters = circuits * Math.max(1, Math.ceil(powerW / circuits / ONE_HEATER));
  const each = power(powerW / heaters);
  const which =
    heaters === 1
      ? `One electric heater of about ${each}`
      : `${heaters} electric heaters of about ${each} each, ${power(powerW)} in all`;
  const where =
    circuits === 1 ? 'on one circuit with nothing else on it' : `shared out on ${circuits} separate circuits`;
  return `${which}, ${where}, for ${hoursLong(durationH)}: ${decimal((powerW * durationH) / 1000, 0)} kWh. What the meter says counts, not what the label says.`;
}

const hoursLong = (hours: number) => `${decimal(hours, Number.isInteger(hours) ? 0 : 1)} hours`;

export const warmestSentence = (celsius: number) =>
  `By this house’s own record it gets no warmer than about ${temperature(celsius)}. If it gets warmer, end the heating early and write down when.`;

/** What is done at an hour of a test. */
export const testSteps = {
  'shut-down': {
    what: 'Everything on the list below is off. Windows and outer doors shut, inner doors open, blinds and curtains as they will stay. Loggers in place and running.',
    write: 'Time, weather, who was in the house',
  },
  sunset: {
    what: 'Sunset: the sun gives no more heat. Nothing to do but to see that nothing was forgotten.',
    write: '',
  },
  'heat-on': {
    what: 'From now until the heaters are off, one adult stays in the house and awake. Read the meter. Then switch the heaters on, each at one setting at which it does not switch itself off; spread them so that all rooms warm alike.',
    write: 'Meter: __________ kWh. Who stays: __________',
  },
  'look-after': {
    what: 'Look at every heater, plug and lead: none hot to the hand, nothing near them, the meter counting.',
    write: 'Power: __________ W',
  },
  'half-way': { what: 'Look again, and read the meter.', write: 'Meter: __________ kWh' },
  'heat-off': {
    what: 'Whoever stayed switches all heaters off at once, unplugs them, waits until they are cold to the hand, reads the meter, leaves the house and shuts the door.',
    write: 'Meter: __________ kWh',
  },
  sunrise: { what: 'Sunrise. Stay out for another hour.', write: '' },
  end: {
    what: 'The test is over. Read out the loggers, or leave them for the next night. The usual heating may go on.',
    write: 'Anything odd in the night',
  },
  'evening-off': {
    what: 'Heating off, and off it stays. Windows and outer doors shut, inner doors open. Doors opened as little as can be.',
    write: 'Time: __________',
  },
  'morning-on': {
    what: 'The night is over; heating may come on again. Do the same on the next evenings: they need not follow one another.',
    write: '',
  },
  'week-begins': {
    what: 'All heat that warms the house runs through a meter from now on: keep about 20 °C. Read every meter.',
    write: 'Meter: __________ kWh',
  },
  'week-reading': { what: 'Read every meter at the same hour.', write: 'Meter: __________ kWh' },
  'week-ends': { what: 'Read every meter for the last time.', write: 'Meter: __________ kWh' },
  'side-by-side': {
    what: 'Lay all loggers side by side in one room, out of the sun, under a sheet of card.',
    write: 'From: __________',
  },
  apart: { what: 'Put each logger back where it was.', write: 'To: __________' },
} as const;
export type TestStep = keyof typeof testSteps;

/** What is done where no hour matters. */
export const testErrands = {
  'logger-next-door':
    'Ask next door for leave to put a logger in the room behind the party wall, on an inner wall there, for as long as the test lasts. In house.json its place is “adjacent”.',
  'capacity-known':
    'Look what linings, floors and partitions are really made of: lift a socket plate, look at a cut edge, measure thicknesses, ask who built it. Correct the layers under “As drawn”. Do not drill where cables, pipes or old asbestos boards may be.',
  'wind-logged':
    'Get the hourly wind of a station nearby for the days of the test, and bring it as a weather file with time and wind speed.',
} as const;

export const switchOff: readonly string[] = [
  'Heating and hot water, with their pumps and clocks; underfloor heating also by its own switch. Turn off, do not dismantle.',
  'Every other heater: towel rails, fan heaters, frost guards. Where pipes may freeze, leave the frost guard on and write it down.',
  'Ovens, kettles, dryers, washing machines, computers, site chargers and lamps.',
  'What must stay on (a fridge, a router, an alarm): read its power and give the sum in house.json as “constantGainsW”.',
  'Extract fans and ventilation units, if nobody is in the house. Shut the vents that the test is to be judged with shut; never one that serves a fuel-burning appliance.',
  'Nobody sleeps in the house, and no animals.',
];

export const bringAlong: readonly string[] = [
  'The heaters, their own uncoiled leads, and a plug meter for each',
  'A working smoke alarm for the room with the heaters',
  'A watch that agrees with the loggers, a torch, a pen and this sheet',
];

/** Those of any test, then those of one with heaters. */
export const testCautions = {
  heaters: heaterCautions,
  rooms:
    'Where a boiler, stove or fire draws its air from the room, do not block its air supply and do not run it during the test. Fit a carbon monoxide alarm. If in doubt, ask the person licensed for it first.',
  ladders: ladderCaution,
  damp: 'Do not warm a soaking wet house behind shut windows; dry it first. Stop if water runs down windows or walls.',
  roof: 'It stays open: do not block eaves, ridge or soffit vents, and put no insulation against them.',
  codes:
    'Local codes, the insurer and the site’s own rules come first. Electrical, gas and roof work belongs to those who are licensed for it. This sheet is a plan for a measurement, not an instruction to do any of that.',
} as const;
export const cautionNames: Readonly<Record<keyof typeof testCautions, string>> = {
  heaters: 'Heaters',
  rooms: 'Rooms with fuel-burning appliances',
  ladders: 'Ladders and lofts',
  damp: 'Damp',
  roof: 'Roof ventilation',
  codes: 'Who decides',
};

export const testNames = {
  'more-nights': 'More nights without heat',
  'heated-night': 'One heated night',
  'metered-week': 'A week with all heat metered',
  'loggers-side-by-side': 'All loggers side by side',
  'logger-next-door': 'A logger next door',
  'capacity-known': 'What the house is made of',
  'wind-logged': 'The wind of a station nearby',
} as const;

export const noNight =
  'The sun does not both set and rise again about that day, so there is no night to test in. Choose another.';

/** @param hoursLeft from the heaters off to sunrise */
export const shortNight = (hoursLeft: number) =>
  `Only ${decimal(Math.max(0, hoursLeft), 1)} h would be left to cool before sunrise, and at least four are needed: choose a longer night.`;

/** Heating that ends at bedtime leaves too little of the evening. @param hours from sunset to bedtime */
export const shortHeating = (hours: number) =>
  `Only ${decimal(Math.max(0, hours), 1)} h lie between sunset and 23:00, and at least three are needed to warm the house: choose an evening of the darker half of the year.`;

/** @param wanted as the test was reckoned with [h] */
export const shorterHeating = (hours: number, wanted: number) =>
  `The evening has room for ${hoursLong(hours)} of heating rather than the ${decimal(wanted, Number.isInteger(wanted) ? 0 : 1)} that the test was reckoned with, so it tells somewhat less.`;

export const whoStays =
  'Heaters are never left alone: one adult stays in the house from switching on to switching off, and goes home to bed at 23:00 at the latest. Whoever stays warms the house by about 100 W; write down from when to when.';

/** What is known of the heat so far. */
export const heatKnown: Readonly<Record<Tier, string>> = {
  none: 'Nothing is known of the heat so far.',
  loggers: 'No heat is known so far: the result rests on the loggers alone.',
  'heated-night': 'The heat of a heated night is known, and the result rests on it.',
  metered: 'The heat of metered days is known, and the result rests on it.',
};

/** In tens of percent: more is not known of a chance. */
export const chanceSentence = (of: number) =>
  `The chance that it settles whether the house performs as drawn is ${of > 0.95 ? 'over 95 %' : of < 0.05 ? 'under 5 %' : `about ${decimal(Math.round(of * 10) * 10, 0)} %`}.`;

export const nothingToDecide =
  'No further test is needed to decide, or none can be foretold yet. These can be made in any house.';

/** The form for what a plug meter read. */
export const meterWords = {
  intro:
    'Where the heaters had no logger, write here what a plug meter read, by the clock of the house. Add up the meters of heaters that ran at the same time, or give each its own line.',
  logged: (files: readonly string[]) =>
    `This house has heat in ${files.join(', ')} already. What is added here comes on top of it: give only what no file holds.`,
  from: 'Heaters on',
  to: 'Heaters off',
  how: 'What the meter gave',
  ways: {
    readings: 'Its count before and after, kWh',
    energy: 'The energy between, kWh',
    power: 'The power, steady all the time, W',
  },
  before: 'Count before, kWh',
  after: 'Count after, kWh',
  energy: 'Energy, kWh',
  power: 'Power, W',
  plusMinus: 'Give or take, %',
  plusMinusHint: 'How far the meter may be off. Left empty, about 4 % is believed.',
  add: 'Add this reading',
  added: 'Kept. The house is assessed again.',
  takenOut: 'Taken out. The house is assessed again.',
  undone: 'Undone. The house stands as it did before, and is assessed again.',
  needTime: 'Give day and time.',
  needLater: 'This must be later than when they were switched on.',
  needNumber: 'Give a figure, 0 or more.',
  needMore: 'This must not be less than the count before.',
  needPercent: 'Give a figure from 0 to 100, or nothing.',
} as const;
