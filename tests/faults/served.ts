/** A server in a process of its own, as it is delivered, on a data folder without the demonstration house. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DATABASE_FILE, openForWriting } from '../../server/store/database.ts';
import { DEMONSTRATION_STORED } from '../../server/store/writing.ts';
import { filePath, raw } from '../server/serverAtHand.ts';

export interface Served {
  readonly url: string;
  readonly folder: string;
  readonly child: ChildProcess;
  /** What it told the terminal. */
  told(): string;
  /** Begins a house folder, or an addition to a house, and sends files one after the other. */
  begin(files: Readonly<Record<string, string>>, onto?: string): Promise<string>;
  /** The id of the house that is kept. @throws Error when it is refused */
  keep(bringing: string): Promise<string>;
  json<T>(path: string): Promise<T>;
  end(): Promise<void>;
}

/** A data folder in which the demonstration house was stored once, and deleted. */
export function withoutDemonstration(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stillwarm-served-'));
  const db = openForWriting(join(folder, DATABASE_FILE));
  db.prepare('INSERT INTO done_once (what) VALUES (?)').run(DEMONSTRATION_STORED);
  db.close();
  return folder;
}

/** @param cli path of the command */
export async function served(cli: string, folder: string = withoutDemonstration()): Promise<Served> {
  const child = spawn(process.execPath, [cli, 'serve', '--port', '0', '--data', folder], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let told = '';
  child.stderr.on('data', (chunk) => {
    told += chunk;
  });
  const [said] = await once(child.stdout, 'data');
  const url = /http:\S+\d/.exec(String(said))?.[0] ?? '';
  return {
    url,
    folder,
    child,
    told: () => told,
    async begin(files, onto) {
      const body = onto === undefined ? {} : { body: JSON.stringify({ onto }) };
      const headers = { 'Content-Type': 'application/json' };
      const begun = await fetch(`${url}/api/bringings`, {
        method: 'POST',
        ...(onto === undefined ? {} : { headers }),
        ...body,
      });
      const { id } = (await begun.json()) as { id: string };
      for (const [name, content] of Object.entries(files))
        await (await fetch(`${url}${filePath(id, name)}`, raw(content))).text();
      return id;
    },
    async keep(bringing) {
      const kept = await fetch(`${url}/api/bringings/${bringing}/keep`, { method: 'POST' });
      if (kept.status !== 201) throw new Error(`${kept.status}: ${await kept.text()} ${told}`);
      return ((await kept.json()) as { id: string }).id;
    },
    json: async <T>(path: string) => (await (await fetch(`${url}${path}`)).json()) as T,
    async end() {
      child.kill('SIGTERM');
      if (child.exitCode === null) await once(child, 'exit');
      rmSync(folder, { recursive: true });
    },
  };
}
