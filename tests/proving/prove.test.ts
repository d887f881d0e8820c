import { describe, expect, test } from 'vitest';
import { houseTypes } from './houses/index.ts';
import { judgeRecord } from './judging/judge.ts';
import { judgingSeeds } from './judging/seeds.ts';
import { fewestHits } from './judging/slack.ts';
import { covers } from './judging/table.ts';
import { provingRecords } from './records/cache.ts';
import { type ProvingTier, tiers } from './records/provingRecord.ts';

/** A slice of `npm run prove`: of every kind of house one judging seed, of each tier two kinds in three. */
const judged = houseTypes.flatMap(({ name }, i) =>
  provingRecords(name, judgingSeeds[i % 2])
    .filter(({ tier }) => (i + tiers.indexOf(tier)) % 3 !== 0)
    .map(judgeRecord),
);

const figures = (tier: ProvingTier, what: string) =>
  judged
    .filter((it) => it.tier === tier)
    .flatMap((it) => it.figures)
    .filter((it) => it.what === what);

/** Of the ten of each tier; some nights are too mild to learn from. */
const enough = 8;

describe('on simulated houses that no interval was set on', () => {
  test.each(tiers)('%s: nearly every house has a heat loss, and its interval holds the truth', (tier) => {
    const own = figures(tier, 'headline');
    expect(own.length).toBeGreaterThanOrEqual(enough);
    expect(own.filter(covers).length).toBeGreaterThanOrEqual(fewestHits(own.length));
  });

  test('before and after: the interval of the ratio holds the truth', () => {
    const own = figures('before and after', 'ratio after/before');
    expect(own.length).toBeGreaterThanOrEqual(enough);
    expect(own.filter(covers).length).toBeGreaterThanOrEqual(fewestHits(own.length));
  });

  test.each(['loggers, layers known', 'loggers, U-values and a capacity figure'] as const)(
    '%s: so does the interval of the plain way, heat capacity over time constant',
    (tier) => {
      const own = figures(tier, 'capacity-over-tau');
      expect(own.length).toBeGreaterThanOrEqual(enough);
      expect(own.filter(covers).length).toBeGreaterThanOrEqual(fewestHits(own.length));
    },
  );

  test('loggers keep the time constant within 10 % of what it is without their errors', () => {
    const errors = judged.flatMap(({ timeConstantErrors }) => timeConstantErrors);
    // Asked of 95 % of records; the two stages and four tiers of one house are near copies, so they count once.
    const near = errors.filter((error) => Math.abs(error) <= 0.1).length / errors.length;
    expect(near * houseTypes.length).toBeGreaterThanOrEqual(fewestHits(houseTypes.length));
  });
});
