/** A schema of a route -> values that it means, so that what lies behind it is reached too. */
import fc from 'fast-check';
import { z } from 'zod';
import { junk } from './mutated.ts';

/** The part of JSON Schema that the routes' schemas come to. */
interface JsonSchema {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly items?: JsonSchema | boolean;
  readonly prefixItems?: readonly JsonSchema[];
  readonly additionalItems?: JsonSchema;
  readonly anyOf?: readonly JsonSchema[];
  readonly enum?: readonly unknown[];
  readonly format?: string;
  readonly minimum?: number;
  readonly maximum?: number;
}

export const valuesOf = (schema: z.ZodType): fc.Arbitrary<unknown> =>
  arbitraryOf(z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any' }) as JsonSchema);

const texts = fc.oneof(
  fc.constantFrom(
    'Test house',
    'Hall',
    'in.csv',
    'logs/out.csv',
    'Temperature (°C)',
    'before',
    'x',
    '2027-01-10',
  ),
  fc.constantFrom(
    '2027-01-10T12:00',
    '2027-01-11T06:00',
    '2027-01-10T12:00:00Z',
    '2027-01-12T00:00+01:00',
    '10',
    '1e3',
  ),
  fc.string({ maxLength: 30, unit: 'binary' }),
);

function arbitraryOf(schema: JsonSchema): fc.Arbitrary<unknown> {
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
  if (schema.anyOf !== undefined) return fc.oneof(...schema.anyOf.map(arbitraryOf));
  switch (schema.type) {
    case 'object':
      return objects(schema);
    case 'array':
      return lists(schema);
    case 'string':
      return schema.format === 'date'
        ? fc.constantFrom('2027-01-10', '2027-12-31', '0001-01-01')
        : schema.format === 'date-time'
          ? fc.constantFrom('2027-01-13T12:00:00Z', '2027-01-13T12:10:00+01:00')
          : texts;
    case 'number':
    case 'integer': {
      const [low, high] = [Math.max(schema.minimum ?? -1e12, -1e15), Math.min(schema.maximum ?? 1e12, 1e15)];
      return fc.oneof(
        fc.integer({ min: Math.ceil(Math.max(low, -2e9)), max: Math.floor(Math.min(high, 2e9)) }),
        fc.constantFrom(low, high, 1_800_000_000),
      );
    }
    case 'boolean':
      return fc.boolean();
    case 'null':
      return fc.constant(null);
    default:
      return junk;
  }
}

const objects = ({ properties = {}, required = [] }: JsonSchema) =>
  fc.record(Object.fromEntries(Object.entries(properties).map(([key, it]) => [key, arbitraryOf(it)])), {
    requiredKeys: [...required],
  });

function lists({ items, prefixItems, additionalItems }: JsonSchema): fc.Arbitrary<unknown> {
  const rest = typeof items === 'object' ? items : (additionalItems ?? {});
  if (prefixItems !== undefined)
    return fc
      .tuple(fc.tuple(...prefixItems.map(arbitraryOf)), fc.array(arbitraryOf(rest), { maxLength: 2 }))
      .map(([first, more]) => [...first, ...more]);
  return fc.array(arbitraryOf(rest), { minLength: 1, maxLength: 4 });
}
