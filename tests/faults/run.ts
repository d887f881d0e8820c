/**
 * `npm run faults`: what a test has no time for.
 *
 *   npm run faults [-- --points 200 --seed 1]     processes killed in the middle of what they do
 *   npm run faults -- --fuzz [--seconds 180 --seed 1]   every route and every parser, with what nobody would send
 *   npm run faults -- --soak [--imports 10000 --minutes 30]   a server that is used for long
 */
import { parseArgs } from 'node:util';
import { fuzzRun } from './fuzz/fuzzRun.ts';
import { killRun } from './kills/killRun.ts';
import { soak } from './soak.ts';

const { values } = parseArgs({
  options: {
    points: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1' },
    fuzz: { type: 'boolean', default: false },
    seconds: { type: 'string', default: '180' },
    soak: { type: 'boolean', default: false },
    imports: { type: 'string', default: '10000' },
    minutes: { type: 'string', default: '30' },
  },
});
const tell = (text: string) => console.log(text);
const seed = Number(values.seed);

const faults = values.soak
  ? await soak({ imports: Number(values.imports), minutes: Number(values.minutes), tell })
  : values.fuzz
    ? await fuzzRun(Number(values.seconds), seed, tell)
    : await killRun(Number(values.points), seed, tell);
process.exitCode = faults === 0 ? 0 : 1;
