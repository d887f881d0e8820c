/** The built dashboard as its own process, on any free port and a data folder of the test's. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

export type Files = Readonly<Record<string, string | Uint8Array<ArrayBuffer>>>;

export interface Stillwarm {
  readonly address: string;
  /** The id of the demonstration house, once it is assessed. */
  demonstration(): Promise<string>;
  /** The same id, once the house is assessed as it now stands. */
  assessed(id: string): Promise<string>;
  /** The id of the house brought with these files, once it is assessed. */
  bring(files: Files): Promise<string>;
  stop(): Promise<void>;
}

/** @param passphrase with which it serves others too; this machine alone when left out */
export async function startStillwarm(data: string, passphrase?: string): Promise<Stillwarm> {
  const command = fileURLToPath(new URL('../../dist/cli.mjs', import.meta.url));
  const others = passphrase === undefined ? [] : ['--host', '0.0.0.0'];
  const server = spawn(process.execPath, [command, 'serve', '--port', '0', '--data', data, ...others], {
    stdio: ['ignore', 'pipe', passphrase === undefined ? 'inherit' : 'ignore'],
    env: { ...process.env, ...(passphrase === undefined ? {} : { STILLWARM_PASSPHRASE: passphrase }) },
  });
  let said = '';
  const address = await new Promise<string>((resolve, reject) => {
    server.once('exit', (code) =>
      reject(new Error(`the server ended with ${code} before it was up: ${said}`)),
    );
    server.stdout.on('data', (chunk) => {
      said += chunk;
      const found = /http:\/\/\S+?(?=\/?\s)/.exec(said);
      if (found) resolve(found[0]);
    });
  });
  const ask = async <T>(path: string, init?: RequestInit) => {
    const response = await fetch(`${address}/api${path}`, init);
    if (!response.ok) throw new Error(`${path}: ${await response.text()}`);
    return (await response.json()) as T;
  };
  const found = async (which: (house: Listed) => boolean) => {
    for (let tries = 0; tries < 1200; tries++) {
      const house = (await ask<{ houses: readonly Listed[] }>('/houses')).houses.find(which);
      if (house?.state.kind === 'assessed') return house.id;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error('the house was not assessed within 120 s');
  };
  const assessed = (id: string) => found((house) => house.id === id);
  return {
    address,
    demonstration: () => found(({ invented }) => invented),
    assessed,
    async bring(files) {
      const { id: bringing } = await ask<{ id: string }>('/bringings', { method: 'POST' });
      const headers = { 'Content-Type': 'application/octet-stream' };
      for (const [name, body] of Object.entries(files))
        await ask(`/bringings/${bringing}/files/${name}`, { method: 'PUT', headers, body });
      const { id } = await ask<{ id: string }>(`/bringings/${bringing}/keep`, { method: 'POST' });
      return assessed(id);
    },
    async stop() {
      server.kill('SIGTERM');
      if (server.exitCode === null) await once(server, 'exit');
    },
  };
}

interface Listed {
  readonly id: string;
  readonly invented: boolean;
  readonly state: { readonly kind: string };
}
