import { describe, expect, test } from 'vitest';
import { houseTypes } from './houses/index.ts';
import { judgeRecord } from './judging/judge.ts';
import { judgingSeeds } from './judging/seeds.ts';
import { fewestHits } from './judging/slack.ts';
import { covers } from './judging/table.ts';
import { provingRecords } from './records/cache.ts';
import { type ProvingTier, tiers } from './records/provingRecord.ts';

/** A slice of `npm run prove`: two judging seeds of every kind of house. */
const judged = judgingSeeds
  .slice(0, 2)
  .flatMap((seed) => houseTypes.flatMap(({ name }) => provingRecords(name, seed).map(judgeRecord)));

const figures = (tier: ProvingTier, what: string) =>
  judged
    .filter((it) => it.tier === tier)
    .flatMap((it) => it.figures)
    .filter((it) => it.what === what);

/** The intervals that are to hold 95 %. */
const assured: readonly (readonly [ProvingTier, string])[] = [
  ['loggers, layers known', 'capacity-over-tau'],
  ['loggers, U-values and a capacity figure', 'capacity-over-tau'],
  ['before and after', 'ratio after/before'],
];

describe('on simulated houses that no interval was set on', () => {
  test.each(assured)('%s: the interval of %s holds the truth', (tier, what) => {
    const own = figures(tier, what);
    expect(own.length).toBeGreaterThanOrEqual(25); // some nights are too mild to learn from
    expect(own.filter(covers).length).toBeGreaterThanOrEqual(fewestHits(own.length));
  });

  test.each(tiers)('%s: nearly every record has a headline', (tier) => {
    expect(figures(tier, 'headline').length).toBeGreaterThanOrEqual(25);
  });

  test('loggers keep the time constant within 10 % of what it is without their errors', () => {
    const errors = judged.flatMap(({ timeConstantErrors }) => timeConstantErrors);
    // Asked of 95 % of records; the two stages and four tiers of one house are near copies, so they count once.
    const near = errors.filter((error) => Math.abs(error) <= 0.1).length / errors.length;
    expect(near * 30).toBeGreaterThanOrEqual(fewestHits(30));
  });
});
