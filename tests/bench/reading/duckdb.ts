/** DuckDB's CSV reader, told the layout, on all processors; its columns come over as typed arrays. */
import type { Contestant } from '../bench.ts';
import { load } from '../peers.ts';
import { type Layout, layoutNamed } from './layouts.ts';
import type { Series } from './series.ts';

const PACKAGE = '@duckdb/node-api@1.5.6-r.1';

/** As much of the package as is used here. */
interface DuckDB {
  readonly DuckDBInstance: { create(path: string): Promise<{ connect(): Promise<Connection> }> };
}
interface Connection {
  run(sql: string): Promise<{ fetchChunk(): Promise<Chunk | null> }>;
}
interface Chunk {
  readonly rowCount: number;
  getColumnVector(column: number): { readonly items: Float64Array };
}

export const duckdb: Contestant = {
  name: 'DuckDB read_csv',
  installs: PACKAGE,
  ready: async (kase) => {
    const instance = await load<DuckDB>(PACKAGE).DuckDBInstance.create(':memory:');
    const connection = await instance.connect();
    return (input) => readAll(connection, input, layoutNamed(kase));
  },
};

async function readAll(connection: Connection, input: string, layout: Layout): Promise<Series[]> {
  const result = await connection.run(queryOf(input, layout));
  const chunks: Chunk[] = [];
  for (
    let chunk = await result.fetchChunk();
    chunk !== null && chunk.rowCount > 0;
    chunk = await result.fetchChunk()
  )
    chunks.push(chunk);
  const rows = chunks.reduce((sum, { rowCount }) => sum + rowCount, 0);
  const [time, temperature, humidity] = [0, 1, 2].map((column) => {
    const all = new Float64Array(rows);
    let at = 0;
    for (const chunk of chunks) {
      all.set(chunk.getColumnVector(column).items.subarray(0, chunk.rowCount), at);
      at += chunk.rowCount;
    }
    return all;
  });
  return [temperature, humidity].map((value) => ({ time, value }));
}

function queryOf(input: string, { delimiter, decimal, format, timeZone }: Layout): string {
  const text = (value: string) => `'${value.replaceAll("'", "''")}'`;
  return `
    SELECT epoch(timezone(${text(timeZone)}, "time")), temperature, humidity
    FROM read_csv(${text(input)}, header = true, delim = ${text(delimiter)}, quote = '"',
      decimal_separator = ${text(decimal)}, timestampformat = ${text(format)},
      columns = {'time': 'TIMESTAMP', 'temperature': 'DOUBLE', 'humidity': 'DOUBLE'})`;
}
