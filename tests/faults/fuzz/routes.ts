/** A server with a house, a link and a folder beside its own that nothing may reach; and requests sent to it. */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import fc from 'fast-check';
import { newLink } from '../../../server/access/links.ts';
import { createApp } from '../../../server/app.ts';
import type { Calculate } from '../../../server/jobs/tasks.ts';
import { houseFolder } from '../../server/inventedHouse.ts';
import {
  calculateHere,
  heldCalculation,
  type ServerAtHand,
  serverAtHand,
} from '../../server/serverAtHand.ts';
import { type Known, requestsTo, type Sent } from './requests.ts';

const HANG = 60_000; // [ms]

export interface RoutesAtHand {
  /** Every route, as "GET /api/houses". */
  readonly routes: readonly string[];
  /** How often each status was answered by each route. */
  readonly answered: Map<string, Map<number, number>>;
  requests(): fc.Arbitrary<Sent>;
  /** @throws Error when the answer is not as it has to be */
  send(request: Sent): Promise<void>;
  /** @throws Error when a file outside of the data folder is there, gone or changed */
  assertNothingOutside(): void;
  end(): Promise<void>;
}

/** @param assessing whether each change of a house is assessed too, as far as it goes */
export async function routesAtHand(assessing: boolean): Promise<RoutesAtHand> {
  const above = mkdtempSync(join(tmpdir(), 'stillwarm-fuzz-'));
  const outside = join(above, 'outside');
  const data = join(above, 'a/b/data');
  const sample = join(above, 'sample');
  const pages = join(above, 'pages');
  for (const folder of [outside, data, sample, pages]) mkdirSync(folder, { recursive: true });
  writeFileSync(join(outside, 'mine.csv'), 'mine');
  writeFileSync(join(pages, 'index.html'), '<!doctype html><title>Stillwarm</title>');
  for (const [name, text] of Object.entries(houseFolder))
    writeFileSync(join(sample, basename(name)), text.replace('logs/out.csv', 'out.csv'));

  const held = heldCalculation();
  let assessed = 0;
  const calculate: Calculate = (task, onStep) =>
    task.kind !== 'assess' || assessing || assessed++ === 0
      ? calculateHere(task, onStep)
      : held.calculate(task, onStep);
  const server = serverAtHand({ calculate, demonstrationFolder: sample, pages }, data);
  const app = createApp(server.services);
  const { token, hash } = newLink();
  const bringings: string[] = [];
  const answered = new Map<string, Map<number, number>>();
  const before = listing(above, data);
  let cookie = '';

  async function withHouse(): Promise<void> {
    if (server.services.reading.houses().length > 0) return;
    const id = await server.bring(houseFolder);
    const now = Date.now() / 1000;
    await server.services.writer.addLink(id, { hash, scope: 'add', whose: 'x', made: now, until: now + 1e6 });
    cookie = `stillwarm-link=${token}`;
  }
  const resolved = (part: string | Known): string =>
    typeof part === 'string' ? part : knownOf(part, server, bringings, token);

  async function send(sent: Sent): Promise<void> {
    await withHouse();
    const path = sent.parts.map((part) =>
      encodeURIComponent(wellFormed(resolved(part))).replaceAll('%2F', '/'),
    );
    const url = new URL(`http://localhost:8620/${path.join('/')}${sent.query}`);
    const init: RequestInit = {
      method: sent.method,
      headers: {
        Host: url.host,
        ...(sent.type === null ? {} : { 'Content-Type': sent.type }),
        ...(sent.byLink ? { Cookie: cookie } : {}),
        ...(sent.body === null ? {} : { 'Content-Length': String(sent.body.length) }),
      },
      ...(sent.body === null || ['GET', 'HEAD'].includes(sent.method)
        ? {}
        : { body: Uint8Array.from(sent.body) }),
    };
    server.told.length = 0;
    const ask = async () => {
      const response = await app.request(url.href, init);
      return { response, text: await textOf(response) };
    };
    const { response, text } = await inTime(ask());
    const counts = answered.get(sent.route) ?? new Map<number, number>();
    answered.set(sent.route, counts.set(response.status, (counts.get(response.status) ?? 0) + 1));
    if (response.status >= 500) throw new Error(`${response.status}: ${text} ${server.told.join('\n')}`);
    if (server.told.length > 0) throw new Error(`told: ${server.told.join('\n')}`);
    if (response.status >= 400 && sent.method !== 'HEAD' && url.pathname.startsWith('/api'))
      assertRefusal(text);
    if (response.status === 201 && /bringings$/.test(sent.route)) {
      bringings.unshift(JSON.parse(text).id);
      for (const id of bringings.splice(20)) await server.services.bringings.drop(id).catch(() => {});
    }
  }

  await withHouse();
  return {
    routes: [
      ...new Set(
        app.routes.filter(({ method }) => method !== 'ALL').map(({ method, path }) => `${method} ${path}`),
      ),
    ],
    answered,
    requests: () => requestsTo(app.routes, outside),
    send,
    assertNothingOutside() {
      const after = listing(above, data);
      if (after !== before)
        throw new Error(`outside of the data folder there was\n${before}\nand is\n${after}`);
    },
    async end() {
      await server.end();
      rmSync(above, { recursive: true });
    },
  };
}

/** Without halves of characters, which no address can have. */
const wellFormed = (text: string) => new TextDecoder().decode(new TextEncoder().encode(text));

export const requestsProperty = (at: RoutesAtHand) =>
  fc.asyncProperty(at.requests(), (sent) => at.send(sent));

function knownOf(
  { what, n }: Known,
  { services }: ServerAtHand,
  bringings: readonly string[],
  token: string,
): string {
  const houses = services.reading.houses().map(({ id }) => id);
  const all = what === 'house' ? houses : what === 'bringing' ? bringings : ['1', '2', token];
  return all.length === 0 ? 'none' : all[n % all.length];
}

/** What goes on until it is stopped is stopped after its first words. */
async function textOf(response: Response): Promise<string> {
  if (!response.headers.get('content-type')?.startsWith('text/event-stream')) return response.text();
  const reader = response.body?.getReader();
  const first = await reader?.read();
  await reader?.cancel();
  return new TextDecoder().decode(first?.value);
}

function assertRefusal(text: string): void {
  const { problems } = JSON.parse(text);
  if (!Array.isArray(problems) || problems.length === 0 || problems.some((it) => !it.code || !it.text))
    throw new Error(`a refusal that does not say why: ${text}`);
}

async function inTime<T>(answer: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('no answer')), HANG);
  });
  try {
    return await Promise.race([answer, late]);
  } finally {
    clearTimeout(timer);
  }
}

/** Every file with its size and the time of its change, but for those of one folder. */
function listing(folder: string, but: string): string {
  return readdirSync(folder, { withFileTypes: true })
    .map((entry) => {
      const path = join(folder, entry.name);
      if (path === but) return '';
      if (entry.isDirectory()) return `${path}/\n${listing(path, but)}`;
      const { size, mtimeMs } = statSync(path);
      return `${path} ${size} ${mtimeMs}\n`;
    })
    .join('');
}
