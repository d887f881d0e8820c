/** The built dashboard as its own process, on any free port and a data folder of the test's. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

export interface Stillwarm {
  readonly address: string;
  /** The id of the demonstration house, once it is assessed. */
  demonstration(): Promise<string>;
  stop(): Promise<void>;
}

export async function startStillwarm(data: string): Promise<Stillwarm> {
  const command = fileURLToPath(new URL('../../dist/cli.mjs', import.meta.url));
  const server = spawn(process.execPath, [command, 'serve', '--port', '0', '--data', data], {
    stdio: ['ignore', 'pipe', 'inherit'],
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
  const houses = async () =>
    (await (await fetch(`${address}/api/houses`)).json()) as {
      houses: { id: string; invented: boolean; state: { kind: string } }[];
    };
  return {
    address,
    async demonstration() {
      for (let tries = 0; tries < 1200; tries++) {
        const house = (await houses()).houses.find(({ invented }) => invented);
        if (house?.state.kind === 'assessed') return house.id;
        await new Promise((resolve) => setTimeout(resolve, 100));
      }
      throw new Error('the demonstration house was not assessed within 120 s');
    },
    async stop() {
      server.kill('SIGTERM');
      if (server.exitCode === null) await once(server, 'exit');
    },
  };
}
