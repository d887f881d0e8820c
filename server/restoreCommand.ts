/** `restore FILE`: the dashboard as it was when the backup was made. What is there is put aside. */
import { accessSync, constants, existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { dataFolder } from './dataFolder.ts';
import { machineFault } from './machineFault.ts';
import { restoreInto } from './store/restoring.ts';

interface Out {
  write(text: string): unknown;
}

const NOT_RESTORED = 2;

/** Runs the command and returns its exit code. When it is not 0, the folder is as it was. */
export function restoreCommand(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
  now: Date,
  out: Out,
  err: Out,
): number {
  const fail = (text: string) => {
    err.write(`${text}\n`);
    return NOT_RESTORED;
  };
  const asked = parse(args, env);
  if (typeof asked === 'string') return fail(asked);
  const { file, data } = asked;
  if (!existsSync(file)) return fail(`There is no file ${file}.`);
  if (!isReadable(file))
    return fail(`${file} cannot be read by this user; nothing was changed. Allow it, then restore again.`);
  try {
    const restored = restoreInto(data, file, now);
    switch (restored.kind) {
      case 'no backup':
        return fail(`${file} is no backup of Stillwarm; nothing was changed.`);
      case 'newer':
        return fail(
          `${file} was made by a newer version of Stillwarm; nothing was changed. Restore it with that version.`,
        );
      case 'damaged':
        return fail(
          `${file} is damaged (${restored.fault}); nothing was changed. Try an earlier backup, or copy this one again.`,
        );
      case 'the database itself':
        return fail(`${file} is the database of ${data} itself; nothing was changed.`);
      case 'in use':
        return fail(
          `${data} is in use by ${restored.by}; nothing was changed. Stop that one, then restore again.`,
        );
      case 'restored':
        out.write(`${data} is now as ${file} has it.\n`);
        if (restored.aside !== null) out.write(`What was there before is in ${restored.aside}.\n`);
        return 0;
    }
  } catch (error) {
    const fault = machineFault(error);
    const why = fault?.text ?? (error instanceof Error ? error.message : String(error));
    const remedy = fault === null ? '' : ` ${fault.remedy}, then restore again.`;
    return fail(`${file} could not be restored into ${data}: ${why}. What was there is as it was.${remedy}`);
  }
}

function isReadable(file: string): boolean {
  try {
    accessSync(file, constants.R_OK);
    return true;
  } catch {
    return false;
  }
}

function parse(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): { readonly file: string; readonly data: string } | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { data: { type: 'string' } },
    });
    if (positionals.length !== 1) return 'Name one backup: stillwarm restore FILE [--data DIR]';
    return { file: positionals[0], data: dataFolder(values.data, env) };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}
