/** Whether the ways to the heat loss can all be right: which of them agree, which do not, and why usually. */
import type { Method } from '../assessment.ts';
import type { HeatLossEstimate } from '../heatloss/index.ts';
import { logSdOf } from '../maths/logInterval.ts';
import { type Cause, type Conditions, likelyCauses } from './causes.ts';
import { type Source, shared, sharingNothing, sources } from './sources.ts';

/** Ways whose intervals lie wholly below those of others, for the same likely reasons. */
export interface Apart {
  readonly lower: readonly Method[];
  readonly higher: readonly Method[];
  /** What they rest on alike beside the loggers. */
  readonly sharing: readonly Source[];
  readonly causes: readonly Cause[];
}

/** What it comes to; the sentences are in `words/`. */
export type AgreementNote =
  /** Ways that share nothing but the loggers meet in a range [W/K]. */
  | {
      readonly code: 'ways-agree';
      readonly methods: readonly Method[];
      readonly low: number;
      readonly high: number;
    }
  /** All ways meet, but no two of them are apart. */
  | {
      readonly code: 'ways-agree-sharing';
      readonly methods: readonly Method[];
      readonly sharing: readonly Source[];
    }
  /** They meet the others too, but rest on what one of those rests on. */
  | {
      readonly code: 'no-witness-of-its-own';
      readonly methods: readonly Method[];
      readonly sharing: readonly Source[];
    }
  | {
      readonly code: 'ways-apart';
      readonly lower: readonly Method[];
      readonly higher: readonly Method[];
      readonly sharing: readonly Source[];
    };

export interface Agreement {
  /** Every interval meets every other. */
  readonly agree: boolean;
  /** Ways that have a range in common, each as large as it can be; one way may be in several. */
  readonly groups: readonly (readonly Method[])[];
  readonly apart: readonly Apart[];
  readonly notes: readonly AgreementNote[];
}

/** Null with fewer than two ways: there is nothing to agree with. The same in whatever order the ways come. */
export function agreementOf(
  estimates: readonly HeatLossEstimate[],
  conditions: Conditions,
): Agreement | null {
  const ways = waysOf(estimates).toSorted(byWidth);
  if (ways.length < 2) return null;
  const apart = gathered(
    ways.flatMap((lower) =>
      ways
        .filter((higher) => lower.heatLossCoefficient.high < higher.heatLossCoefficient.low)
        .map((higher) => ({
          lower: [lower.method],
          higher: [higher.method],
          sharing: shared(lower, higher),
          causes: likelyCauses(lower, higher, conditions),
        })),
    ),
  );
  const agree = apart.length === 0;
  const groups = groupsOf(ways);
  return {
    agree,
    groups: groups.map(methodsOf),
    apart,
    notes: [
      ...apart.map(({ causes: _, ...pair }) => ({ code: 'ways-apart', ...pair }) as const),
      ...groups.flatMap((group) => inCommon(group, agree)),
    ],
  };
}

/** The first two estimates whose 95 % intervals do not meet; null when all of them do. */
export function disagreement(
  estimates: readonly HeatLossEstimate[],
): readonly [HeatLossEstimate, HeatLossEstimate] | null {
  const ways = waysOf(estimates);
  for (const [i, a] of ways.entries())
    for (const b of ways.slice(i + 1))
      if (
        a.heatLossCoefficient.low > b.heatLossCoefficient.high ||
        b.heatLossCoefficient.low > a.heatLossCoefficient.high
      )
        return [a, b];
  return null;
}

/** "combined" is the mean of two others, which stand for themselves. */
const waysOf = (estimates: readonly HeatLossEstimate[]) =>
  estimates.filter(({ method }) => method !== 'combined');

/** The narrowest first. */
const byWidth = (a: HeatLossEstimate, b: HeatLossEstimate) =>
  logSdOf(a.heatLossCoefficient) - logSdOf(b.heatLossCoefficient) || (a.method < b.method ? -1 : 1);
const methodsOf = (ways: readonly HeatLossEstimate[]) => ways.map(({ method }) => method);

/** Intervals have a range in common exactly when all of them hold the upper end of one: each is tried. */
function groupsOf(ways: readonly HeatLossEstimate[]): HeatLossEstimate[][] {
  const holding = ways.map(({ heatLossCoefficient: { high } }) =>
    ways.filter(({ heatLossCoefficient: it }) => it.low <= high && high <= it.high),
  );
  return holding.filter(
    (group, i) =>
      !holding.some(
        (other, k) =>
          k !== i && group.every((way) => other.includes(way)) && (other.length > group.length || k < i),
      ),
  );
}

/** @param all every way is in the group */
function inCommon(group: readonly HeatLossEstimate[], all: boolean): AgreementNote[] {
  const apart = sharingNothing(group);
  if (apart.length < 2)
    return all
      ? [{ code: 'ways-agree-sharing', methods: methodsOf(group), sharing: sharedByAll(group) }]
      : [];
  const others = group.filter((way) => !apart.includes(way));
  const sharing = sources.filter((source) =>
    others.some((way) => apart.some((witness) => shared(way, witness).includes(source))),
  );
  const intervals = apart.map(({ heatLossCoefficient }) => heatLossCoefficient);
  return [
    {
      code: 'ways-agree',
      methods: methodsOf(apart),
      low: Math.max(...intervals.map(({ low }) => low)),
      high: Math.min(...intervals.map(({ high }) => high)),
    },
    ...(others.length === 0
      ? []
      : [{ code: 'no-witness-of-its-own', methods: methodsOf(others), sharing } as const]),
  ];
}

const sharedByAll = ([first, ...rest]: readonly HeatLossEstimate[]): Source[] =>
  sources.filter((source) => rest.every((way) => shared(first, way).includes(source)));

/** Pairs with the same causes told together: first those of one higher way, then those of the same lower ones. */
function gathered(pairs: readonly Apart[]): Apart[] {
  const together = (all: readonly Apart[], same: (it: Apart) => unknown): Apart[] => {
    const byKey = new Map<string, Apart>();
    for (const it of all) {
      const key = JSON.stringify([same(it), it.sharing, it.causes]);
      const met = byKey.get(key);
      byKey.set(key, met === undefined ? it : union(met, it));
    }
    return [...byKey.values()];
  };
  return together(
    together(pairs, ({ higher }) => higher),
    ({ lower }) => lower,
  );
}

const union = (a: Apart, b: Apart): Apart => ({
  ...a,
  lower: [...new Set([...a.lower, ...b.lower])],
  higher: [...new Set([...a.higher, ...b.higher])],
});
