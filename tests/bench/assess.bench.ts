/** A house of eight loggers and a year of minutes assessed: every stage, night, estimate and interval. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type AssessStep, assess } from '../../src/assess.ts';
import { readHouse } from '../../src/houseFile.ts';
import { filesNamed } from '../../src/record/index.ts';
import { reportOf } from '../../src/report.ts';
import type { Bench } from './bench.ts';
import { writeHouse, YEAR } from './house/inventedHouse.ts';

interface Assessed {
  /** Processor time of each part of the way [s]. */
  readonly parts: Readonly<Record<string, number>>;
  readonly heatLossWK: number | null;
}

const processorSeconds = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

async function assessed(input: string): Promise<Assessed> {
  const reading = readHouse(readFileSync(join(input, 'house.json'), 'utf8'));
  if (reading.kind === 'problems') throw new Error(JSON.stringify(reading.problems));
  const { house } = reading;
  const files = new Map(filesNamed(house).map((name) => [name, readFileSync(join(input, name))]));
  const parts: Record<string, number> = {};
  let [part, since]: [AssessStep['kind'] | 'report', number] = ['read', processorSeconds()];
  const enter = (next: typeof part) => {
    const now = processorSeconds();
    parts[part] = (parts[part] ?? 0) + now - since;
    [part, since] = [next, now];
  };
  const assessing = assess(house, files, ({ kind }) => enter(kind));
  enter('report');
  if (assessing.kind === 'no record') throw new Error(assessing.missing);
  const { stages } = reportOf(assessing.evidence);
  enter('report');
  return { parts, heatLossWK: stages.at(-1)?.heatLossWK?.value ?? null };
}

const bench: Bench = {
  title: 'Assessing a house: 8 loggers, temperature and humidity every minute of a year (invented)',
  unit: 'readings',
  cases: [
    {
      name: 'a year, all stages',
      prepare: (folder) => {
        const input = join(folder, 'house');
        return { input, units: writeHouse(input, { name: 'House of the bench', loggers: 8, days: YEAR }) };
      },
    },
  ],
  contestants: [{ name: 'ours (assess)', ready: async () => assessed }],
  account: (made) => {
    const { parts, heatLossWK } = made as Assessed;
    const told = Object.entries(parts).map(([name, seconds]) => `${name} ${seconds.toFixed(1)} s`);
    return `${told.join(', ')} of processor; ${heatLossWK} W/K`;
  },
};
export default bench;
