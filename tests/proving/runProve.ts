/**
 * `npm run prove`: how near each figure comes to the truth of simulated houses, and how often its interval holds it.
 *
 *     npm run prove                                  every type, judging seeds
 *     npm run prove -- --seeds tuning                or judging, or 100-105, or 100,101
 *     npm run prove -- --types cabin,terrace         types whose names hold one of these words
 *     npm run prove -- --tier loggers                tiers whose names begin so
 *     npm run prove -- --method capacity-over-tau    that line only, and its table by type
 */
import { parseArgs } from 'node:util';
import { houseTypes } from './houses/index.ts';
import { judgeAll } from './judging/judgeAll.ts';
import { judgingSeeds, tuningSeeds } from './judging/seeds.ts';
import { figuresTable, straysLine, typesTable, verdictTable } from './judging/table.ts';

const { values } = parseArgs({
  options: {
    seeds: { type: 'string', default: 'judging' },
    types: { type: 'string' },
    tier: { type: 'string' },
    method: { type: 'string' },
  },
});
const words = values.types?.split(',');
const types = houseTypes.filter(({ name }) => words === undefined || words.some((it) => name.includes(it)));
const houses = seedsNamed(values.seeds).flatMap((seed) => types.map(({ name: type }) => ({ type, seed })));

const began = Date.now();
const judged = await judgeAll({ houses, ...(values.tier !== undefined && { tier: values.tier }) }, (done) => {
  if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${houses.length} houses `);
});
if (process.stderr.isTTY) process.stderr.write('\r');
console.log(
  [
    `${values.seeds} seeds, ${types.length} types, ${judged.length} records`,
    figuresTable(judged, values.method),
    verdictTable(judged),
    typesTable(judged, values.method),
    straysLine(judged),
    `in ${((Date.now() - began) / 1000).toFixed(0)} s`,
  ].join('\n\n'),
);

function seedsNamed(text: string): number[] {
  if (text === 'tuning') return tuningSeeds;
  if (text === 'judging') return judgingSeeds;
  return text.split(',').flatMap((part) => {
    const [first, last = first] = part.split('-').map(Number);
    if (!Number.isInteger(first) || !Number.isInteger(last) || last < first)
      throw new RangeError(
        `"${text}" is neither "tuning", "judging", a seed, a list nor a range such as 100-105`,
      );
    return Array.from({ length: last - first + 1 }, (_, i) => first + i);
  });
}
