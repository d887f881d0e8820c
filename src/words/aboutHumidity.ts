/** What the humidity of a house tells, in sentences: how wet its air is, whether it dries, and what the figures mean. */
import { moistureExcess } from '../air/index.ts';
import { count, decimal, temperature } from './figures.ts';

/** Means of the air by one logger; null where it is not known. */
export interface AirMean {
  readonly temperatureC: number;
  readonly humidityPercent: number;
  readonly absoluteGM3: number;
  readonly dewPointC: number | null;
  readonly excessGM3: number | null;
}

/** One night of the rooms together, with the air outside. */
export interface MoistNight {
  readonly excessGM3: number;
  readonly outsideC: number;
}

export const gramsOfWater = (perCubicMetre: number) => `${decimal(perCubicMetre, 1)} g/m³`;
export const percentHumidity = (percent: number) => `${decimal(percent, 0)} %`;

/** "On average the rooms held 6.1 g of water in each cubic metre of air …" @param of the rooms, one or more */
export function airSentence(of: AirMean): string {
  const { absoluteGM3, humidityPercent, dewPointC, excessGM3 } = of;
  const dew = dewPointC === null ? '' : `, and what is colder than ${temperature(dewPointC)} grew wet in it`;
  const over =
    excessGM3 === null
      ? ''
      : ` That is ${gramsOfWater(Math.abs(excessGM3))} ${excessGM3 < 0 ? 'less' : 'more'} than outdoors.`;
  return `On average each cubic metre of air in the rooms held ${decimal(absoluteGM3, 1)} g of water: a humidity of ${percentHumidity(humidityPercent)}${dew}.${over}`;
}

/** Nights at either end that are compared, and how many there must be to do so. */
const ENDS = 7;
const LEAST_NIGHTS = 2 * ENDS;
/** A change below this is within what loggers of humidity differ by [g/m³]. PRACTICE: 2 % of humidity at 15 °C. */
const NO_CHANGE = 0.3;

/**
 * Whether the house dries: the vapour over outdoors in the first nights against the last.
 *
 * @param nights in the order of time
 * @returns null with too few nights
 */
export function dryingSentence(nights: readonly MoistNight[]): string | null {
  if (nights.length < LEAST_NIGHTS) return null;
  const [first, last] = [nights.slice(0, ENDS), nights.slice(-ENDS)].map(meanExcess);
  const told = `from ${gramsOfWater(first)} in the first ${ENDS} nights to ${gramsOfWater(last)} in the last ${ENDS}`;
  if (Math.abs(last - first) < NO_CHANGE) return `What the rooms hold over outdoors hardly changed: ${told}.`;
  if (last < first)
    return `What the rooms hold over outdoors fell ${told}: the house is drying, or more air passes through it than at first.`;
  return `What the rooms hold over outdoors rose ${told}: something gives off water (fresh plaster or screed, wet timber, people, washing, a leak), or less air passes through than at first, as after sealing.`;
}

/** A dwelling in ordinary use, ISO 13788:2012, Annex A. */
const DWELLING = 2;

/** How it stands against a house that is lived in. @returns null without nights */
export function ordinarySentence(nights: readonly MoistNight[]): string | null {
  if (nights.length === 0) return null;
  const outside = nights.reduce((sum, it) => sum + it.outsideC, 0) / nights.length;
  const most = moistureExcess(DWELLING, outside).density * 1000;
  const now = meanExcess(nights.slice(-ENDS));
  const ordinary = `A home that is lived in and aired holds up to about ${gramsOfWater(most)} over outdoors in such weather (ISO 13788, from memory)`;
  if (now > most)
    return `${ordinary}; this house holds ${gramsOfWater(now)}. While it dries, drying draws heat, so the heat loss reads too high: look again when the excess is down.`;
  return `${ordinary}; this house holds ${gramsOfWater(now)}. In an empty house with nothing left to dry it would be near nothing.`;
}

const meanExcess = (nights: readonly MoistNight[]) =>
  nights.reduce((sum, it) => sum + it.excessGM3, 0) / nights.length;

/** "Five loggers with humidity, 35 nights." */
export const humiditySummary = (loggers: number, nights: number, span: string) =>
  `${count(loggers, 'logger')} with humidity, ${span}, ${count(nights, 'night')}. Each band reaches from the least to the greatest value of every interval, with a line midway that has its logger’s name at its end; the table has the means of each night.`;

export const moistMarks =
  'Figures in circles are the notes of the house. Point at a name in the legend to pick out its lines; press it to switch them off and on.';

export const noHumidity = {
  answer: 'No humidity was logged in this house, and that is all right: the heat loss needs none.',
  tells: [
    'Logged inside and outdoors, it would tell whether plaster, screed or timber is still drying, which draws heat and makes the house look worse than it is.',
    'It would tell how cold a corner or a window may get before it grows wet.',
    'In a roof void it would tell whether house air gets up there, which the temperature alone hardly shows.',
  ],
  how: 'A logger that measures both puts the humidity in a column beside the temperature; it is then read with the file. One inside and one outdoors, in the shade and out of the rain, are enough to begin with.',
} as const;

/** No outdoor humidity. */
export const noHumidityOutside =
  'No humidity was logged outdoors, so what the rooms hold over outdoors cannot be told. An outdoor logger with humidity, or a weather file that has it, would tell.';

export interface Meaning {
  readonly term: string;
  readonly text: string;
}

export const humidityMeanings: readonly Meaning[] = [
  {
    term: 'Relative humidity',
    text: 'How full the air is of what it can hold at its temperature, in per cent. It falls when the same air is warmed, so two rooms can be compared by it only if they are equally warm.',
  },
  {
    term: 'Absolute humidity',
    text: 'The grams of water in a cubic metre of air. Warming hardly changes it; people, washing, wet building materials and fresh air do.',
  },
  {
    term: 'Dew point',
    text: 'The temperature to which this air must cool before water comes out of it. A pane, pipe or corner that is colder grows wet; a surface within about 3 °C above it is damp enough for mould if it stays so.',
  },
  {
    term: 'Vapour over outdoors',
    text: 'The grams per cubic metre that the rooms hold more than the air outside: the water that the house gives off, thinned by the fresh air that passes through. In an empty house it falls week by week as plaster, screed and timber dry.',
  },
];

export const dryingAndHeat =
  'Why it matters here: to dry a litre of water takes about 0.7 kWh, and a drying house takes it from its own warmth. A test in a wet house reads the heat loss too high.';
