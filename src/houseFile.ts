/** The text of `house.json` -> a house, or everything that is wrong with it at once, each with its place. */
import { closest, distance } from 'fastest-levenshtein';
import { findNodeAtLocation, type Node, type ParseError, parseTree, printParseErrorCode } from 'jsonc-parser';
import type { z } from 'zod';
import type { Where } from './assessment.ts';
import { type House, houseSchema } from './house.ts';

export type HouseProblem = { readonly where: Where } & (
  | { readonly code: 'json-broken'; readonly what: string }
  | {
      readonly code: 'key-unknown';
      readonly key: string;
      readonly nearest: string | null;
      readonly known: readonly string[];
    }
  | { readonly code: 'key-missing'; readonly expected: string }
  | { readonly code: 'value-unexpected'; readonly found: string; readonly expected: string }
);

export type HouseReading =
  | { readonly kind: 'house'; readonly house: House }
  | { readonly kind: 'problems'; readonly problems: readonly HouseProblem[] };

type Path = readonly (string | number)[];

/** Reads and checks `house.json`. Never throws: whatever the text, it gives a house or its problems. */
export function readHouse(text: string): HouseReading {
  const tooDeep = deeperThan(text, DEEPEST);
  if (tooDeep !== null) {
    const what = `brackets within brackets, more than ${DEEPEST} deep`;
    return { kind: 'problems', problems: [{ code: 'json-broken', what, where: placeAt(text, tooDeep) }] };
  }
  const errors: ParseError[] = [];
  const tree = parseTree(text.replace(/^\uFEFF/, ' '), errors, {
    allowTrailingComma: false,
    disallowComments: true,
  });
  if (errors.length > 0 || tree === undefined) {
    const broken = errors.length > 0 ? errors : [{ error: 4, offset: 0, length: 0 } satisfies ParseError];
    return {
      kind: 'problems',
      problems: broken.map(({ error, offset }) => ({
        code: 'json-broken',
        what: inWords(printParseErrorCode(error)),
        where: placeAt(text, offset),
      })),
    };
  }
  const value = plainValue(tree);
  const checked = houseSchema.safeParse(value);
  if (checked.success) return { kind: 'house', house: checked.data };
  return {
    kind: 'problems',
    problems: checked.error.issues.flatMap((issue) => problemsOf(issue, tree, text)),
  };
}

/** A house nests ten deep; the parser gives way at some thousands. */
const DEEPEST = 100;

/** Where brackets, counted without regard to texts, first nest deeper than so many; null where they do not. */
function deeperThan(text: string, most: number): number | null {
  let depth = 0;
  for (let i = 0; i < text.length; i++) {
    if (text[i] === '[' || text[i] === '{') depth++;
    else if (text[i] === ']' || text[i] === '}') depth--;
    if (depth > most) return i;
  }
  return null;
}

/** A plain value of the tree; built from entries, so that a key like `__proto__` is just a key. */
function plainValue(node: Node): unknown {
  if (node.type === 'array') return (node.children ?? []).map(plainValue);
  if (node.type !== 'object') return node.value;
  const entries = (node.children ?? []).flatMap(({ children }) =>
    children?.[1] === undefined ? [] : [[String(children[0]?.value), plainValue(children[1])] as const],
  );
  return Object.fromEntries(entries);
}

function problemsOf(issue: z.core.$ZodIssue, tree: Node, text: string): HouseProblem[] {
  const path = issue.path.filter((part) => typeof part !== 'symbol');
  if (issue.code === 'unrecognized_keys') {
    const known = keysAt(path);
    return issue.keys.map((key) => ({
      code: 'key-unknown',
      key,
      nearest: nearest(key, known),
      known,
      where: placeOf([...path, key], tree, text),
    }));
  }
  const node = findNodeAtLocation(tree, [...path]);
  const where = placeOf(path, tree, text);
  if (node === undefined) return [{ code: 'key-missing', expected: expectationOf(issue), where }];
  const found = text.slice(node.offset, node.offset + node.length).replace(/\s+/g, ' ');
  return [
    {
      code: 'value-unexpected',
      found: found.length > 60 ? `${found.slice(0, 57)}…` : found,
      expected: expectationOf(issue),
      where,
    },
  ];
}

const articles: Readonly<Record<string, string>> = {
  string: 'a text in quotes',
  number: 'a number',
  boolean: 'true or false',
  object: 'an object in braces { }',
  array: 'a list in brackets [ ]',
};

function expectationOf(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return articles[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return `one of ${issue.values.map((value) => JSON.stringify(value)).join(', ')}`;
    case 'invalid_union':
      return 'one of the values named in the reference';
    case 'too_small':
      if (issue.origin === 'array') return `at least ${issue.minimum} entry`;
      if (issue.origin === 'string') return 'a text that is not empty';
      return issue.inclusive ? `a number of at least ${issue.minimum}` : `a number above ${issue.minimum}`;
    case 'too_big':
      return issue.origin === 'string'
        ? `a text of at most ${issue.maximum} characters`
        : `a number of at most ${issue.maximum}`;
    default:
      return issue.message;
  }
}

/** The keys that the schema knows at a path. */
function keysAt(path: Path): string[] {
  let schema: z.core.$ZodType = houseSchema;
  for (const part of path) {
    const { def } = unwrap(schema)._zod;
    if (isArray(def)) schema = def.element;
    else if (isObject(def) && def.shape[part] !== undefined) schema = def.shape[part];
    else return [];
  }
  const { def } = unwrap(schema)._zod;
  return isObject(def) ? Object.keys(def.shape) : [];
}

const isArray = (def: z.core.$ZodTypeDef): def is z.core.$ZodArrayDef => def.type === 'array';
const isObject = (def: z.core.$ZodTypeDef): def is z.core.$ZodObjectDef => def.type === 'object';
const isOptional = (def: z.core.$ZodTypeDef): def is z.core.$ZodOptionalDef => def.type === 'optional';

function unwrap(schema: z.core.$ZodType): z.core.$ZodType {
  const { def } = schema._zod;
  return isOptional(def) ? unwrap(def.innerType) : schema;
}

function nearest(key: string, known: readonly string[]): string | null {
  if (known.length === 0) return null;
  const candidate = closest(
    key.toLowerCase(),
    known.map((it) => it.toLowerCase()),
  );
  const original = known.find((it) => it.toLowerCase() === candidate) ?? null;
  return distance(key.toLowerCase(), candidate) <= Math.max(2, key.length / 2) ? original : null;
}

/** Where a path stands in the text; for a missing key, where its object begins. */
function placeOf(path: Path, tree: Node, text: string): Where {
  let depth = path.length;
  let node: Node | undefined;
  while (node === undefined && depth >= 0) node = findNodeAtLocation(tree, path.slice(0, depth--));
  const offset = node?.parent?.type === 'property' ? node.parent.offset : (node?.offset ?? 0);
  const key = path.reduce<string>(
    (written, part) =>
      typeof part === 'number' ? `${written}[${part}]` : `${written}${written && '.'}${part}`,
    '',
  );
  return { ...placeAt(text, offset), key };
}

function placeAt(text: string, offset: number): Where {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { file: 'house.json', line: before.length };
}

/** "CommaExpected" -> "comma expected". */
const inWords = (code: string) => code.replace(/([a-z])([A-Z])/g, '$1 $2').toLowerCase();
