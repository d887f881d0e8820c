/** Every route and every reader with what nobody would send; for longer by `npm run faults -- --fuzz`. */
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Fuzzed, parsers } from './fuzz/parsers.ts';
import { type RoutesAtHand, requestsProperty, routesAtHand } from './fuzz/routes.ts';

const SEED = 3;

describe('the API', () => {
  let at: RoutesAtHand;
  beforeAll(async () => {
    at = await routesAtHand(false);
  });
  afterAll(() => at.end());

  test('answers whatever it is sent, refuses with a reason, and touches no file outside of its folder', async () => {
    await fc.assert(requestsProperty(at), { numRuns: 600, seed: SEED, endOnFailure: true });
    expect([...at.answered.keys()].length).toBeGreaterThan(at.routes.length / 2);
    at.assertNothingOutside();
  });
});

test.each(parsers.map(({ name, ...it }): [string, Omit<Fuzzed, 'name'>] => [name, it]))(
  'the reader of %s reads or refuses whatever it is given',
  async (_, { property }) => {
    await fc.assert(property() as fc.IAsyncProperty<unknown>, {
      numRuns: 80,
      seed: SEED,
      endOnFailure: true,
    });
  },
);
