/** `backup FILE`: everything that the dashboard holds as one file, also while it runs. */
import { existsSync, realpathSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { dataFolder } from './dataFolder.ts';
import { machineFault } from './machineFault.ts';
import { DATABASE_FILE, openForReading } from './store/database.ts';
import { DamagedDatabase, isDamage } from './store/soundness.ts';
import { whatIsAt } from './store/whatIsAt.ts';
import { copyWhole } from './store/wholeCopy.ts';

interface Out {
  write(text: string): unknown;
}

const NOT_MADE = 2;

/** Runs the command and returns its exit code. The file is written whole or not at all. */
export function backupCommand(
  args: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
  out: Out,
  err: Out,
): number {
  const fail = (text: string) => {
    err.write(`${text}\n`);
    return NOT_MADE;
  };
  const asked = parse(args, env);
  if (typeof asked === 'string') return fail(asked);
  const { file, data, overwrite } = asked;
  const database = join(data, DATABASE_FILE);
  if (!existsSync(database))
    return fail(
      `There is nothing to back up: ${data} holds no ${DATABASE_FILE}. Name its folder with --data.`,
    );
  if (!existsSync(dirname(resolve(file))))
    return fail(`There is no folder ${dirname(resolve(file))} to put the backup into.`);
  if (existsSync(file)) {
    if (realpathSync(file) === realpathSync(database))
      return fail('This is the database itself. Give the backup a name of its own.');
    if (statSync(file).isDirectory()) return fail(`${file} is a folder. Name a file in it.`);
    if (!statSync(file).isFile()) return fail(`${file} is no plain file. Give the backup a name of its own.`);
    if (!overwrite)
      return fail(`${file} is there already and was left as it is. Name another, or add --overwrite.`);
  }
  try {
    if (whatIsAt(database).kind !== 'ours')
      return fail(`${database} is not a database of this version of Stillwarm; no backup was made.`);
    const db = openForReading(database);
    try {
      copyWhole(db, file);
    } finally {
      db.close();
    }
  } catch (error) {
    return fail(whyNot(error, database, file));
  }
  out.write(`${file}: ${sizeOf(statSync(file).size)}, checked. Keep it where the data folder is not.\n`);
  return 0;
}

interface Asked {
  readonly file: string;
  readonly data: string;
  readonly overwrite: boolean;
}

function parse(args: readonly string[], env: Readonly<Record<string, string | undefined>>): Asked | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { data: { type: 'string' }, overwrite: { type: 'boolean', default: false } },
    });
    if (positionals.length !== 1)
      return 'Name one file for the backup: stillwarm backup FILE [--data DIR] [--overwrite]';
    return { file: positionals[0], data: dataFolder(values.data, env), overwrite: values.overwrite };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

function whyNot(error: unknown, database: string, file: string): string {
  const message = error instanceof Error ? error.message : String(error);
  if (error instanceof DamagedDatabase || isDamage(error))
    return `${database} is damaged (${message}), so no backup of it was made. Restore the latest backup that there is.`;
  const fault = machineFault(error);
  if (fault?.code === 'storage-busy')
    return `${fault.text} (${database}), so no backup of it was made. ${fault.remedy}, then try again.`;
  return `The backup ${file} could not be written: ${message}. Nothing of it was left behind.`;
}

const sizeOf = (bytes: number) => `${(bytes / 1024 / 1024).toFixed(1)} MB`;
