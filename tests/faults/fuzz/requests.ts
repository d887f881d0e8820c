/** Requests that nobody would send, to every route there is. */
import fc from 'fast-check';
import type { RouterRoute } from 'hono/types';
import { takenBy } from '../../../server/api/validate.ts';
import { house, inside, insideFrom, outside } from '../../server/inventedHouse.ts';
import { valuesOf } from './fromSchema.ts';
import { junk, mutated, spoilt } from './mutated.ts';

/** A part of an address that is known when the request is sent only: the n-th of what there is. */
export interface Known {
  readonly what: 'house' | 'bringing' | 'link';
  readonly n: number;
}

export interface Sent {
  readonly method: string;
  /** As the route has it, for what is told. */
  readonly route: string;
  readonly parts: readonly (string | Known)[];
  readonly query: string;
  readonly type: string | null;
  readonly body: Uint8Array | null;
  readonly byLink: boolean;
}

const hostileNames = (outsideFolder: string) =>
  fc.oneof(
    fc.constantFrom(
      '..',
      '../x.csv',
      '../../x.csv',
      '..\\x.csv',
      `${outsideFolder}/x.csv`,
      `/${outsideFolder}/x.csv`,
      'a/../../x.csv',
      '%2e%2e%2fx.csv',
      '%',
      '%00',
      '\0.csv',
      'con',
      'C:x.csv',
      'x'.repeat(199),
      'x'.repeat(5000),
      '🏠.csv',
      '__proto__',
      'constructor',
      '.',
    ),
    fc.string({ maxLength: 20, unit: 'binary' }),
  );
const usual = fc.constantFrom(
  'house.json',
  'in.csv',
  'logs/out.csv',
  'more.csv',
  'a.zip',
  '2027-01-10',
  '2027-01-11',
  '1',
);

function partOf(name: string, outsideFolder: string): fc.Arbitrary<string | Known> {
  const own = (what: Known['what']) => fc.nat(20).map((n): Known => ({ what, n }));
  const known: readonly fc.Arbitrary<string | Known>[] =
    name === 'id' || name === 'bringing'
      ? [own('house'), own('bringing')]
      : name === 'number' || name === 'token'
        ? [own('link')]
        : [usual];
  return fc.oneof(...known.map((arbitrary) => ({ arbitrary, weight: 4 })), {
    arbitrary: hostileNames(outsideFolder),
    weight: 1,
  });
}

const bytesOf = (text: string) => new TextEncoder().encode(text);
const fileBytes = fc.oneof(
  spoilt(house).map((it) => bytesOf(JSON.stringify(it))),
  fc.constant(bytesOf(JSON.stringify(house))),
  mutated([inside, outside, insideFrom(400, 450), JSON.stringify(house)].map(bytesOf)),
  fc.uint8Array({ maxLength: 300 }),
);
const types = [
  'application/json',
  'application/json; charset=utf-8',
  'APPLICATION/JSON',
  'application/octet-stream',
  'text/csv',
  'text/plain',
  'multipart/form-data; boundary=x',
  'multipart/form-data',
  'application/jsonx',
];
const form = mutated([
  bytesOf(
    '--x\r\nContent-Disposition: form-data; name="photo"; filename="a.png"\r\n\r\n\x89PNG\r\n\x1a\n\r\n--x--\r\n',
  ),
]);

/** What a request may bring to a route: mostly what its own schema means, or a little beside it. */
function bodies(route: RouterRoute): fc.Arbitrary<Pick<Sent, 'type' | 'body'>> {
  const taken = takenBy(route.handler).filter((it) => it.in === 'body');
  const json = (value: unknown) => bytesOf(JSON.stringify(value) ?? '');
  const meant = taken.flatMap(({ type, schema }) => {
    if (schema === null) return [fc.record({ type: fc.constant(type), body: fileBytes })];
    const values = valuesOf(schema);
    return [
      fc.record({ type: fc.constant(type), body: values.map(json) }),
      fc.record({ type: fc.constant(type), body: values.chain(spoilt).map(json) }),
    ];
  });
  const wild = fc.record({
    type: fc.option(fc.constantFrom(...types)),
    body: fc.oneof(
      fc.constant(null),
      junk.map(json),
      fileBytes,
      form,
      fc.constantFrom(
        ...['', '{', '['.repeat(50_000), '{"a":'.repeat(20_000), 'null', '1e999', '"'].map(bytesOf),
      ),
    ),
  });
  return fc.oneof(...meant.map((arbitrary) => ({ arbitrary, weight: 3 })), { arbitrary: wild, weight: 2 });
}

const numbers = fc.constantFrom(
  '0',
  '-1',
  '1e308',
  'NaN',
  'Infinity',
  '',
  ' ',
  '10',
  '4000',
  '1799582400',
  '1799800000.5',
  '8640000000000',
  '-8640000000000',
  '0x10',
  'in.csv',
  '../x',
);
const anyQuery = fc.dictionary(
  fc.constantFrom('from', 'to', 'points', 'file', 'x', '__proto__'),
  fc.oneof(numbers, fc.string({ maxLength: 10 })),
  { maxKeys: 4 },
);

/** @param outsideFolder that nothing may be written to */
export function requestsTo(routes: readonly RouterRoute[], outsideFolder: string): fc.Arbitrary<Sent> {
  // A middleware of a route stands beside its handler under the same name: what it takes is what the route takes.
  const named = routes.filter(({ method, path }) => method !== 'ALL' && !path.endsWith('*'));
  return fc.oneof(
    ...named.map((route) =>
      fc
        .record({
          method: fc.oneof(
            { arbitrary: fc.constant(route.method), weight: 20 },
            { arbitrary: fc.constantFrom('HEAD', 'OPTIONS', 'PATCH', 'DELETE', 'PUT'), weight: 1 },
          ),
          route: fc.constant(`${route.method} ${route.path}`),
          parts: fc.tuple(
            ...route.path
              .split('/')
              .slice(1)
              .map((part) => {
                const name = /^:(\w+)/.exec(part)?.[1];
                return name === undefined ? fc.constant(part) : partOf(name, outsideFolder);
              }),
          ),
          query: fc.oneof(
            fc.constant(''),
            anyQuery.map((it) => `?${new URLSearchParams(it)}`),
          ),
          byLink: fc.boolean(),
          content: route.method === 'GET' ? fc.constant({ type: null, body: null }) : bodies(route),
        })
        .map(({ content, ...rest }): Sent => ({ ...rest, ...content })),
    ),
  );
}
