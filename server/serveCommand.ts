/** `serve`: the dashboard, until it is told to stop. */
import { parseArgs } from 'node:util';
import { type Running, serve } from './serve.ts';
import { UnusableDatabase } from './store/database.ts';

interface Out {
  write(text: string): unknown;
}

const LOOPBACK = ['127.0.0.1', 'localhost', '::1'];
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
  const { host, port, data, largestMb } = asked;
  let running: Running;
  try {
    running = await serve(host, port, data, largestMb * MB, (text) => err.write(`${text}\n`));
  } catch (error) {
    return fail(whyNot(error, asked));
  }
  out.write(`Stillwarm is at http://${host.includes(':') ? `[${host}]` : host}:${running.port}/\n`);
  await stopped;
  await running.stop();
  return 0;
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
      },
    });
    const port = values.port ?? env.STILLWARM_PORT ?? '8620';
    if (!/^\d{1,5}$/.test(port) || Number(port) > 65_535)
      return `“${port}” is not a port. Give a number from 0 (any free port) to 65535.`;
    const host = values.host ?? '127.0.0.1';
    if (!LOOPBACK.includes(host))
      return `“${host}” would let other machines in, which needs a passphrase, and there is none yet. Leave --host out, or give one of ${LOOPBACK.join(', ')}.`;
    const largest = values['largest-mb'] ?? env.STILLWARM_LARGEST_MB ?? '512';
    if (!/^\d{1,4}$/.test(largest) || Number(largest) < 1 || Number(largest) > MOST_MB)
      return `“${largest}” is no size for the largest file. Give a whole number of megabytes from 1 to ${MOST_MB}.`;
    const data = values.data ?? env.STILLWARM_DATA ?? './data';
    return { host, port: Number(port), data, largestMb: Number(largest) };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function whyNot(error: unknown, { port, data }: Asked): string {
  const message = error instanceof Error ? error.message : String(error);
  const code = error instanceof Error && 'code' in error ? error.code : '';
  if (error instanceof UnusableDatabase) return message;
  if (code === 'EADDRINUSE')
    return `Port ${port} is taken, perhaps by a dashboard that runs already. Stop it, or give another with --port.`;
  if (code === 'EACCES' && message.includes('listen'))
    return `Port ${port} is not allowed for this user. Give one above 1023 with --port.`;
  return `The data folder ${data} cannot be used: ${message}. Name another with --data.`;
}
