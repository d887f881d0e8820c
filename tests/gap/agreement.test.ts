/** Which ways to a heat loss agree, what they share, and what usually explains it when they do not. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Method, methods, type Tier } from '../../src/assessment.ts';
import { agreementOf, type Conditions } from '../../src/gap/index.ts';
import type { HeatLossEstimate, HeatLossNote } from '../../src/heatloss/index.ts';
import { logInterval } from '../../src/maths/logInterval.ts';
import { say } from '../../src/words/index.ts';

const usualTier: Readonly<Record<Method, Tier>> = {
  network: 'loggers',
  'effective-capacity': 'loggers',
  combined: 'loggers',
  'capacity-over-tau': 'loggers',
  'heat-then-cool': 'heated-night',
  'heat-balance': 'metered',
  'state-space': 'metered',
};
const way = (
  method: Method,
  value: number,
  logSd = 0.08,
  tier: Tier = usualTier[method],
  notes: readonly HeatLossNote[] = [],
): HeatLossEstimate => ({ method, tier, heatLossCoefficient: logInterval(value, logSd), notes });

const quiet: Conditions = { neighbour: null, wetTradesWithinWeeks: null };
const toldOf = (ways: readonly HeatLossEstimate[], conditions = quiet) => {
  const agreement = agreementOf(ways, conditions);
  if (agreement === null) throw new Error('nothing was compared');
  return agreement;
};
const causesOf = (ways: readonly HeatLossEstimate[], conditions = quiet) =>
  toldOf(ways, conditions).apart.flatMap(({ causes }) => causes.map(({ code }) => code));

describe('ways that agree', () => {
  test('three that share nothing but the loggers are three witnesses, and it is said what all of them allow', () => {
    const agreement = toldOf([
      way('capacity-over-tau', 100, 0.2),
      way('heat-then-cool', 110),
      way('heat-balance', 105),
    ]);
    expect(agreement.agree).toBe(true);
    expect(agreement.notes.map(({ code }) => code)).toEqual(['ways-agree']);
    // COMPUTED: the highest lower end is 110·e^(−1.96·0.08) = 94.04, the lowest upper end 105·e^(1.96·0.08) = 122.82
    expect(say(agreement.notes[0]).text).toMatch(
      /^Three ways that share little .* between 94\.0 W\/K and 123 W\/K\.$/,
    );
  });

  test('network, effective and plain capacity rest on one drawing and the same nights: no witnesses apart', () => {
    const { notes } = toldOf([
      way('network', 100),
      way('effective-capacity', 104),
      way('combined', 102),
      way('capacity-over-tau', 90),
    ]);
    expect(notes).toEqual([
      {
        code: 'ways-agree-sharing',
        methods: ['capacity-over-tau', 'effective-capacity', 'network'],
        sharing: ['drawing', 'free nights'],
      },
    ]);
  });

  test('network and heat balance share the meter', () => {
    const { notes } = toldOf([way('network', 100, 0.08, 'metered'), way('heat-balance', 104)]);
    expect(notes[0]).toMatchObject({ code: 'ways-agree-sharing', sharing: ['metered days'] });
  });

  test('what agrees beside the witnesses is named with what it shares', () => {
    const { notes } = toldOf([
      way('network', 100, 0.05, 'metered'),
      way('capacity-over-tau', 95, 0.2),
      way('heat-balance', 104),
    ]);
    expect(notes).toMatchObject([
      { code: 'ways-agree', methods: ['heat-balance', 'capacity-over-tau'] },
      { code: 'no-witness-of-its-own', methods: ['network'] },
    ]);
  });

  test('a single way has nothing to agree with, nor has the mean of two with itself', () => {
    expect(agreementOf([way('network', 100)], quiet)).toBeNull();
    expect(agreementOf([way('network', 100), way('combined', 100)], quiet)).toBeNull();
  });
});

describe('ways that do not agree', () => {
  test('metered days below the nights: heat not counted, or less mass than drawn', () => {
    const ways = [way('heat-balance', 60), way('effective-capacity', 120)];
    expect(causesOf(ways)).toContain('heat-not-counted');
    expect(toldOf(ways).apart[0].causes).toContainEqual({ code: 'mass-unlike-drawn', more: false });
    expect(causesOf(ways)).not.toContain('heat-gone-elsewhere');
  });

  test('metered days above the nights: heat gone elsewhere, sun on the outdoor logger, more mass than drawn', () => {
    const ways = [way('heat-balance', 120), way('effective-capacity', 60)];
    const causes = toldOf(ways).apart.flatMap((it) => it.causes);
    expect(causes).toContainEqual({ code: 'heat-gone-elsewhere' });
    expect(causes).toContainEqual({ code: 'sun-on-logger', place: 'outside' });
    expect(causes).toContainEqual({ code: 'mass-unlike-drawn', more: true });
  });

  test('drying is named where wet trades ended lately and the metered way reads high, and nowhere else', () => {
    const wet = { ...quiet, wetTradesWithinWeeks: 3 };
    const high = [way('heat-balance', 120), way('effective-capacity', 60)];
    const low = [way('heat-balance', 60), way('effective-capacity', 120)];
    expect(causesOf(high, wet)).toContain('drying-draws-heat');
    expect(causesOf(low, wet)).not.toContain('drying-draws-heat');
    expect(causesOf(high)).not.toContain('drying-draws-heat');
  });

  test('a neighbour is named unless a logger hangs there', () => {
    const ways = [way('heat-balance', 60), way('network', 120)];
    expect(causesOf(ways, { ...quiet, neighbour: 'not known' })).toContain('neighbour-warms');
    expect(causesOf(ways, { ...quiet, neighbour: 'logged' })).not.toContain('neighbour-warms');
    expect(causesOf(ways)).not.toContain('neighbour-warms');
  });

  test('without irradiance the sun comes first where the metered days read low', () => {
    const dark = way('heat-balance', 60, 0.08, 'metered', [{ code: 'no-irradiance' }]);
    expect(causesOf([dark, way('effective-capacity', 120)])[0]).toBe('sun-not-counted');
  });

  test('a strained heated night is named', () => {
    const strained = way('heat-then-cool', 60, 0.08, 'heated-night', [{ code: 'heater-weak', share: 0.9 }]);
    expect(causesOf([strained, way('effective-capacity', 120)])).toContain('heated-night-strained');
  });

  test('two that both rest on the layers point at the layers', () => {
    expect(causesOf([way('network', 60), way('effective-capacity', 120)])).toEqual(['layers-unlike-drawn']);
  });

  test('several below one for the same reasons are told in one sentence', () => {
    const { apart, notes, agree } = toldOf([
      way('network', 60, 0.05),
      way('effective-capacity', 65),
      way('heat-balance', 120),
    ]);
    expect(agree).toBe(false);
    expect(apart).toHaveLength(1);
    expect(say(notes[0]).text).toBe(
      'These cannot all be right: the design’s network and the effective heat capacity read lower than the balance of metered days, beyond what their intervals allow.',
    );
  });

  test('those that still agree are told beside those that do not', () => {
    const { groups, notes } = toldOf([
      way('capacity-over-tau', 100, 0.2),
      way('heat-then-cool', 110),
      way('heat-balance', 30),
    ]);
    expect(groups.map((group) => group.toSorted())).toContainEqual(['capacity-over-tau', 'heat-then-cool']);
    expect(notes.map(({ code }) => code)).toContain('ways-agree');
  });
});

describe('whatever the figures', () => {
  const anyWays = fc.uniqueArray(
    fc
      .tuple(
        fc.constantFrom(...methods),
        fc.double({ min: 10, max: 500, noNaN: true }),
        fc.double({ min: 0.01, max: 0.5, noNaN: true }),
      )
      .map(([method, value, logSd]) => way(method, value, logSd)),
    { minLength: 2, selector: ({ method }) => method },
  );
  const sorted = (ways: readonly HeatLossEstimate[]) => {
    const agreement = agreementOf(ways, quiet);
    return (
      agreement && {
        ...agreement,
        groups: agreement.groups.map((group) => group.toSorted().join()).toSorted(),
        apart: agreement.apart.map((it) => JSON.stringify(it)).toSorted(),
      }
    );
  };

  test('the order in which the ways come changes nothing', () => {
    fc.assert(
      fc.property(anyWays, (ways) => {
        expect(sorted(ways.toReversed())).toEqual(sorted(ways));
      }),
    );
  });

  test('they agree exactly when no two intervals are apart, and then one group holds all of them', () => {
    fc.assert(
      fc.property(anyWays, (ways) => {
        const told = agreementOf(ways, quiet);
        fc.pre(told !== null);
        const own = ways.filter(({ method }) => method !== 'combined').map((it) => it.heatLossCoefficient);
        const meet = own.every((a) => own.every((b) => a.low <= b.high));
        expect(told?.agree).toBe(meet);
        if (meet) expect(told?.groups.map((group) => group.length)).toEqual([own.length]);
        else expect(told?.apart.every(({ causes }) => causes.length > 0)).toBe(true);
      }),
    );
  });
});
