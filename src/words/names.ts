/** What the closed lists are called when spoken of. */
import type { DoubtSource, Method, Quantity, Verdict } from '../assessment.ts';
import type { NightReason } from '../cooling/index.ts';

export const methodNames: Readonly<Record<Method, string>> = {
  network: 'from the design’s network',
  'effective-capacity': 'from the cooling rate and the effective heat capacity',
  combined: 'from the network and the effective heat capacity together',
  'capacity-over-tau': 'from the cooling rate and the heat capacity',
  'heat-then-cool': 'from a heated night',
  'heat-balance': 'from metered days',
  'state-space': 'from the stochastic model',
};

/** The same in the middle of a sentence. */
export const methodsSpoken: Readonly<Record<Method, string>> = {
  network: 'the design’s network',
  'effective-capacity': 'the effective heat capacity',
  combined: 'network and effective heat capacity together',
  'capacity-over-tau': 'heat capacity over cooling rate',
  'heat-then-cool': 'the slopes of the heated night',
  'heat-balance': 'the balance of metered days',
  'state-space': 'the stochastic model',
};

/** Where the width of an interval comes from. */
export const doubtNames: Readonly<Record<DoubtSource, string>> = {
  capacity: 'how much heat the house holds',
  loggers: 'the loggers themselves',
  nights: 'nights and days that differ',
  wind: 'wind and leakage',
  sun: 'sun and sky',
  gains: 'heat nobody metered, ground and neighbours',
  model: 'the method itself',
};

export const verdictSentences: Readonly<Record<Verdict, string>> = {
  meets: 'It performs as drawn, within the allowance.',
  exceeds: 'It loses more than drawn.',
  undecided: 'Whether it performs as drawn cannot be told yet.',
};

/** The unit of `reportedUnits` of each quantity, as people write it. */
export const unitsWritten: Readonly<Record<Quantity, string>> = {
  temperature: '°C',
  humidity: '%',
  dewPoint: '°C',
  absoluteHumidity: 'g/m³',
  windSpeed: 'm/s',
  irradiance: 'W/m²',
  power: 'W',
  energy: 'kWh',
  meter: 'kWh',
  pressure: 'hPa',
  carbonDioxide: 'ppm',
  voltage: 'V',
};

/** Why a night was left out, in the few words that its band has room for. */
export const reasonsInBrief: Readonly<Record<NightReason['code'], string>> = {
  'no-inside-readings': 'no inside readings',
  'no-outside-readings': 'no outdoor readings',
  'gap-inside': 'inside readings missing',
  'gap-outside': 'outdoor readings missing',
  'gap-neighbour': 'next door’s readings missing',
  'no-cooling-window': 'heat until morning',
  'too-short': 'too short a fall',
  'difference-too-small': 'too mild outside',
  'heater-on': 'a heater was on',
  'heating-cycled': 'heating came and went',
  'heat-came-in': 'heat came in',
  'room-warmed': 'a room warmed',
  opened: 'air was let in',
  'sun-still-on': 'sun in the night hours',
  'outside-stood-still': 'outdoor logger stood still',
  'outside-jumped': 'outdoor logger moved',
  'outside-above-inside': 'warmer outside',
  'barely-fell': 'it barely fell',
  'uneven-fall': 'the fall is uneven',
  'put-in-by-hand': 'put in by hand',
  'left-out-by-hand': 'left out by hand',
};
