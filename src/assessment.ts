/**
 * The result's types: what the JSON, the pages and the sheet show. A border: keys carry units, what is
 * unknown is null, times are ISO 8601 with offset in the house's zone. `assessment.schema.json` beside this
 * file is made from it (`npm run schemas`).
 */
import { z } from 'zod';

/** A quantity with its 95 % interval. The unit stands where the field is declared. */
const estimate = z.strictObject({ value: z.number(), low: z.number(), high: z.number() });
export type Estimate = Readonly<z.infer<typeof estimate>>;

/** Where something was found: each part only as far as it is known. */
const where = z.strictObject({
  file: z.string().optional(),
  line: z.number().int().optional().describe('as an editor counts: from 1, header included'),
  column: z.string().optional(),
  key: z.string().optional().describe('the key of house.json'),
  night: z.string().optional(),
  stage: z.string().optional(),
});
export type Where = Readonly<z.infer<typeof where>>;

const message = z.strictObject({
  code: z.string(),
  text: z.string(),
  where: where.optional(),
  remedy: z.string().optional(),
});
export type Message = Readonly<z.infer<typeof message>>;

/** What a column of a log can hold, in the unit that the JSON reports it in. */
export const reportedUnits = {
  temperature: 'C',
  humidity: '%',
  dewPoint: 'C',
  absoluteHumidity: 'g/m3',
  windSpeed: 'm/s',
  irradiance: 'W/m2',
  power: 'W',
  energy: 'kWh',
  meter: 'kWh',
  pressure: 'hPa',
  carbonDioxide: 'ppm',
  voltage: 'V',
} as const;
export type Quantity = keyof typeof reportedUnits;

const quantity = z.enum(Object.keys(reportedUnits) as [Quantity, ...Quantity[]]);

const channel = z.strictObject({
  column: z.string(),
  quantity,
  unit: z.string(),
  readings: z.number().int(),
  doubted: z.number().int().describe('of the readings, kept out of the fits until they are put back'),
  mean: z.number().nullable(),
  min: z.number().nullable(),
  max: z.number().nullable(),
});

/** What was made of a file before its rows were read, and why: what a person is shown and may change. */
const understood = z.strictObject({
  packed: z.enum(['zip', 'gzip']).nullable(),
  encoding: z.string(),
  delimiter: z.string(),
  decimal: z.enum(['.', ',']),
  headerLine: z.number().int().nullable(),
  preamble: z.strictObject({
    lines: z.array(z.string()),
    serial: z.string().nullable(),
    logger: z.string().nullable(),
    zone: z.string().nullable(),
    intervalS: z.number().nullable(),
  }),
  clock: z.strictObject({
    columns: z.array(z.string()),
    written: z.string(),
    order: z.enum(['day-first', 'month-first', 'year-first']).nullable(),
    orderBy: z.enum(['the text', 'the whole file', 'the house', 'the other files', 'a guess']),
    zone: z.string().nullable(),
    zoneBy: z.enum(['each row', 'the header', 'the preamble', 'the house']),
  }),
  columns: z.array(
    z.strictObject({
      column: z.string(),
      quantity: quantity.nullable(),
      notRead: z.enum(['time', 'event', 'counter', 'statistic', 'text', 'empty', 'unknown']).nullable(),
      unit: z.string().nullable().describe('as the file has it, else the usual one'),
      unitStated: z.boolean().describe('whether the file or the house says it'),
      because: z.array(z.enum(['the house', 'the header', 'the unit', 'the values'])),
      confidence: z.enum(['certain', 'likely', 'guessed']).nullable(),
    }),
  ),
  sample: z.array(z.strictObject({ line: z.number().int(), cells: z.array(z.string()) })),
});

const imported = z.strictObject({
  file: z.string(),
  rows: z.number().int(),
  readings: z.number().int(),
  rejected: z.number().int(),
  from: z.string().nullable(),
  to: z.string().nullable(),
  intervalS: z.number().nullable(),
  understood: understood.nullable(),
  channels: z.array(channel),
  notes: z.array(message),
});
export type Imported = z.infer<typeof imported>;

const element = z.strictObject({
  name: z.string(),
  areaM2: z.number(),
  uValue: z
    .number()
    .nullable()
    .describe('null where its layers are refused and no U-value stands beside them'),
  heatLossWK: z.number().nullable().describe('to outside and ground: 0 to a heated neighbour'),
  to: z.enum(['outside', 'ground', 'adjacent', 'void']),
  notes: z.array(message),
});

const degreeDays = z.strictObject({
  baseC: z.number(),
  kelvinDays: z.number(),
  place: z.string().describe('whose standard year it is'),
});
const designDay = z.strictObject({ insideC: z.number(), outsideC: z.number() });

/** For orientation: standard weather and occupants. */
const annual = z.strictObject({
  heatDemandKWhPerYear: estimate.nullable().describe('before what a boiler or heat pump loses itself'),
  heatLoadW: estimate.nullable().describe('on the design day, nothing added for heating up again'),
  degreeDays,
  designDay,
  notes: z.array(message),
});

const design = z.strictObject({
  heatLossWK: z.number(),
  heatLossAsTestedWK: z.number().nullable(),
  fabricWK: z.number(),
  bridgesWK: z.number(),
  ventilationWK: z.number(),
  meanUValue: z.number(),
  heatCapacityKJK: z.number().nullable(),
  heatCapacitySdPercent: z.number().nullable().describe('one standard deviation of the heat capacity'),
  timeConstantH: z.number().nullable(),
  toNeighboursWK: z.number().nullable().describe('to heated neighbours; in none of the figures above'),
  heatDemandKWhPerYear: estimate
    .nullable()
    .optional()
    .describe('as drawn and in use, over the standard year of "annual"; null where none is known'),
  heatLoadW: estimate.nullable().optional().describe('as drawn and in use, on the design day of "annual"'),
  annual: annual
    .pick({ degreeDays: true, designDay: true, notes: true })
    .nullable()
    .optional()
    .describe('what both rest on, for orientation only; null where no degree days of the place are known'),
  ranges: z
    .strictObject({
      heatLossWK: estimate,
      heatLossAsTestedWK: estimate.nullable(),
      fabricWK: estimate,
      bridgesWK: estimate,
      ventilationWK: estimate,
      elementsWK: z.array(estimate.nullable()).describe('in the order of the elements'),
    })
    .describe('how sure the design itself is: 95 % of each figure'),
  elements: z.array(element),
  notes: z.array(message),
});

const night = z.strictObject({
  date: z.string().describe("the evening's"),
  from: z.string().nullable(),
  to: z.string().nullable(),
  used: z.boolean(),
  heated: z.boolean(),
  reasons: z.array(message),
  dropK: z.number().nullable(),
  foretoldDropK: estimate
    .optional()
    .describe('of the house as drawn, from the same evening on in the same weather; of the last used nights'),
  rateKPerH: z.number().nullable(),
  meanDifferenceK: z.number().nullable(),
  timeConstantH: z.number().nullable(),
  timeConstantSeH: z.number().nullable(),
});
export type NightResult = z.infer<typeof night>;

export const methods = [
  'network',
  'effective-capacity',
  'combined',
  'capacity-over-tau',
  'heat-then-cool',
  'heat-balance',
  'state-space',
] as const;
const method = z.enum(methods);
export type Method = (typeof methods)[number];

const laterStarts = z.strictObject({
  nights: z.number().int().describe('the same at every start: those that are long enough'),
  starts: z.array(
    z.strictObject({
      laterH: z.number().describe('than the windows as they were chosen'),
      timeConstantH: estimate,
      ratio: estimate.describe('to the windows as chosen, night by night'),
    }),
  ),
  moves: z.boolean().describe('the last ratio is clear of 1 and off by more than a tenth'),
});

const leaveOneOut = z.strictObject({
  lowestTimeConstantH: z.number(),
  highestTimeConstantH: z.number(),
  most: z
    .strictObject({ date: z.string(), timeConstantH: z.number() })
    .describe('the night whose absence moves the time constant most, and what it is then'),
  carries: z.boolean().describe('by more than the standard error of all nights together'),
});

const room = z.strictObject({
  room: z.string(),
  file: z.string(),
  timeConstantH: estimate,
  ratio: estimate.describe("to the house's, night by night; 95 % for all rooms together"),
  nights: z.number().int(),
});

/** A place that was looked at for a weak spot. */
const placeToLook = z.strictObject({
  place: z.string().describe('the room, or what the logger hangs in or lies on'),
  file: z.string(),
  kind: z.enum(['room', 'room-level', 'void', 'void-moisture', 'surface']),
  ratio: estimate.optional().describe("of a room: its time constant over the house's, as in `rooms`"),
  index: estimate
    .optional()
    .describe(
      "of a void, a surface or a room's level at the end of the nights: 0 as outdoors, 1 as the house",
    ),
  excessGM3: estimate.optional().describe("of a void's moisture: vapour above that outdoors"),
  expected: estimate.nullable().describe('the ratio or index as drawn; null where the design does not tell'),
  inWind: z
    .strictObject({
      change: estimate.describe('ratio when windy over ratio when calm, or by how much the index rises'),
      calmMS: z.number(),
      windyMS: z.number().describe('lower and upper quartile of the nights'),
      nights: z.number().int(),
      chance: z.number(),
    })
    .nullable(),
  chance: z
    .number()
    .nullable()
    .describe(
      'probability that chance alone shows so much somewhere among all that was looked at; below 0.05 it stands out',
    ),
  notes: z.array(message),
});

/** What a logger on a surface tells of the element under it. */
const surface = z.strictObject({
  logger: z.string().describe('its file'),
  room: z.string(),
  element: z.string().nullable(),
  uValueWM2K: estimate.nullable().describe('of the element where the logger sits'),
  accepted: z.boolean().describe('by all rules of the average method, and narrow enough to say something'),
  designUValue: z.number().nullable(),
  notes: z.array(message),
});

/** Whether the ways to the heat loss can all be right. */
const agreement = z.strictObject({
  agree: z.boolean().describe('every interval meets every other'),
  groups: z
    .array(z.array(method))
    .describe('ways that have a range in common, each as large as it can be; one way may be in several'),
  apart: z
    .array(
      z.strictObject({
        lower: z.array(method),
        higher: z.array(method),
        sharing: z.array(z.string()).describe('what they rest on alike beside the loggers'),
        causes: z.array(message),
      }),
    )
    .describe('ways whose intervals lie below those of others, and what usually explains it'),
  notes: z.array(message).describe('what it comes to'),
});

export const furtherTests = [
  'more-nights',
  'heated-night',
  'metered-week',
  'loggers-side-by-side',
  'logger-next-door',
  'capacity-known',
  'wind-logged',
] as const;

/** Where the doubt of a heat loss comes from. */
export const doubtSources = ['capacity', 'loggers', 'nights', 'wind', 'sun', 'gains', 'model'] as const;
export type DoubtSource = (typeof doubtSources)[number];

/** A test that nobody has made yet, imagined in this house as fitted and in weather like its own. */
const furtherTest = z.strictObject({
  test: z.enum(furtherTests),
  moreNights: z.number().int().nullable(),
  powerW: z.number().nullable(),
  durationH: z.number().nullable(),
  warmestC: z.number().nullable().describe('that the house gets in the heated night'),
  ratio: estimate.describe(
    'measured over designed, with the interval that would be left, if the figure stays',
  ),
  chanceToDecide: z.number().describe('0 to 1'),
  text: z.string().describe('the test as an errand'),
});

const tier = z.enum(['loggers', 'heated-night', 'metered', 'none']);
export type Tier = z.infer<typeof tier>;

const verdict = z.enum(['meets', 'exceeds', 'undecided']);
export type Verdict = z.infer<typeof verdict>;

/** What may be wrong with an element's layers. */
export const faults = ['open-joints', 'more-timber', 'insulation-left-out'] as const;
export type Fault = (typeof faults)[number];

/** What one element would have to be for the gap; none of it was measured there. */
const elementGap = z.strictObject({
  name: z.string(),
  uValueDrawn: z.number(),
  uValueAlone: estimate
    .nullable()
    .describe('with the whole gap in it, no worse than without its insulation; null where it cannot hold it'),
  uValueEvenly: estimate.nullable().describe('when all insulated elements share it; null for the others'),
  couldExplainPercent: z
    .array(
      z.strictObject({ cause: z.enum(faults), percent: z.number(), uValue: z.number(), text: z.string() }),
    )
    .describe('of the gap, by what may be wrong with its layers; 100 at most'),
  notes: z.array(message),
});

const gap = z.strictObject({
  ratio: estimate,
  drawnWK: z.number().optional().describe('what it was set beside: as tested, or with vents in use'),
  verdict: verdict.nullable(),
  excessWK: estimate.optional().describe('measured less designed; this and the next of finished stages only'),
  elements: z.array(elementGap).optional().describe('none where it loses no more than drawn'),
  meanUValue: estimate
    .nullable()
    .optional()
    .describe('fabric and thermal bridges over the exposed area, the ventilation as drawn taken out'),
  notes: z.array(message).optional(),
});

const nightsToShow = z
  .array(
    z.strictObject({
      changePercent: z.number().describe('a fall of the heat loss'),
      nights: z.number().int().nullable().describe('on each side; null where not even 60 show it'),
    }),
  )
  .nullable()
  .optional();

const stage = z.strictObject({
  name: z.string(),
  from: z.string().nullable(),
  to: z.string().nullable(),
  nights: z.array(night),
  timeConstantH: estimate.nullable(),
  laterStarts: laterStarts.optional().describe('the same nights begun later'),
  leaveOneOut: leaveOneOut.optional().describe('each night left out in turn'),
  rooms: z.array(room).optional().describe('each room by its own readings over the same windows'),
  estimates: z.array(z.strictObject({ method, heatLossWK: estimate, notes: z.array(message) })),
  tier,
  heatLossWK: z.strictObject({ ...estimate.shape, method }).nullable(),
  doubts: z
    .array(z.strictObject({ source: z.enum(doubtSources), share: z.number() }))
    .optional()
    .describe(
      'where the width of that interval comes from, largest first: shares of its variance that add up to 1',
    ),
  agreement: agreement.optional().describe('with two ways or more'),
  surfaces: z.array(surface).optional().describe('one for each logger on a surface'),
  whereToLook: z.array(placeToLook).optional().describe('places, the one that chance explains least first'),
  whereToLookNotes: z.array(message).optional().describe('what goes for all of these places'),
  apart: z
    .strictObject({ fabricWK: estimate, leakageWK: estimate })
    .nullable()
    .optional()
    .describe('what goes through the shell and what with the air; null where the notes say why not'),
  gap: gap.nullable(),
  annual: annual
    .nullable()
    .optional()
    .describe('by the headline; null without one, or where no degree days of the place are known'),
  nightsToShow: nightsToShow.describe(
    'in a plain comparison of time constants with a stage whose nights scatter as these do',
  ),
  next: z.array(message).describe('what would decide it, or what to do now'),
  furtherTests: z
    .array(furtherTest)
    .optional()
    .describe('what might settle an open verdict, the likeliest first'),
  notes: z.array(message),
});
export type StageResult = z.infer<typeof stage>;

const stageWeather = z.strictObject({
  nights: z.number().int().describe('used'),
  meanOutdoorC: z.number().nullable(),
  meanDifferenceK: z.number().nullable().describe('inside less outside'),
  windMS: z.number().nullable(),
  irradianceWM2: z.number().nullable().describe('global horizontal, over the day up to each window'),
});

const comparison = z.strictObject({
  before: z.string(),
  after: z.string(),
  heatLossRatio: estimate.nullable().describe('after / before'),
  timeConstantRatio: estimate.nullable().describe('after / before'),
  heatLossDifferenceWK: estimate
    .nullable()
    .optional()
    .describe('after less before: negative where the house loses less; by the ratio, not by two intervals'),
  airChangesPerHour: estimate
    .nullable()
    .optional()
    .describe('after less before, if all of it were leakage; cut to what the leakier stage could hold'),
  energyKWhPerYear: estimate
    .nullable()
    .optional()
    .describe('after less before, heat over the degree days below; null where none are known'),
  degreeDays: degreeDays.nullable().optional(),
  weather: z
    .strictObject({ before: stageWeather, after: stageWeather })
    .optional()
    .describe('over the windows of the nights used'),
  smallestChangePercent: z
    .number()
    .nullable()
    .optional()
    .describe('the least fall of the heat loss that these nights show in four cases of five'),
  nightsToShow,
  notes: z.array(message),
});

export const assessmentSchema = z.strictObject({
  house: z.string(),
  design: design.nullable(),
  imports: z.array(imported),
  stages: z.array(stage),
  comparisons: z.array(comparison),
  warnings: z.array(message),
});
export type Assessment = z.infer<typeof assessmentSchema>;
