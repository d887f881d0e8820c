/** Operations killed at seeded points, and what is found afterwards. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DATABASE_FILE, openForWriting } from '../../../server/store/database.ts';
import { removeUnfinished } from '../../../server/store/restoring.ts';
import { assertSound } from '../../../server/store/soundness.ts';
import { seeded } from '../seeded.ts';
import { contentOf } from './content.ts';
import { databasesIn, type Operation, operations } from './operations.ts';

/** An operation with what is known of it beforehand. */
export interface Rehearsed {
  readonly operation: Operation;
  /** Made as it is before the operation. */
  readonly folder: string;
  /** What the folder holds before, after it was done, and after it was done twice. */
  readonly before: string;
  readonly after: string;
  readonly twice: string;
  /** From each mark to the end, as measured in processes of their own [ms]. */
  readonly lasts: Readonly<Record<Mark, number>>;
}

type Mark = 'begun' | 'storing';

export interface Point {
  readonly operation: string;
  readonly mark: Mark;
  /** After the mark [ms]. */
  readonly delay: number;
}

export interface Found {
  readonly point: Point;
  /** Where the process was when it was killed. */
  readonly killed: 'before' | 'inside' | 'after';
  /** Which of the two known states was found. */
  readonly state: 'before' | 'after';
}

/** Rehearses every operation, in folders below one that the caller removes. */
export async function rehearsals(child: string, rounds: number): Promise<Rehearsed[]> {
  const all: Rehearsed[] = [];
  for (const operation of operations) {
    const folder = mkdtempSync(join(tmpdir(), 'stillwarm-kills-'));
    await operation.prepare(folder);
    const before = operation.content(folder);
    const runs: Record<Mark, number>[] = [];
    let [after, twice] = ['', ''];
    for (let round = 0; round < rounds; round++)
      await inCopy(folder, async (copy) => {
        const { passed } = await run(child, operation, copy, { mark: 'begun', delay: -1 });
        const ended = passed.get('ended');
        if (ended === undefined) throw new Error(`${operation.name} did not end when nothing disturbed it`);
        runs.push({ begun: ended, storing: ended - (passed.get('storing') ?? 0) });
        if (round > 0) return;
        after = operation.content(copy);
        await operation.act(copy, () => {});
        twice = operation.content(copy);
      });
    if (before === after) throw new Error(`${operation.name} changes nothing`);
    // The quickest run, so that few kills come too late.
    const shortest = (mark: Mark) => Math.min(...runs.map((it) => it[mark]));
    const lasts = { begun: shortest('begun'), storing: shortest('storing') };
    all.push({ operation, folder, before, after, twice, lasts });
  }
  return all;
}

export const forget = (all: readonly Rehearsed[]): void => {
  for (const { folder } of all) rmSync(folder, { recursive: true });
};

/** Each operation in its turn, half of its points spread over all of it, half over its storing. */
export function pointsOf(all: readonly Rehearsed[], count: number, seed: number): Point[] {
  const random = seeded(seed);
  return Array.from({ length: count }, (_, i) => {
    const { operation, lasts } = all[i % all.length];
    const mark = operation.tellsStoring && Math.floor(i / all.length) % 2 === 0 ? 'storing' : 'begun';
    return { operation: operation.name, mark, delay: random() * lasts[mark] };
  });
}

/**
 * Kills at one point and looks at what is there.
 *
 * @throws Error that says what is not as it has to be
 */
export async function killAt(point: Point, all: readonly Rehearsed[], child: string): Promise<Found> {
  const known = all.find(({ operation }) => operation.name === point.operation);
  if (known === undefined) throw new Error(`no operation ${point.operation}`);
  const { operation, before, after, twice } = known;
  return inCopy(known.folder, async (folder) => {
    const { passed, signal } = await run(child, operation, folder, point);
    if (signal !== 'SIGKILL') throw new Error('it was not killed');
    const killed = !passed.has('begun') ? 'before' : passed.has('ended') ? 'after' : 'inside';

    const database = join(folder, DATABASE_FILE);
    const found = operation.content(folder);
    if (found !== before && found !== after)
      throw new Error('it holds neither what it held nor what it was to hold');
    for (const file of databasesIn(folder, readdirSync)) {
      assertSound(file);
      if (![before, after].some((it) => it.includes(contentOf(file))))
        throw new Error(`${file} is there under its name and holds neither`);
    }
    // As a start opens it: what was left goes, the log of changes is taken up, and a migration is made that is not yet.
    removeUnfinished(folder);
    openForWriting(database).close();
    assertSound(database);
    if (statSync(database).nlink > 1) throw new Error('the database has a second name');

    await operation.act(folder, () => {});
    const wanted = found === before ? after : twice;
    if (operation.content(folder) !== wanted) throw new Error('done again, it does not hold what it has to');
    assertSound(database);
    const left = [folder, join(folder, 'kept')]
      .flatMap((it) => listed(it))
      .filter((name) => /\.part/.test(name));
    if (left.length > 0) throw new Error(`${left.join(', ')} stays behind`);
    return { point, killed, state: found === before ? 'before' : 'after' };
  });
}

const listed = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};

async function inCopy<T>(folder: string, act: (copy: string) => Promise<T>): Promise<T> {
  const copy = mkdtempSync(join(tmpdir(), 'stillwarm-killed-'));
  try {
    cpSync(folder, copy, { recursive: true });
    return await act(copy);
  } finally {
    rmSync(copy, { recursive: true });
  }
}

/** When each mark was passed [ms], and which signal ended the process. */
async function run(
  child: string,
  { name }: Operation,
  folder: string,
  { mark, delay }: Pick<Point, 'mark' | 'delay'>,
) {
  const process_ = spawn(process.execPath, [child, name, folder, mark, String(delay)], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [said, complained] = ['', ''];
  process_.stdout.on('data', (chunk) => {
    said += chunk;
  });
  process_.stderr.on('data', (chunk) => {
    complained += chunk;
  });
  const [code, signal] = (await once(process_, 'close')) as [number | null, NodeJS.Signals | null];
  if (code !== null && code !== 0) throw new Error(`${name} broke down: ${complained}`);
  const passed = new Map(
    said
      .trim()
      .split('\n')
      .map((line) => line.split(' '))
      .map(([mark, at]) => [mark, Number(at)] as const),
  );
  return { passed, signal };
}
