/** From the start of the built command to its first answer, on a database with a house of a year; the size of the page. */
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Bench, Contestant } from './bench.ts';
import { YEAR } from './house/inventedHouse.ts';
import { store } from './store/stored.ts';

const STARTS = 5;
const dist = join(process.cwd(), 'dist');

/** Each start in turn [s]. */
const starting = (name: string, start: (input: string) => Promise<number>): Contestant => ({
  name,
  ready: async () => async (input) => {
    const waits: number[] = [];
    for (let i = 0; i < STARTS; i++) waits.push(await start(input));
    return waits;
  },
});

/** Until `stillwarm serve` answers the list of the houses. */
async function untilAnswered(input: string): Promise<number> {
  const before = performance.now();
  const child = spawn(process.execPath, [join(dist, 'cli.mjs'), 'serve', '--port', '0', '--data', input]);
  const ended = new Promise((resolve) => child.once('exit', resolve));
  let told = '';
  for await (const part of child.stdout) {
    told += part;
    const [address] = /http:\/\/[\w.:]+\/?/.exec(told) ?? [];
    if (address === undefined) continue;
    const answer = await fetch(new URL('/api/houses', address));
    if (!answer.ok) throw new Error(`answered ${answer.status}`);
    await answer.text();
    break;
  }
  const seconds = (performance.now() - before) / 1000;
  child.kill();
  await ended;
  return seconds;
}

async function untilEnded(): Promise<number> {
  const before = performance.now();
  await new Promise((resolve) => spawn(process.execPath, ['-e', '0']).once('exit', resolve));
  return (performance.now() - before) / 1000;
}

/** Compressed, what index.html loads first and all that it can come to load. */
function sizeOfPage(): string {
  const page = readFileSync(join(dist, 'web/index.html'), 'utf8');
  const files = readdirSync(join(dist, 'web/assets')).filter((it) => it.endsWith('.js'));
  const size = (names: string[]) =>
    names.reduce((sum, name) => sum + gzipSync(readFileSync(join(dist, 'web/assets', name))).length, 0) /
    1000;
  return `${size(files.filter((it) => page.includes(it))).toFixed(0)} kB first, ${size(files).toFixed(0)} kB all`;
}

const bench: Bench = {
  title: `Start-up on an existing database; the page's JavaScript, compressed: ${sizeOfPage()}`,
  unit: 'starts',
  cases: [
    {
      name: 'a house of 8 loggers and a year; memory is that of who waits',
      prepare: (folder) => {
        const input = join(folder, 'start');
        mkdirSync(input);
        store(input, { name: 'House of the bench', loggers: 8, days: YEAR });
        return { input, units: STARTS };
      },
    },
  ],
  contestants: [
    starting('stillwarm serve, to its first answer', untilAnswered),
    starting('node -e 0, to its end', untilEnded),
  ],
  account: (made) => `${(made as number[]).length} starts`,
  waits: (made) => made as number[],
};
export default bench;
