/**
 * DuckDB with the same readings in a table in the order of channel and time: the same view from the readings, and
 * from a table of hourly summaries as ours has them; the import inserts a year of as many channels.
 */
import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readReadings } from '../../../server/store/readingsFile.ts';
import type { Contestant } from '../bench.ts';
import { START } from '../house/inventedHouse.ts';
import { load } from '../peers.ts';
import { cases, meanwhile, viewed } from './views.ts';

const PACKAGE = '@duckdb/node-api@1.5.6-r.1';

/** As much of the package as is used here. */
interface DuckDB {
  readonly DuckDBInstance: {
    create(path: string): Promise<{ connect(): Promise<Connection>; closeSync(): void }>;
  };
}
interface Connection {
  closeSync(): void;
  run(sql: string): Promise<unknown>;
  runAndReadAll(sql: string): Promise<{ getColumnsObject(): Record<string, (number | null)[]> }>;
}

const INTERVALS = 1000;
const FILE = 'house.duckdb';
const open = (input: string) => load<DuckDB>(PACKAGE).DuckDBInstance.create(join(input, FILE));

/** From the table of the hours, or of the readings. */
const contestant = (table: 'hour' | 'reading', own: Partial<Contestant>): Contestant => ({
  name: `DuckDB, from the ${table}s`,
  installs: PACKAGE,
  ready: async (kase) => async (input) => {
    const instance = await open(input);
    const [connection, other] = [await instance.connect(), await instance.connect()];
    const stop = meanwhile(
      cases.some((it) => it.name === kase && it.importing),
      () => importInto(other, input),
    );
    const made = await viewed(() => view(connection, table));
    const imports = await stop();
    for (const it of [connection, other, instance]) it.closeSync();
    return { ...made, imports };
  },
  ...own,
});

export const duckdb = [contestant('reading', { prepare: ingest }), contestant('hour', {})];

async function view(connection: Connection, table: 'hour' | 'reading'): Promise<string> {
  const bounds = await connection.runAndReadAll('SELECT min(time) AS first, max(time) AS last FROM reading');
  const { first, last } = bounds.getColumnsObject();
  const step = 3600 * Math.ceil((Number(last[0]) - Number(first[0])) / (INTERVALS - 1) / 3600);
  const value = table === 'hour' ? ['min', 'max'] : ['value', 'value'];
  const result = await connection.runAndReadAll(
    `SELECT channel, time // ${step} AS interval, min(${value[0]}) AS min, max(${value[1]}) AS max
     FROM ${table} GROUP BY ALL ORDER BY ALL`,
  );
  const columns = result.getColumnsObject();
  const channels: { min: (number | null)[]; max: (number | null)[] }[] = [];
  columns.channel.forEach((channel, i) => {
    channels[Number(channel)] ??= { min: [], max: [] };
    channels[Number(channel)].min.push(columns.min[i]);
    channels[Number(channel)].max.push(columns.max[i]);
  });
  return JSON.stringify({ channels });
}

/** The values of the readings files as text, then in; one transaction. */
async function ingest(input: string): Promise<void> {
  if (existsSync(join(input, FILE))) return;
  for (const folder of ['kept', 'import'])
    for (const channel of readdirSync(join(input, folder)).filter((it) => !it.endsWith('.txt')))
      writeFileSync(
        join(input, folder, `${channel}.txt`),
        readReadings(join(input, folder, channel)).value.join('\n'),
      );
  const instance = await open(input);
  const connection = await instance.connect();
  await connection.run('CREATE TABLE reading (channel INTEGER, time INTEGER, value DOUBLE)');
  await connection.run(insertion('reading', join(input, 'kept')));
  await connection.run(
    `CREATE TABLE hour AS SELECT channel, time // 3600 * 3600 AS time, min(value) AS min, max(value) AS max
     FROM reading GROUP BY ALL ORDER BY ALL`,
  );
  await connection.run('CHECKPOINT');
  connection.closeSync();
  instance.closeSync();
}

async function importInto(connection: Connection, input: string): Promise<void> {
  await connection.run('CREATE TABLE imported (channel INTEGER, time INTEGER, value DOUBLE)');
  await connection.run(insertion('imported', join(input, 'import')));
  await connection.run('DROP TABLE imported');
}

const insertion = (table: string, folder: string) =>
  readdirSync(folder)
    .filter((it) => it.endsWith('.txt'))
    .map(
      (
        file,
      ) => `INSERT INTO ${table} SELECT ${Number.parseInt(file, 10)}, ${START} + 60 * (row_number() OVER () - 1), value
        FROM read_csv('${join(folder, file)}', header = false, columns = {'value': 'DOUBLE'});`,
    )
    .join('\n');
