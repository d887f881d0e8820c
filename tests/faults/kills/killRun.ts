/** `npm run faults -- --points N --seed S`: so many kills, and what was found, as a table. */
import { bundled } from '../bundled.ts';
import { type Found, forget, killAt, pointsOf, rehearsals } from './kills.ts';

const ROUNDS = 5;

/** Resolves with the number of points at which something was not as it has to be. */
export async function killRun(count: number, seed: number, tell: (text: string) => void): Promise<number> {
  const built = await bundled();
  const all = await rehearsals(built.child, ROUNDS);
  const found: Found[] = [];
  let faults = 0;
  try {
    for (const { operation, lasts } of all)
      tell(
        `${operation.name}: ${lasts.begun.toFixed(0)} ms, of which storing ${lasts.storing.toFixed(0)} ms`,
      );
    for (const [i, point] of pointsOf(all, count, seed).entries()) {
      if (i > 0 && i % 20 === 0) tell(`${i} kills, ${faults} faults`);
      try {
        found.push(await killAt(point, all, built.child));
      } catch (error) {
        faults++;
        tell(`FAULT, ${JSON.stringify(point)}: ${error instanceof Error ? error.message : String(error)}`);
      }
    }
  } finally {
    forget(all);
    built.remove();
  }
  for (const { operation } of all) tell(rowOf(operation.name, found));
  tell(`${count} kills, seed ${seed}: ${faults} faults`);
  return faults;
}

function rowOf(name: string, found: readonly Found[]): string {
  const own = found.filter(({ point }) => point.operation === name);
  const killed = (where: Found['killed']) => own.filter((it) => it.killed === where).length;
  const old = own.filter(({ state }) => state === 'before').length;
  return (
    `${name}: killed before it ${killed('before')}, inside ${killed('inside')}, after ${killed('after')}; ` +
    `found as it was ${old}, done ${own.length - old}`
  );
}
