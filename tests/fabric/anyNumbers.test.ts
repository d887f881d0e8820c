/** Whatever numbers the schema accepts, the design has an answer, and every figure of it is finite. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { z } from 'zod';
import { designOf } from '../../src/fabric/design.ts';
import { designHeatLoad } from '../../src/fabric/heatLoad.ts';
import { houseSchema } from '../../src/house.ts';
import { say } from '../../src/words/index.ts';

/** All that the design reads, each key at least once; the numbers are only to be replaced. */
const house = {
  name: 'Invented house',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  floorAreaM2: 96,
  volumeM3: 240,
  loggers: [{ file: 'inside.csv', place: 'inside' }],
  conditions: { neighbour: { temperatureC: 20, plusMinusK: 2 } },
  elements: [
    {
      name: 'Roof',
      areaM2: 80,
      airGapLevel: 1,
      fasteners: { perM2: 2.5, areaMm2: 12.5, conductivityWmK: 17, depthMm: 40 },
      buildUp: {
        facing: 'up',
        layers: [
          {
            name: 'board',
            thicknessMm: 15,
            conductivityWmK: 0.25,
            densityKgM3: 900,
            specificHeatJkgK: 1000,
          },
          {
            name: 'wool',
            thicknessMm: 140,
            conductivityWmK: 0.035,
            densityKgM3: 25,
            specificHeatJkgK: 1030,
            bridge: {
              name: 'rafter',
              widthMm: 45,
              spacingMm: 600,
              extraFraction: 0.01,
              conductivityWmK: 0.13,
              densityKgM3: 500,
              specificHeatJkgK: 1600,
            },
          },
          {
            name: 'wool between battens',
            thicknessMm: 50,
            resistanceM2KW: 1.4,
            densityKgM3: 25,
            specificHeatJkgK: 1030,
            bridge: { name: 'batten', fraction: 0.1, conductivityWmK: 0.13 },
          },
          {
            name: 'space',
            thicknessMm: 20,
            air: 'slightly',
            openingMm2PerM: 900,
            widthMm: 60,
            emissivity: 0.2,
          },
          { name: 'deck', resistanceM2KW: 0.2 },
        ],
      },
    },
    {
      name: 'Wall',
      areaM2: 120,
      buildUp: {
        layers: [
          {
            name: 'space',
            thicknessMm: 30,
            air: 'unventilated',
            bridge: { name: 'batten', fraction: 0.1, conductivityWmK: 0.13 },
          },
          {
            name: 'block',
            thicknessMm: 100,
            conductivityWmK: 1.1,
            densityKgM3: 2000,
            specificHeatJkgK: 1000,
          },
        ],
      },
    },
    {
      name: 'Slab',
      areaM2: 40,
      to: 'ground',
      perimeterM: 18,
      wallThicknessMm: 300,
      edgeInsulation: { lies: 'upright', reachMm: 600, thicknessMm: 50, conductivityWmK: 0.035 },
      buildUp: { layers: [{ name: 'foam', thicknessMm: 100, conductivityWmK: 0.025 }] },
    },
    {
      name: 'Suspended floor',
      areaM2: 30,
      to: 'ground',
      perimeterM: 20,
      underfloor: {
        heightMm: 300,
        wallUValue: 1.7,
        openingMm2PerM: 1500,
        windSpeedMS: 5,
        groundResistanceM2KW: 0.5,
      },
      buildUp: { layers: [{ name: 'wool', thicknessMm: 150, conductivityWmK: 0.04 }] },
    },
    { name: 'Windows', areaM2: 18, uValue: 1.2, gValue: 0.5, orientationDeg: 180, tiltDeg: 90 },
    { name: 'Loft ceiling', areaM2: 20, uValue: 0.25, to: 'void', temperatureFactor: 0.9 },
    { name: 'Party wall', areaM2: 30, uValue: 0.5, to: 'adjacent' },
  ],
  partitions: [
    {
      name: 'Stud walls',
      areaM2: 90,
      buildUp: {
        layers: [
          {
            name: 'board',
            thicknessMm: 12.5,
            conductivityWmK: 0.25,
            densityKgM3: 900,
            specificHeatJkgK: 1000,
          },
        ],
      },
    },
  ],
  thermalBridges: {
    junctions: [
      { kind: 'jamb', lengthM: 30 },
      { psiWmK: 0.05, lengthM: 12 },
    ],
  },
  ventilation: {
    airPermeability50: 4,
    divisor: 20,
    divisorLow: 10,
    divisorHigh: 30,
    mechanicalAirChangesPerHour: 0.3,
    heatRecovery: 0.8,
    asTestedAirChangesPerHour: 0.2,
  },
};

type Path = readonly (string | number)[];

interface Place {
  readonly path: Path;
  readonly least: number;
  readonly most: number;
}

const isRecord = (it: unknown): it is Record<string, unknown> => typeof it === 'object' && it !== null;
const step = (schema: unknown, part: string | number): unknown => {
  if (!isRecord(schema)) return undefined;
  const { properties, items } = schema;
  return typeof part === 'number' ? items : isRecord(properties) ? properties[part] : undefined;
};

/** Every number of the house, with the bounds that the schema gives it. */
function placesIn(value: unknown, schema: unknown, path: Path = []): Place[] {
  if (typeof value === 'number') {
    if (!isRecord(schema) || typeof schema.maximum !== 'number') return [];
    return [{ path, least: Number(schema.minimum ?? schema.exclusiveMinimum), most: schema.maximum }];
  }
  if (Array.isArray(value)) return value.flatMap((it, i) => placesIn(it, step(schema, i), [...path, i]));
  if (!isRecord(value)) return [];
  return Object.entries(value).flatMap(([key, it]) => placesIn(it, step(schema, key), [...path, key]));
}

const replaced = (value: unknown, path: Path, by: number): unknown => {
  const [part, ...rest] = path;
  if (part === undefined) return by;
  if (Array.isArray(value)) return value.map((it, i) => (i === part ? replaced(it, rest, by) : it));
  return isRecord(value) ? { ...value, [part]: replaced(value[part], rest, by) } : value;
};

/** Either bound, or anything between, small magnitudes as likely as large ones. */
const numberFor = ({ least, most }: Place) =>
  fc.oneof(
    fc.constantFrom(least, most),
    fc
      .double({ min: Math.log(Math.max(least, 5e-324)), max: Math.log(most), noNaN: true })
      .map((it) => Math.min(most, Math.max(least, Math.exp(it)))),
  );

function notFinite(value: unknown, path = ''): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  return isRecord(value) ? Object.entries(value).flatMap(([key, it]) => notFinite(it, `${path}.${key}`)) : [];
}

/** What excludes a key of the house above. */
const others = {
  'by junctions, leakage and layers': {},
  'by a y-value, air changes and a stated capacity': {
    thermalBridges: { yValue: 0.05 },
    ventilation: { airChangesPerHour: 0.5, plusMinusPercent: 30, heatRecovery: 0.8 },
    heatCapacity: { kJPerM2K: 110 },
  },
  'by stated bridges, leakage and a class': {
    thermalBridges: { psiLengthWK: 6.5 },
    ventilation: { airPermeability50: 4, shelter: 'sheltered', storeys: 2 },
    heatCapacity: { class: 'heavy' },
  },
};
const schema = z.toJSONSchema(houseSchema, { io: 'input' });

test.each(Object.entries(others))(
  'a house %s has a finite design, a heat load and sentences, whatever its numbers',
  (_, other) => {
    const whole = { ...house, ...other };
    const places = placesIn(whole, schema);
    expect(houseSchema.safeParse(whole).error).toBeUndefined();
    expect(places.length).toBeGreaterThan(70);
    let designs = 0;
    fc.assert(
      fc.property(
        fc
          .array(fc.constantFrom(...places), { minLength: 1, maxLength: 12 })
          .chain((chosen) =>
            fc.tuple(...chosen.map((place) => numberFor(place).map((by) => ({ path: place.path, by })))),
          ),
        (changes) => {
          const changed = changes.reduce<unknown>((it, { path, by }) => replaced(it, path, by), whole);
          const checked = houseSchema.safeParse(changed);
          if (!checked.success) return;
          designs += 1;
          const design = designOf(checked.data);
          if (design === null) throw new Error('the house has elements');
          const load = designHeatLoad(design, { insideTemperature: 20, outsideTemperature: 0 });
          expect(notFinite({ design, load })).toEqual([]);
          const findings = [...design.findings, ...design.elements.flatMap((it) => it.findings)];
          expect(findings.map((it) => say(it).text).filter((it) => /NaN|Infinity/.test(it))).toEqual([]);
        },
      ),
      { numRuns: 700 },
    );
    // A few are refused for a relation between two numbers, such as a member wider than its spacing.
    expect(designs).toBeGreaterThan(200);
  },
);
