/** `npm run faults -- --soak`: thousands of imports into one server, read from all the while; what its memory does. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { assertSound } from '../../server/store/soundness.ts';
import { houseFolder, houseText } from '../server/inventedHouse.ts';
import { bundled } from './bundled.ts';
import { type Served, served } from './served.ts';

/** A house gets so many later exports, then is deleted and begun anew: what is measured is not how houses grow. */
const EXPORTS_PER_HOUSE = 9;
const READERS = 2;
const MB = 1024; // [kB]

export interface SoakAsked {
  readonly imports: number;
  /** Ends earlier after so long [min]. */
  readonly minutes: number;
  tell(text: string): void;
}

/** Resolves with the number of requests that were not answered as they have to be. */
export async function soak({ imports, minutes, tell }: SoakAsked): Promise<number> {
  const built = await bundled();
  const server = await served(built.cli);
  const begun = performance.now();
  const waited: number[] = [];
  const memory: { readonly imports: number; readonly rss: number }[] = [];
  let faults = 0;
  let over = false;
  try {
    const stable = await server.keep(await server.begin(houseFolder));
    const readers = Array.from({ length: READERS }, () => read(server, stable));
    let done = 0;
    /** How much of what was asked for is done or over. */
    const share = () => Math.max(done / imports, minutesSince(begun) / minutes);
    for (let house = 0; share() < 1; house++) {
      const id = await server.keep(await server.begin(tiny(house)));
      done++;
      for (let i = 0; i < EXPORTS_PER_HOUSE && done < imports; i++) {
        const sent = await fetch(`${server.url}/api/houses/${id}/readings?file=in.csv`, {
          method: 'POST',
          headers: { 'Content-Type': 'text/csv' },
          body: log(6 + i * 3, 3, 20),
        });
        if (!(sent.ok && ((await sent.json()) as { newReadings: number }).newReadings === 3)) faults++;
        done++;
        if (share() >= (memory.length + 1) / 10) measure(done);
      }
      const gone = await fetch(`${server.url}/api/houses/${id}`, { method: 'DELETE' });
      if (gone.status !== 204) faults++;
    }
    over = true;
    await Promise.all(readers);
    measure(done);
    assertSound(join(server.folder, 'stillwarm.sqlite'));
    tell(
      `${done} imports in ${minutesSince(begun).toFixed(1)} minutes, ${faults} faults; the database is sound`,
    );
    const after = memory.slice(2);
    tell(`memory from the third tenth on: ${slopeOf(after).toFixed(2)} MB per 1000 imports`);
    waited.sort((a, b) => a - b);
    const at = (share: number) => `${Math.round(waited[Math.floor(share * (waited.length - 1))])} ms`;
    tell(`${waited.length} reads meanwhile: median ${at(0.5)}, 99 % within ${at(0.99)}, longest ${at(1)}`);
    if (server.told() !== '') tell(`the server told: ${server.told().slice(0, 2000)}`);
  } finally {
    over = true;
    await server.end();
    built.remove();
  }
  return faults;

  function measure(done: number): void {
    const rss = rssOf(server.child.pid ?? 0) / MB;
    memory.push({ imports: done, rss });
    tell(`${done} imports, ${minutesSince(begun).toFixed(1)} min: ${rss.toFixed(0)} MB`);
  }

  async function read({ url }: Served, id: string): Promise<void> {
    const paths = [
      '/api/houses',
      `/api/houses/${id}`,
      `/api/houses/${id}/readings`,
      `/api/houses/${id}/loggers`,
    ];
    for (let i = 0; !over; i++) {
      const asked = performance.now();
      const answer = await fetch(url + paths[i % paths.length]);
      await answer.text();
      waited.push(performance.now() - asked);
      if (!answer.ok) faults++;
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
  }
}

/** A house of two loggers with six readings each. */
const tiny = (number: number) => ({
  'house.json': houseText.replace('Test house', `House ${number}`),
  'in.csv': log(0, 6, 20),
  'logs/out.csv': log(0, 6, 5),
});

const log = (from: number, rows: number, warmth: number) =>
  [
    'Time,Temperature (°C)',
    ...Array.from({ length: rows }, (_, k) => {
      const at = new Date(Date.UTC(2027, 0, 10, 12) + (from + k) * 600_000).toISOString();
      return `${at.slice(0, 16).replace('T', ' ')},${(warmth + (from + k) / 10).toFixed(1)}`;
    }),
  ].join('\n');

const minutesSince = (begun: number) => (performance.now() - begun) / 60_000;

/** What a process has in memory [kB]; of Linux only. */
function rssOf(pid: number): number {
  return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);
}

/** By least squares [MB per 1000 imports]. */
function slopeOf(points: readonly { readonly imports: number; readonly rss: number }[]): number {
  const mean = (of: (it: (typeof points)[number]) => number) =>
    points.reduce((sum, it) => sum + of(it), 0) / points.length;
  const [x, y] = [mean((it) => it.imports), mean((it) => it.rss)];
  const spread = points.reduce((sum, it) => sum + (it.imports - x) ** 2, 0);
  return (1000 * points.reduce((sum, it) => sum + (it.imports - x) * (it.rss - y), 0)) / spread;
}
