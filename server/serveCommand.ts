/** `serve`: the dashboard, until it is told to stop. */
import { statSync } from 'node:fs';
import { resolve, sep } from 'node:path';
import { parseArgs } from 'node:util';
import { accessOf, isForOthers } from './access/access.ts';
import { hashOf, storedIn, unfit } from './access/passphrase.ts';
import { EVERYWHERE, isHost, publicOrigin, reachOf } from './access/reach.ts';
import { dataFolder } from './dataFolder.ts';
import { machineFault } from './machineFault.ts';
import { type Running, serve } from './serve.ts';
import { UnusableDatabase } from './store/database.ts';
import { FolderInUse } from './store/soleUse.ts';

interface Out {
  write(text: string): unknown;
}

const NOT_STARTED = 2;
/** [bytes] */
const MB = 1024 * 1024;
/** No log is larger than this, and a file is held in memory while it is read. */
const MOST_MB = 2000;

/** Starts the server and resolves with the exit code once `stopped` is called for. */
export async function serveCommand(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
  out: Out,
  err: Out,
  stopped: Promise<void>,
): Promise<number> {
  const fail = (text: string) => {
    err.write(`${text}\n`);
    return NOT_STARTED;
  };
  const asked = parse(args, env);
  if (typeof asked === 'string') return fail(asked);
  const { host, port, data, largestMb, origin } = asked;
  const open = isForOthers(host, origin);
  const why = open ? withoutPassphrase(asked) : null;
  if (why !== null) return fail(why);
  let running: Running;
  try {
    const given = open && asked.passphrase !== undefined ? await hashOf(asked.passphrase) : null;
    const access = accessOf({ host, origin, dataFolder: data, given });
    running = await serve(host, port, data, largestMb * MB, access, asked.watch, (text) =>
      err.write(`${text}\n`),
    );
  } catch (error) {
    return fail(whyNot(error, asked));
  }
  out.write(`Stillwarm is at http://${hostToOpen(host)}:${running.port}/\n`);
  if (open) out.write(toOthers(asked, running.port));
  await stopped;
  await running.stop();
  return 0;
}

/** For this machine itself, in a URL. */
function hostToOpen(host: string): string {
  if (EVERYWHERE.includes(host)) return 'localhost';
  return host.includes(':') ? `[${host}]` : host;
}

/** Resolves at the first SIGINT or SIGTERM; a second one ends the process as usual. */
export const toldToStop = () =>
  new Promise<void>((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });

interface Asked {
  readonly host: string;
  readonly port: number;
  readonly data: string;
  /** The largest file that is taken. */
  readonly largestMb: number;
  /** The public address of a proxy before this server. */
  readonly origin: string | null;
  /** Given in the environment. */
  readonly passphrase: string | undefined;
  /** A folder in which houses' logs appear; null for none. */
  readonly watch: string | null;
}

/** Why others cannot be served; null when they can. */
function withoutPassphrase({ data, passphrase }: Asked): string | null {
  if (passphrase !== undefined) return unfit(passphrase);
  return storedIn(data) === null
    ? `Serving others needs a passphrase. Set one with: stillwarm passphrase --data ${data} (or give it in STILLWARM_PASSPHRASE).`
    : null;
}

function toOthers({ host, origin }: Asked, port: number): string {
  if (origin !== null)
    return `Others reach it at ${origin}/ through the proxy; they are asked for the passphrase.\n`;
  const addresses = reachOf(host, null)
    .addresses()
    .map((it) => `http://${it}:${port}/`);
  return (
    `Others on this network reach it at ${addresses.join(' or ') || 'no address yet: this machine is on no network'}; ` +
    'they are asked for the passphrase. This is plain http: whoever can listen on the network can read along, ' +
    'so use it on a network that you trust, or put a proxy with TLS before it (--origin).\n'
  );
}

function parse(args: readonly string[], env: Readonly<Record<string, string | undefined>>): Asked | string {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        port: { type: 'string' },
        data: { type: 'string' },
        host: { type: 'string' },
        'largest-mb': { type: 'string' },
        origin: { type: 'string' },
        watch: { type: 'string' },
      },
    });
    const port = values.port ?? env.STILLWARM_PORT ?? '8620';
    if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535)
      return `“${port}” is not a port. Give a number from 0 (any free port) to 65535.`;
    const host = values.host ?? '127.0.0.1';
    if (!isHost(host))
      return `“${host}” is no address of a machine. Leave --host out for this machine alone; 0.0.0.0 serves others at every address of it.`;
    const origin = values.origin === undefined ? null : publicOrigin(values.origin);
    if (values.origin !== undefined && origin === null)
      return `“${values.origin}” is no public address. Give it as https://houses.example, with nothing behind it.`;
    const largest = values['largest-mb'] ?? env.STILLWARM_LARGEST_MB ?? '512';
    if (!/^\d{1,4}$/.test(largest) || Number(largest) < 1 || Number(largest) > MOST_MB)
      return `“${largest}” is no size for the largest file. Give a whole number of megabytes from 1 to ${MOST_MB}.`;
    const data = dataFolder(values.data, env);
    const passphrase = env.STILLWARM_PASSPHRASE;
    const watch = values.watch === undefined ? null : resolve(values.watch);
    if (watch !== null && !isFolder(watch))
      return `There is no folder ${watch} to watch. Make it first, or name another.`;
    if (watch !== null && isWithin(watch, resolve(data)))
      return `${watch} is where the database lies. Watch a folder of its own.`;
    return { host, port: Number(port), data, largestMb: Number(largest), origin, passphrase, watch };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

const isFolder = (path: string) => statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
const isWithin = (path: string, folder: string) => path === folder || path.startsWith(folder + sep);

function whyNot(error: unknown, { host, port, data }: Asked): string {
  const message = error instanceof Error ? error.message : String(error);
  const code = error instanceof Error && 'code' in error ? error.code : '';
  if (error instanceof UnusableDatabase) return message;
  if (error instanceof FolderInUse)
    return `The data folder ${data} is in use by ${error.by}. Use that one, or stop it first; or name another folder with --data.`;
  if (code === 'EADDRINUSE')
    return `Port ${port} is taken, perhaps by a dashboard that runs already. Stop it, or give another with --port.`;
  if (code === 'EADDRNOTAVAIL' || code === 'ENOTFOUND')
    return `“${host}” is no address of this machine. Give one of its own with --host, or 0.0.0.0 for all of them.`;
  if (code === 'EACCES' && message.includes('listen'))
    return `Port ${port} is not allowed for this user. Give one above 1023 with --port.`;
  const fault = machineFault(error);
  if (fault !== null)
    return `The data folder ${data} cannot be used. ${fault.text}. ${fault.remedy}, then start again.`;
  return `The data folder ${data} cannot be used: ${message}. Name another with --data.`;
}
