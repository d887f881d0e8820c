/** The files of a house, each read once for each way of reading it. */
import type { HeatEntry, House, Logger, WeatherFile } from '../house.ts';
import { type LogFinding, type LogHints, type LogReading, readLog } from '../logs/index.ts';
import type { RecordFinding } from './finding.ts';

/** One file as it was read. */
export interface FileAccount {
  readonly file: string;
  readonly reading: LogReading;
}

/** A file that is about to be read: `done` others have been, of `of` in all. */
export interface FileStep {
  readonly file: string;
  readonly done: number;
  readonly of: number;
}

/** A file that could not be taken in, and why; or one that was and is still being written. */
export type FileRemark = 'a folder' | 'too large' | 'unreadable' | 'still being written';

/** How a house's files are read. */
export interface ReadingFiles {
  /** Told of each file before it is read. */
  readonly onFile?: (step: FileStep) => void;
  /** For a caller that has readings of these files already. */
  readonly read?: typeof readLog;
  /** What the caller met when it took the files in. */
  readonly remarks?: ReadonlyMap<string, FileRemark>;
}

export type ReadFile = LogReading & { readonly kind: 'read' };
export type Entry = Logger | WeatherFile | HeatEntry;

export interface Shelf {
  /** A file as an entry of the house has it read; null where there is nothing to read. */
  read(file: string, entry: Entry): ReadFile | null;
  /** One for each file, whatever ways it was read in. */
  readonly accounts: readonly FileAccount[];
  /** What is missing or unreadable, and what the files leave open. */
  readonly findings: readonly (RecordFinding | LogFinding)[];
}

/** Reads every file that the house names. Where one leaves day and month open, the others tell. */
export function shelfOf(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  { onFile = () => {}, read = readLog, remarks = new Map() }: ReadingFiles,
): Shelf {
  const named = filesNamed(house).filter((file) => files.has(file));
  const missing = new Set<string>();
  const begun = new Set<string>();
  const readings = new Map<string, LogReading>();
  const findings: (RecordFinding | LogFinding)[] = [];
  const way = (file: string, entry: Entry) => JSON.stringify([file, hintsOf(entry, house)]);

  const ways = entriesOf(house).flatMap(({ entry, key }) =>
    filesOf(entry).map((file) => ({ file, entry, key })),
  );
  for (const { file, entry, key } of ways) {
    const bytes = files.get(file);
    if (bytes === undefined) {
      if (!missing.has(file)) findings.push({ ...missingBecause(remarks.get(file)), where: { file, key } });
      missing.add(file);
    } else if (!readings.has(way(file, entry))) {
      if (!begun.has(file)) onFile({ file, done: begun.size, of: named.length });
      begun.add(file);
      readings.set(way(file, entry), read(file, bytes, hintsOf(entry, house)));
    }
  }
  for (const [file, remark] of remarks)
    if (remark === 'still being written') findings.push({ code: 'file-still-written', where: { file } });
  const order = orderAgreedBy([...readings.values()]);
  for (const { file, entry } of ways) {
    const bytes = files.get(file);
    const before = readings.get(way(file, entry));
    if (
      order === null ||
      bytes === undefined ||
      before?.findings.every((it) => it.code !== 'date-order-unknown')
    )
      continue;
    readings.set(way(file, entry), read(file, bytes, { ...hintsOf(entry, house), orderOfOthers: order }));
  }
  for (const { file, entry } of fahrenheitAmong([...readings.values()]) ? ways : []) {
    const bytes = files.get(file);
    const before = readings.get(way(file, entry));
    if (bytes === undefined || before?.kind !== 'read' || !leavesUnitOpen(before)) continue;
    readings.set(way(file, entry), read(file, bytes, { ...hintsOf(entry, house), temperatureUnit: 'F' }));
    findings.push({ code: 'unit-as-other-files', taken: 'F', where: { file } });
  }
  const unitsAnswered = new Set(
    (house.heat ?? []).flatMap((entry) => (entry.unit === undefined ? [] : filesOf(entry))),
  );
  const isOpen = ({ code }: LogFinding, file: string) => code !== 'unit-assumed' || !unitsAnswered.has(file);
  for (const reading of readings.values())
    findings.push(
      ...(reading.kind === 'unreadable'
        ? reading.findings
        : reading.findings.filter((it) => isQuestion(it) && isOpen(it, reading.file))),
    );

  const byFile = new Map<string, LogReading>();
  for (const reading of readings.values())
    byFile.set(reading.file, merged(byFile.get(reading.file), reading));
  return {
    read(file, entry) {
      const reading = readings.get(way(file, entry));
      return reading?.kind === 'read' ? reading : null;
    },
    accounts: Array.from(byFile, ([file, reading]) => ({ file, reading })),
    findings,
  };
}

const missingBecause = (remark: FileRemark | undefined) =>
  remark === undefined || remark === 'still being written'
    ? ({ code: 'file-missing' } as const)
    : ({ code: 'file-not-taken', why: remark } as const);

/** Every file that the house names, each once. */
export const filesNamed = (house: House): string[] => [
  ...new Set(entriesOf(house).flatMap(({ entry }) => filesOf(entry))),
];

/** The file of an entry and the later exports of the same logger. */
export const filesOf = ({ file, continuedIn = [] }: Entry): string[] =>
  file === undefined ? [] : [file, ...continuedIn];

const entriesOf = ({ loggers, weather = [], heat = [] }: House): { entry: Entry; key: string }[] => [
  ...loggers.map((entry, i) => ({ entry, key: `loggers[${i}]` })),
  ...weather.map((entry, i) => ({ entry, key: `weather[${i}]` })),
  ...heat.map((entry, i) => ({ entry, key: `heat[${i}]` })),
];

/** The order of day and month in all files that tell it; null where none does or two differ. */
function orderAgreedBy(readings: readonly LogReading[]): 'day-first' | 'month-first' | null {
  const orders = readings.flatMap((reading) => {
    if (reading.kind === 'unreadable' || reading.understood.clock.orderBy !== 'the whole file') return [];
    const { order } = reading.understood.clock;
    return order === 'day-first' || order === 'month-first' ? [order] : [];
  });
  return orders.length > 0 && orders.every((order) => order === orders[0]) ? orders[0] : null;
}

/** A file of the house can only be in °F, though it does not say so: its loggers were set so. */
const fahrenheitAmong = (readings: readonly LogReading[]) =>
  readings.some(({ findings }) =>
    findings.some((it) => it.code === 'temperature-unit-guessed' && it.taken === 'F'),
  );

/** A temperature without a unit that was taken for °C because it can be. */
const leavesUnitOpen = ({ understood, findings }: ReadFile) =>
  findings.every(({ code }) => code !== 'temperature-unit-guessed') &&
  understood.columns.some(({ quantity, unitStated }) => quantity === 'temperature' && !unitStated);

/** One file read in two ways (other columns named) has the columns of both. */
function merged(first: LogReading | undefined, second: LogReading): LogReading {
  if (first === undefined || first.kind === 'unreadable') return second;
  if (second.kind === 'unreadable') return first;
  const known = new Set(first.channels.map(({ column }) => column));
  const said = new Set(first.findings.map((finding) => JSON.stringify(finding)));
  return {
    ...first,
    understood: {
      ...first.understood,
      columns: first.understood.columns.map((column, at) =>
        column.quantity === null ? second.understood.columns[at] : column,
      ),
    },
    channels: [...first.channels, ...second.channels.filter(({ column }) => !known.has(column))],
    findings: [...first.findings, ...second.findings.filter((finding) => !said.has(JSON.stringify(finding)))],
  };
}

/** What the file does not say and the person should: told aloud and not only in the file's own account. */
const isQuestion = ({ code }: LogFinding): boolean => questions.has(code);
const questions: ReadonlySet<LogFinding['code']> = new Set([
  'clock-reset',
  'column-not-found',
  'columns-moved',
  'date-order-unknown',
  'dates-contradict',
  'decimal-mark-guessed',
  'doubled-hour-once',
  'local-time-missing',
  'quantity-guessed',
  'readings-doubted',
  'second-time-column',
  'serial-days-guessed',
  'temperature-unit-guessed',
  'times-collapse',
  'unit-assumed',
  'unit-doubted',
  'zone-ambiguous',
]);

function hintsOf(entry: Entry, { location }: House): LogHints {
  const heat = 'kind' in entry ? entry : null;
  return {
    timeZone: location.timeZone,
    clockZone: entry.timeZone,
    clockOffset: (entry.clockOffsetMin ?? 0) * 60,
    columns: entry.columns ?? {},
    dateOrder: entry.read?.dateOrder,
    decimal: entry.read?.decimal,
    temperatureUnit: entry.read?.unit,
    serialFrom: entry.read?.serialFrom,
    expected: heat?.kind,
    energyPerUnit: heat?.kWhPerUnit === undefined ? undefined : heat.kWhPerUnit * 3.6e6,
  };
}
