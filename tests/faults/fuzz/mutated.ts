/** Bytes that were something, and are not quite so any more. */
import fc from 'fast-check';

type Edit =
  | { readonly kind: 'set'; readonly at: number; readonly to: number }
  | { readonly kind: 'cut' | 'twice'; readonly at: number; readonly length: number }
  | { readonly kind: 'insert'; readonly at: number; readonly bytes: Uint8Array }
  | { readonly kind: 'end'; readonly at: number };

const at = fc.nat(1_000_000);
const edit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({ kind: fc.constant('set' as const), at, to: fc.nat(255) }),
  fc.record({ kind: fc.constantFrom('cut' as const, 'twice' as const), at, length: fc.nat(300) }),
  fc.record({ kind: fc.constant('insert' as const), at, bytes: fc.uint8Array({ maxLength: 40 }) }),
  fc.record({ kind: fc.constant('insert' as const), at, bytes: fc.constantFrom(...hostile()) }),
  fc.record({ kind: fc.constant('end' as const), at }),
);

/** What readers of text trip over. */
function hostile(): Uint8Array[] {
  const texts = [
    '\0',
    '"',
    '\r',
    '\n\n\n',
    ';;;;',
    '1e999',
    '-',
    'NaN',
    '\uFEFF',
    '9'.repeat(400),
    '","',
    '[[[[',
    '{',
  ];
  return texts.map((text) => new TextEncoder().encode(text));
}

/** One of these with up to twelve edits. */
export const mutated = (bases: readonly Uint8Array[]): fc.Arbitrary<Uint8Array> =>
  fc
    .tuple(fc.constantFrom(...bases), fc.array(edit, { maxLength: 12 }))
    .map(([base, edits]) => edits.reduce(edited, base));

function edited(bytes: Uint8Array, edit: Edit): Uint8Array {
  const at = bytes.length === 0 ? 0 : edit.at % bytes.length;
  const joined = (...parts: Uint8Array[]) => Uint8Array.from(parts.flatMap((part) => [...part]));
  switch (edit.kind) {
    case 'set':
      return joined(bytes.subarray(0, at), Uint8Array.of(edit.to), bytes.subarray(at + 1));
    case 'cut':
      return joined(bytes.subarray(0, at), bytes.subarray(at + edit.length));
    case 'twice':
      return joined(bytes.subarray(0, at + edit.length), bytes.subarray(at));
    case 'insert':
      return joined(bytes.subarray(0, at), edit.bytes, bytes.subarray(at));
    case 'end':
      return bytes.slice(0, at);
  }
}

/** Values that no schema means. */
export const junk: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    '',
    0,
    -1,
    0.5,
    1e308,
    -1e308,
    2 ** 53,
    8.64e12,
    -8.64e12,
    8.64e15,
    5e-324,
    true,
    'x'.repeat(3000),
    '\0',
    '\uD800',
    '../../../etc/passwd',
    '2027-02-30',
    '9999-99-99T99:99',
    '+275760-09-13T00:00',
    '__proto__',
    'constructor',
    [],
    {},
    nested(90),
    nested(500),
  ),
  fc.jsonValue({ maxDepth: 3 }),
);

function nested(depth: number): unknown {
  let value: unknown = 1;
  for (let i = 0; i < depth; i++) value = i % 2 === 0 ? [value] : { a: value };
  return value;
}

/** A JSON value with up to three of its parts replaced by junk, taken out or renamed. */
export const spoilt = (base: unknown): fc.Arbitrary<unknown> =>
  fc
    .array(fc.tuple(fc.nat(), fc.constantFrom('replace', 'replace', 'remove', 'rename'), junk), {
      maxLength: 3,
    })
    .map((edits) => edits.reduce<unknown>((value, [n, how, by]) => spoiltAt(value, n, how, by), base));

function spoiltAt(value: unknown, n: number, how: string, by: unknown): unknown {
  const copy: unknown = structuredClone(value);
  const places = placesIn(copy);
  if (places.length === 0) return by;
  const { of, key } = places[n % places.length];
  if (how === 'replace') of[key] = by;
  else {
    if (how === 'rename') of[`${key}x`] = of[key];
    delete of[key];
  }
  return copy;
}

type Holder = Record<string, unknown>;

/** Deeper ones are of the junk that was put in. */
const DEEPEST = 8;

function placesIn(value: unknown, depth = 0): { of: Holder; key: string }[] {
  if (typeof value !== 'object' || value === null || depth > DEEPEST) return [];
  const of = value as Holder;
  return Object.keys(of).flatMap((key) => [{ of, key }, ...placesIn(of[key], depth + 1)]);
}
