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

/** Where the doubt of a heat loss comes from. */
export const doubtSources = ['capacity', 'loggers', 'nights', 'wind', 'sun', 'gains', 'model'] as const;
export type DoubtSource = (typeof doubtSources)[number];

const tier = z.enum(['loggers', 'heated-night', 'metered', 'none']);
export type Tier = z.infer<typeof tier>;

const verdict = z.enum(['meets', 'exceeds', 'undecided']);
export type Verdict = z.infer<typeof verdict>;

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
  gap: z.strictObject({ ratio: estimate, verdict: verdict.nullable() }).nullable(),
  next: z.array(message).describe('what would decide it, or what to do now'),
  notes: z.array(message),
});
export type StageResult = z.infer<typeof stage>;

const comparison = z.strictObject({
  before: z.string(),
  after: z.string(),
  heatLossRatio: estimate.nullable(),
  timeConstantRatio: estimate.nullable(),
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
