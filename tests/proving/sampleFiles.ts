/** Everything that makeSample.ts writes, as text. */
import { runSample, seed } from './sample.ts';
import { sampleHouse } from './sampleHouse.ts';
import { sampleLogs } from './sampleLogs.ts';
import { sampleTruth } from './sampleTruth.ts';

export interface SampleFiles {
  /** Of the folder sample-logs, by name. */
  readonly folder: ReadonlyMap<string, string>;
  /** Of sampleTruth.json. */
  readonly truth: string;
}

export function sampleFiles(): SampleFiles {
  const sample = runSample();
  const folder = sampleLogs(sample);
  folder.set('house.json', `${JSON.stringify(sampleHouse(), null, 2)}\n`);
  folder.set('README.md', readme);
  return { folder, truth: `${readable(sampleTruth(sample))}\n` };
}

/** JSON with rows of numbers filled up to the width that the formatter of this repository keeps to. */
function readable(value: unknown): string {
  const rows = /\[\n\s+-?[\d.]+(?:,\n\s+-?[\d.]+)+\n(\s*)\]/g;
  const rounded = (_: string, it: unknown) => (typeof it === 'number' ? Number(it.toFixed(4)) : it);
  return JSON.stringify(value, rounded, 2).replace(rows, (found, indent: string) => {
    const lines = [''];
    for (const word of found.slice(1, -1).trim().split(/\s+/)) {
      const line = lines[lines.length - 1];
      const longer = line === '' ? `${indent}  ${word}` : `${line} ${word}`;
      if (longer.length <= 110) lines[lines.length - 1] = longer;
      else lines.push(`${indent}  ${word}`);
    }
    return `[\n${lines.join('\n')}\n${indent}]`;
  });
}

const readme = `# Demonstration house

Everything in this folder is invented: the house, its place, its weather and every reading. The files were
made by \`tests/proving/makeSample.ts\` (\`npx tsx tests/proving/makeSample.ts\`) with seed ${seed}; run again,
it writes the same bytes.

A detached house of two storeys, nearly finished and empty, is logged from 9 January to 13 February 2027.
The builders heat it by day and into the evening, which is not logged. Service holes are filled and the loft
hatch is fitted between 25 and 27 January. On the evening of 4 February three electric heaters on one meter
run from 17:00 to 23:00, and the house is left alone from 13:00 until 09:00 the next morning.

| file | what it holds | layout |
|---|---|---|
| house.json | the house as drawn | |
| living.csv, bedroom.csv | living room, upper floor; every 10 min | commas, ISO local time, byte order mark |
| kitchen.csv, outside.csv, roof-void.csv | every 15 min | preamble, semicolons, decimal commas, day first |
| weather.csv | hourly means stamped at the hour's end | tabs, UTC |
| heater.csv | mean power of the ten minutes that end at the time | commas, ISO local time |
`;
