/** `passphrase`: asked for, never an argument: arguments stand in the history of the shell and the list of processes. */
import { mkdirSync } from 'node:fs';
import type { ReadStream } from 'node:tty';
import { parseArgs, TextDecoder } from 'node:util';
import { hashOf, store, unfit } from './access/passphrase.ts';

interface Out {
  write(text: string): unknown;
}

/** From a terminal it is typed twice, unseen; from anywhere else one line is read. */
type In = AsyncIterable<unknown> & Partial<Pick<ReadStream, 'isTTY' | 'setRawMode'>>;

const NOT_SET = 2;

export async function passphraseCommand(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
  input: In,
  out: Out,
  err: Out,
): Promise<number> {
  const fail = (text: string) => {
    err.write(`${text}\n`);
    return NOT_SET;
  };
  let data: string;
  try {
    const { values } = parseArgs({ args: [...args], options: { data: { type: 'string' } } });
    data = values.data ?? env.STILLWARM_DATA ?? './data';
  } catch (error) {
    return fail(error instanceof Error ? error.message : String(error));
  }
  const typed = await lines(input, out);
  if (typed === null) return fail('No passphrase was set.');
  const [passphrase, again] = typed;
  const wrong = unfit(passphrase);
  if (wrong !== null) return fail(`${wrong} Nothing was changed.`);
  if (again !== passphrase) return fail('The two are not the same. Nothing was changed.');
  try {
    mkdirSync(data, { recursive: true });
    store(data, await hashOf(passphrase));
  } catch (error) {
    return fail(`It could not be kept in ${data}: ${error instanceof Error ? error.message : String(error)}`);
  }
  out.write('The passphrase is set. Whoever has signed in with another one has to sign in again.\n');
  return 0;
}

/** The passphrase and its repetition; null when it was called off. */
async function lines(input: In, out: Out): Promise<readonly [string, string] | null> {
  const terminal = input.isTTY === true;
  if (terminal) input.setRawMode?.(true);
  try {
    if (terminal) out.write('Passphrase (it is not shown): ');
    const typed = [''];
    const decoder = new TextDecoder();
    for await (const chunk of input) {
      for (const character of decoded(decoder, chunk)) {
        if (character === CALLED_OFF) return null;
        if (character === '\r' || character === '\n') {
          if (terminal) out.write(typed.length === 1 ? '\nThe same again: ' : '\n');
          if (!terminal || typed.length === 2) return [typed[0], typed.at(-1) ?? ''];
          typed.push('');
        } else if (character === '\u007f' || character === '\b') typed.push((typed.pop() ?? '').slice(0, -1));
        else typed.push((typed.pop() ?? '') + character);
      }
    }
    return terminal ? null : [typed[0], typed[0]];
  } finally {
    if (terminal) input.setRawMode?.(false);
  }
}

/** A character may lie across two chunks. */
const decoded = (decoder: TextDecoder, chunk: unknown) =>
  chunk instanceof Uint8Array ? decoder.decode(chunk, { stream: true }) : String(chunk);

const CALLED_OFF = '\u0003'; // control and c
