/**
 * What a house is: the schema of `house.json`, and the types that follow from it.
 *
 * This is a border: keys carry their unit (`areaM2`, `thicknessMm`). Rooms behind it convert once and
 * work in SI. Every key of the contract is declared here and nowhere else; `house.schema.json` beside this
 * file is made from it (`npm run schemas`).
 */
import { Temporal } from 'temporal-polyfill';
import { z } from 'zod';

const isZone = (zone: string) => {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(zone);
    return !/^[+-]/.test(zone);
  } catch {
    return false;
  }
};

const isLocalTime = (text: string) => {
  try {
    return /^\d{4}-\d\d-\d\d(T\d\d:\d\d(:\d\d)?)?$/.test(text) && Boolean(Temporal.PlainDateTime.from(text));
  } catch {
    return false;
  }
};

const isInsideFolder = (path: string) =>
  !/^([/\\]|[A-Za-z]:)/.test(path) && !path.split(/[/\\]/).includes('..') && !path.includes('\0');

const between = (least: number, most: number) => z.number().min(least).max(most);
const above0 = (least: number, most: number) => z.number().positive({ abort: true }).min(least).max(most);
const from0 = (most: number) => z.number().nonnegative().max(most);
const fraction = between(0, 1);

// Far outside anything that is built: a slip of the unit passes and is questioned, what breaks arithmetic does not.
const millimetres = above0(0.001, 1e5);
const metres = above0(0.01, 1e5);
const squareMetres = above0(1e-4, 1e6);
const cubicMetres = above0(0.001, 1e7);
const squareMillimetresPerMetre = from0(1e7);
const conductivity = above0(1e-6, 1e4);
const density = above0(0.001, 1e5);
const specificHeat = above0(0.01, 1e6);
const transmittance = above0(1e-4, 1000);
const resistance = from0(1000);
const airChanges = from0(1000);
const divisor = above0(0.1, 1000);
const watts = from0(1e7);
const celsius = between(-100, 100);
const kelvin = between(-100, 100);
const name = z.string().min(1).max(200);
const timeZone = z
  .string()
  .refine(isZone, { error: 'an IANA time zone such as "Europe/London" or "UTC"' })
  .describe('IANA time zone, for example "Europe/London"');
const localDate = z
  .string()
  .refine((text) => text.length === 10 && isLocalTime(text), { error: 'a date such as "2027-01-09"' })
  .describe("a date in the house's zone, YYYY-MM-DD");
const localTime = z
  .string()
  .refine(isLocalTime, { error: 'a date, or a date and time such as "2027-01-09T21:00"' })
  .describe("a date or a date and time in the house's zone, YYYY-MM-DD or YYYY-MM-DDThh:mm");
const file = z
  .string()
  .min(1)
  .refine(isInsideFolder, { error: 'a file inside the house folder, without ".." and not from the root' })
  .describe('a file of the house folder');

const columns = z
  .strictObject({
    time: name.optional(),
    date: name.optional().describe('when the date stands in a column apart from the time'),
    temperature: name.optional(),
    humidity: name.optional(),
    windSpeed: name.optional(),
    irradiance: name.optional(),
    power: name.optional(),
    energy: name.optional(),
    meter: name.optional(),
  })
  .describe('which column of the file holds what, by its header');

const answers = z
  .strictObject({
    dateOrder: z.enum(['day-first', 'month-first', 'year-first']).optional(),
    decimal: z.enum(['.', ',']).optional(),
    unit: z.enum(['C', 'F', 'K']).optional(),
    serialFrom: z
      .literal([1900, 1904])
      .optional()
      .describe('the year from which a spreadsheet counted the days'),
    stamp: z
      .enum(['start', 'end'])
      .optional()
      .describe('which end of its interval a mean or an energy is stamped at; end when left out'),
  })
  .describe('answers to what the file does not say');

/** How any CSV of the house is to be read; shared by loggers, weather and heat. */
const reading = {
  continuedIn: z
    .array(file)
    .optional()
    .describe(
      'later exports of the same logger; where two give an instant, the file named first is believed',
    ),
  columns: columns.optional(),
  timeZone: timeZone.optional().describe('when the file is not in local time, for example "UTC"'),
  clockOffsetMin: between(-1e8, 1e8)
    .optional()
    .describe("minutes added to the file's clock to give true time"),
  read: answers.optional(),
};

const inOrder = ({ from, to }: { from: string; to: string }) => from <= to;
const order = { path: ['to'], error: 'a time that is not before "from"' };
const span = z
  .strictObject({ from: localTime, to: localTime, why: z.string().optional() })
  .refine(inOrder, order);

const logger = z.strictObject({
  file,
  place: z.enum(['inside', 'outside', 'void', 'surface', 'adjacent']),
  room: name.optional(),
  volumeM3: cubicMetres.optional(),
  element: name.optional().describe('the element that a surface, adjacent or void logger belongs to'),
  temperatureOffsetK: kelvin.optional().describe("added to the logger's readings"),
  putBack: z.array(span).optional(),
  leaveOut: z.array(span).optional(),
  ...reading,
});

const weather = z.strictObject({ file, ...reading });

const ofPower = (unit: string) => unit === 'W' || unit === 'kW';

const heat = z
  .strictObject({
    file: file.optional(),
    kind: z
      .enum(['power', 'energy', 'meter'])
      .optional()
      .describe('power in W, energy = kWh per interval, meter = running kWh reading'),
    part: fraction.optional().describe('the share of it that warms the house; 1 when left out'),
    unit: z
      .enum(['W', 'kW', 'Wh', 'kWh', 'MWh', 'm3'])
      .optional()
      .describe(
        'of its readings, where the file says none or another: W or kW of a power, the others of energy',
      ),
    kWhPerUnit: above0(1e-4, 1e4).optional(),
    from: localTime.optional(),
    to: localTime.optional(),
    energyKWh: from0(1e6).optional(),
    powerW: watts.optional(),
    plusMinusPercent: from0(100).optional(),
    ...reading,
  })
  .superRefine((entry, context) => {
    const fail = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (entry.file !== undefined) {
      if (entry.kind === undefined) fail('kind', '"power", "energy" or "meter" beside the file');
      for (const key of ['from', 'to', 'energyKWh', 'powerW', 'plusMinusPercent'] as const)
        if (entry[key] !== undefined)
          fail(key, 'either a file, or from, to and energyKWh or powerW; not both');
      if (
        entry.unit !== undefined &&
        entry.kind !== undefined &&
        ofPower(entry.unit) !== (entry.kind === 'power')
      )
        fail(
          'unit',
          entry.kind === 'power' ? '"W" or "kW" for a power' : '"Wh", "kWh", "MWh" or "m3" for energy',
        );
      if (entry.unit === 'm3' && entry.kWhPerUnit === undefined)
        fail('kWhPerUnit', 'the kWh in a cubic metre, from the gas bill, beside "unit": "m3"');
      return;
    }
    if (entry.from === undefined) fail('from', 'a file, or when the heater went on');
    if (entry.to === undefined) fail('to', 'a file, or when the heater went off');
    if ((entry.energyKWh === undefined) === (entry.powerW === undefined))
      fail('energyKWh', 'exactly one of energyKWh and powerW');
    if (entry.from !== undefined && entry.to !== undefined && entry.from >= entry.to)
      fail('to', 'a time after "from"');
    for (const key of ['kind', 'unit', 'kWhPerUnit', 'columns', 'continuedIn', 'read'] as const)
      if (entry[key] !== undefined) fail(key, 'only beside a file');
  });

const bridge = z
  .strictObject({
    name,
    widthMm: millimetres.optional(),
    spacingMm: millimetres.optional(),
    extraFraction: fraction.optional().describe('plates, noggins, doubled members'),
    fraction: fraction.optional().describe('the bridged part outright, instead of width and spacing'),
    continues: z
      .boolean()
      .optional()
      .describe('the same members as in the bridged layer before it, not others that cross them'),
    conductivityWmK: conductivity,
    densityKgM3: density.optional(),
    specificHeatJkgK: specificHeat.optional(),
  })
  .superRefine((timber, context) => {
    const fail = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const { widthMm, spacingMm, extraFraction = 0 } = timber;
    if (timber.fraction !== undefined) {
      if (widthMm !== undefined || spacingMm !== undefined || timber.extraFraction !== undefined)
        fail('fraction', 'either a fraction, or widthMm and spacingMm; not both');
    } else if (widthMm === undefined || spacingMm === undefined) {
      fail(widthMm === undefined ? 'widthMm' : 'spacingMm', 'widthMm and spacingMm, or a fraction outright');
    } else if (widthMm > spacingMm) {
      fail('widthMm', `a width no greater than the spacing of ${spacingMm} mm`);
    } else if (widthMm / spacingMm + extraFraction > 1) {
      fail('extraFraction', 'a bridged part of at most 1 in all');
    }
  });

const layer = z
  .strictObject({
    name,
    thicknessMm: millimetres.optional(),
    conductivityWmK: conductivity.optional(),
    densityKgM3: density.optional(),
    specificHeatJkgK: specificHeat.optional(),
    resistanceM2KW: resistance.optional().describe('stated outright instead of a conductivity'),
    air: z.enum(['unventilated', 'slightly', 'ventilated']).optional(),
    openingMm2PerM: squareMillimetresPerMetre.optional().describe('openings of an air layer, mm² per metre'),
    widthMm: millimetres.optional().describe('of a small or divided air space, across the flow of heat'),
    emissivity: above0(0.001, 1)
      .optional()
      .describe('of the brighter face of an air layer; about 0.9 when left out'),
    bridge: bridge.optional(),
    vapourResistance: above0(1e-4, 1e9).optional().describe('vapour resistance factor mu'),
    sdM: from0(1e6).optional().describe('equivalent air layer thickness'),
  })
  .superRefine((it, context) => {
    const fail = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const ways = [it.conductivityWmK, it.resistanceM2KW, it.air].filter((way) => way !== undefined).length;
    if (ways !== 1) fail('conductivityWmK', 'exactly one of conductivityWmK, resistanceM2KW and air');
    if (it.thicknessMm === undefined && it.resistanceM2KW === undefined)
      fail('thicknessMm', 'the thickness of the layer in millimetres');
    if (it.bridge !== undefined && (it.air === 'ventilated' || it.thicknessMm === undefined))
      fail('bridge', 'a bridge only in a layer that has a thickness and is not a ventilated space');
    for (const key of ['openingMm2PerM', 'widthMm', 'emissivity'] as const)
      if (it[key] !== undefined && it.air === undefined) fail(key, 'only in an air layer');
  });

/** More than any wall has; what follows takes long with many. */
const mostLayers = 100;

function notTooMany(layers: readonly z.infer<typeof layer>[], context: z.RefinementCtx) {
  if (layers.length > mostLayers)
    context.addIssue({ code: 'custom', message: `at most ${mostLayers} layers` });
}

/** A bridge continues that of a layer further inside, so there must be one. */
function bridgesContinueSomething(layers: readonly z.infer<typeof layer>[], context: z.RefinementCtx) {
  const first = layers.findIndex((it) => it.bridge !== undefined);
  if (first >= 0 && layers[first].bridge?.continues)
    context.addIssue({
      code: 'custom',
      path: [first, 'bridge', 'continues'],
      message: 'a bridged layer further inside whose members go on here',
    });
}

const elementBuildUp = z.strictObject({
  facing: z
    .enum(['up', 'across', 'down'])
    .optional()
    .describe('the way heat flows: up (roof), across (wall), down (floor); across when left out'),
  layers: z
    .array(layer)
    .min(1)
    .superRefine(bridgesContinueSomething)
    .superRefine(notTooMany)
    .describe('from inside to outside'),
});

const shelter = z.enum(['sheltered', 'average', 'exposed']).describe('from the wind; average when left out');

const edgeInsulation = z
  .strictObject({
    lies: z.enum(['flat', 'upright']).describe('flat under or on the slab, or upright along its edge'),
    reachMm: millimetres.describe('how far it reaches from the edge inward, or down'),
    thicknessMm: millimetres,
    conductivityWmK: conductivity,
  })
  .describe('along the edge of a slab on ground');

const underfloor = z
  .strictObject({
    heightMm: from0(1e5).optional().describe('of the floor above ground outside; 300'),
    wallUValue: transmittance.optional().describe('of the wall below the floor, W/(m²K); 1.7'),
    openingMm2PerM: squareMillimetresPerMetre.optional().describe('ventilation openings per metre; 1500'),
    windSpeedMS: above0(0.001, 200).optional().describe('mean, 10 m above ground; 5'),
    shelter: shelter.optional(),
    groundResistanceM2KW: resistance.optional().describe('of insulation on the ground; 0'),
  })
  .describe('the ventilated space under a suspended floor');

/** Of a house by ISO 13790:2008, Table 12, of an element by ISO 52016-1:2017, Table B.14. */
export const massClasses = ['very light', 'light', 'medium', 'heavy', 'very heavy'] as const;

/** What a limiting U-value may be for. */
export const limitKinds = [
  'roof',
  'wall',
  'floor',
  'party wall',
  'window',
  'roof window',
  'rooflight',
  'door',
] as const;

const limits = z
  .strictObject({
    name: name.describe('of the table, as it is to be shown'),
    dated: localDate.describe("the day of the table's text"),
    note: z.string().max(1000).optional().describe('shown beside its figures'),
    uValues: z
      .strictObject({
        roof: transmittance.optional(),
        wall: transmittance.optional(),
        floor: transmittance.optional(),
        'party wall': transmittance.optional(),
        window: transmittance.optional(),
        'roof window': transmittance.optional(),
        rooflight: transmittance.optional(),
        door: transmittance.optional(),
      } satisfies Record<(typeof limitKinds)[number], unknown>)
      .describe('by kind of element, W/(m²K)'),
  })
  .describe('limiting U-values to set beside those of the elements, instead of the example; no verdict');

const element = z
  .strictObject({
    name,
    areaM2: squareMetres,
    uValue: transmittance
      .optional()
      .describe('transmittance, W/(m²K); beside layers it stands instead of theirs'),
    buildUp: elementBuildUp.optional(),
    gValue: fraction.optional().describe('total solar energy transmittance of a window'),
    orientationDeg: between(0, 360).optional().describe('from north, clockwise'),
    tiltDeg: between(0, 180).optional().describe('0 = faces the sky, 90 = upright'),
    to: z.enum(['outside', 'ground', 'adjacent', 'void']).optional().describe('outside when left out'),
    temperatureFactor: fraction.optional(),
    room: name.optional(),
    massClass: z
      .enum(massClasses)
      .optional()
      .describe('of ISO 52016-1, where no layers tell what it stores; very light when left out'),
    limitKind: z
      .enum(limitKinds)
      .optional()
      .describe('which limiting U-value to set beside its own, where the one proposed is not the right one'),
    perimeterM: metres.optional().describe('exposed perimeter of a ground floor'),
    soil: z.enum(['clay', 'sand', 'rock']).optional().describe('under a ground floor; clay when left out'),
    wallThicknessMm: millimetres.optional().describe('of the walls around a ground floor; 300 when left out'),
    edgeInsulation: edgeInsulation.optional(),
    underfloor: underfloor.optional(),
    airGapLevel: z.union([z.literal(0), z.literal(1), z.literal(2)]).optional(),
    fasteners: z
      .strictObject({
        perM2: above0(0.001, 1e4),
        areaMm2: above0(0.001, 1e6),
        conductivityWmK: conductivity,
        depthMm: millimetres.optional().describe('of a recessed one within the insulation; all of it else'),
      })
      .optional(),
  })
  .superRefine((it, context) => {
    const fail = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (it.uValue === undefined && it.buildUp === undefined) fail('uValue', 'a uValue, or a buildUp');
    for (const key of ['edgeInsulation', 'underfloor'] as const)
      if (it[key] !== undefined && (it.to !== 'ground' || it.perimeterM === undefined))
        fail(key, 'only in a floor "to": "ground" with its "perimeterM"');
    if (it.edgeInsulation !== undefined && it.underfloor !== undefined)
      fail('edgeInsulation', 'only without underfloor: a suspended floor has no slab edge');
  });

/** Where two elements meet; `fabric/junctions.ts` has a default for each. */
export const junctionKinds = [
  'lintel',
  'sill',
  'jamb',
  'ground-floor',
  'intermediate-floor',
  'eaves',
  'eaves-of-warm-roof',
  'gable',
  'gable-of-warm-roof',
  'ridge',
  'corner',
  'inner-corner',
  'party-wall',
] as const;

const junction = z
  .strictObject({
    name: name.optional(),
    kind: z.enum(junctionKinds).optional().describe('for a default where psiWmK is not given'),
    lengthM: metres,
    psiWmK: between(-100, 100).optional().describe('linear thermal transmittance'),
  })
  .superRefine((it, context) => {
    if (it.kind === undefined && it.psiWmK === undefined)
      context.addIssue({ code: 'custom', path: ['psiWmK'], message: 'a psiWmK, or a kind with a default' });
  });

const thermalBridges = z
  .strictObject({
    psiLengthWK: between(-1e6, 1e6).optional(),
    yValue: from0(100).optional(),
    junctions: z.array(junction).min(1).optional(),
  })
  .refine((it) => [it.psiLengthWK, it.yValue, it.junctions].filter((way) => way !== undefined).length === 1, {
    error: 'exactly one of psiLengthWK, yValue and junctions',
  });

const partition = z.strictObject({
  name,
  areaM2: squareMetres.describe('of one face'),
  buildUp: z.strictObject({
    facing: z.enum(['up', 'across', 'down']).optional(),
    layers: z.array(layer).superRefine(notTooMany),
  }),
});

const stage = z
  .strictObject({
    name,
    from: localTime,
    to: localTime,
    missing: z.array(name).optional().describe('elements that are not there yet'),
    complete: z.boolean().optional(),
  })
  .superRefine((it, context) => {
    if (it.from >= it.to) context.addIssue({ code: 'custom', path: ['to'], message: 'a time after "from"' });
  });

const ventilation = z
  .strictObject({
    airChangesPerHour: airChanges.optional(),
    asTestedAirChangesPerHour: airChanges.optional().describe('vents shut, fans off'),
    airPermeability50: from0(1e4).optional().describe('m³/(h·m²) at 50 Pa over all exposed area'),
    plusMinusPercent: from0(100).optional().describe('of airChangesPerHour; 30 when left out'),
    divisor: divisor
      .optional()
      .describe(
        'from 50 Pa to everyday pressure; 20 when left out, times what shelter and storeys make of it',
      ),
    divisorLow: divisor.optional().describe('the divisor of a leakier everyday; half of it when left out'),
    divisorHigh: divisor.optional().describe('of a tighter one; one and a half of it when left out'),
    shelter: shelter.optional(),
    storeys: above0(0.1, 10).optional(),
    mechanicalAirChangesPerHour: airChanges
      .optional()
      .describe('through the ventilation unit, beside the rest; then only these give heat back'),
    heatRecovery: fraction.optional(),
  })
  .superRefine((it, context) => {
    const fail = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if ((it.airChangesPerHour === undefined) === (it.airPermeability50 === undefined))
      fail('airChangesPerHour', 'exactly one of airChangesPerHour and airPermeability50');
    for (const key of ['divisor', 'divisorLow', 'divisorHigh', 'shelter', 'storeys'] as const)
      if (it[key] !== undefined && it.airPermeability50 === undefined)
        fail(key, 'only beside airPermeability50');
    if (it.divisor !== undefined)
      for (const key of ['shelter', 'storeys'] as const)
        if (it[key] !== undefined) fail(key, 'only without divisor, which stands for it');
    if (it.plusMinusPercent !== undefined && it.airChangesPerHour === undefined)
      fail('plusMinusPercent', 'only beside airChangesPerHour');
    const { divisor, divisorLow, divisorHigh } = it;
    for (const key of ['divisorLow', 'divisorHigh'] as const)
      if (it[key] !== undefined && divisor === undefined) fail(key, 'only beside divisor');
    if (divisor !== undefined && divisorLow !== undefined && divisorLow > divisor)
      fail('divisorLow', `a divisor of at most ${divisor}`);
    if (divisor !== undefined && divisorHigh !== undefined && divisorHigh < divisor)
      fail('divisorHigh', `a divisor of at least ${divisor}`);
  });

const heatCapacity = z
  .strictObject({
    kJPerM2K: above0(0.001, 1e6).optional().describe('per floor area'),
    class: z.enum(massClasses).optional().describe('of ISO 13790, per floor area'),
  })
  .refine((it) => (it.kJPerM2K === undefined) !== (it.class === undefined), {
    error: 'exactly one of kJPerM2K and class',
  });

export const houseSchema = z
  .strictObject({
    name,
    location: z.strictObject({
      latitude: between(-90, 90).describe('degrees, north positive'),
      longitude: between(-180, 180).describe('degrees, east positive'),
      timeZone,
    }),
    floorAreaM2: squareMetres.optional(),
    volumeM3: cubicMetres.optional(),
    loggers: z.array(logger).describe('at least one, unless conditions.insideC stands for them'),
    coLocation: z.strictObject({ from: localTime, to: localTime }).refine(inOrder, order).optional(),
    weather: z.array(weather).optional(),
    heat: z.array(heat).optional(),
    nights: z
      .array(z.strictObject({ date: localDate, used: z.boolean(), why: z.string().optional() }))
      .optional(),
    notes: z.array(z.strictObject({ at: localTime, text: z.string() })).optional(),
    conditions: z
      .strictObject({
        ventsClosed: z.boolean().optional(),
        openToNeighbour: z.boolean().optional(),
        neighbour: z.strictObject({ temperatureC: celsius, plusMinusK: from0(100).optional() }).optional(),
        wetTradesWithinWeeks: from0(1e4).optional(),
        insideC: celsius
          .optional()
          .describe('a constant inside temperature, when none was logged: metered days are reckoned with it'),
      })
      .optional(),
    constantGainsW: watts.optional(),
    stages: z.array(stage).min(1).optional(),
    elements: z.array(element).min(1).optional(),
    partitions: z.array(partition).optional(),
    thermalBridges: thermalBridges.optional(),
    ventilation: ventilation.optional(),
    allowance: from0(100)
      .optional()
      .describe('how far above the design still counts as meeting it; 0.15 when left out'),
    heatCapacity: heatCapacity.optional(),
    limits: limits.optional(),
  })
  .superRefine((house, context) => {
    const fail = (path: (string | number)[], message: string) =>
      context.addIssue({ code: 'custom', path, message });
    if (house.loggers.length === 0 && house.conditions?.insideC === undefined)
      fail(['loggers'], 'at least one logger, or conditions.insideC where nothing was logged inside');
    if (house.heatCapacity !== undefined && house.floorAreaM2 === undefined)
      fail(['floorAreaM2'], 'the floor area, because heatCapacity is given per floor area');
    if (house.ventilation !== undefined && house.volumeM3 === undefined)
      fail(['volumeM3'], 'the heated volume, because ventilation is given');
    const elements = new Set((house.elements ?? []).map((it) => it.name));
    const needElement = (path: (string | number)[], wanted: string | undefined) => {
      if (wanted !== undefined && !elements.has(wanted)) fail(path, 'the name of one of the elements');
    };
    house.loggers.forEach((it, i) => {
      needElement(['loggers', i, 'element'], it.element);
    });
    house.stages?.forEach((it, i) => {
      it.missing?.forEach((wanted, k) => {
        needElement(['stages', i, 'missing', k], wanted);
      });
    });
    const unique = (key: 'stages' | 'elements', what: string) => {
      const seen = new Set<string>();
      house[key]?.forEach((it, i) => {
        if (seen.has(it.name)) fail([key, i, 'name'], `a name that no other ${what} has`);
        seen.add(it.name);
      });
    };
    unique('stages', 'stage');
    unique('elements', 'element');
  });

export type House = z.infer<typeof houseSchema>;
export type Logger = House['loggers'][number];
export type WeatherFile = NonNullable<House['weather']>[number];
export type HeatEntry = NonNullable<House['heat']>[number];
export type StageEntry = NonNullable<House['stages']>[number];
export type DesignElement = NonNullable<House['elements']>[number];
export type Partition = NonNullable<House['partitions']>[number];
export type Layer = Partition['buildUp']['layers'][number];
export type Bridge = NonNullable<Layer['bridge']>;
export type HeatFlow = 'up' | 'across' | 'down';
export type JunctionKind = (typeof junctionKinds)[number];
export type MassClass = (typeof massClasses)[number];
export type LimitKind = (typeof limitKinds)[number];
