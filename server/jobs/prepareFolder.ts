/** A house folder on disk, read once -> what was understood of it, and all that is to be stored of it. */
import { readFileSync } from 'node:fs';
import type { AssessStep } from '../../src/assess.ts';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import type { LogFinding } from '../../src/logs/index.ts';
import {
  type FileAccount,
  type FileStep,
  filesNamed,
  filesOf,
  gatherRecord,
  type ReadingFiles,
  type Shelf,
  shelfOf,
} from '../../src/record/index.ts';
import { reportImport } from '../../src/report.ts';
import { say } from '../../src/words/index.ts';
import type { BringingPreview, FilePreview } from '../api/shapes.ts';
import { openForReading } from '../store/database.ts';
import {
  bytesOf,
  type HouseToStore,
  houseToStore,
  type ReadFolder,
  readAlike,
  unreadHouse,
} from '../store/houseToStore.ts';
import { entriesOf } from '../store/joinedChannels.ts';
import { answersOf, signatureOf } from '../store/layout.ts';
import { type Reading, readingFrom } from '../store/reading.ts';
import type { Onto } from './bringings.ts';
import { continuedText } from './continued.ts';
import { farApart } from './farApart.ts';
import { fileChange } from './fileChange.ts';
import { joinedInto } from './joinedInto.ts';
import { noRecord } from './noRecord.ts';
import { preparedByTouched } from './onlyTouched.ts';
import { houseless, withAllTried, withPlaced } from './placed.ts';
import { readingOnce } from './readingOnce.ts';
import { type Match, matchOf } from './sameLogger.ts';
import { type BroughtFile, HOUSE_FILE, readStaged, type StagedFolder } from './stagedFolder.ts';
import { houseIn, type StoredBase, storedBase } from './storedFolder.ts';

export interface FolderToPrepare {
  /** Path of the database file, which is opened for reading. */
  readonly database: string;
  readonly folder: StagedFolder;
  /** The stored house that the folder is added to; null for a house of its own. */
  readonly onto: Onto | null;
  /** A folder for the readings that are to be stored, made here. */
  readonly into: string;
}

export interface PreparedFolder {
  readonly preview: Omit<BringingPreview, 'id' | 'onto'>;
  /** Null unless the preview is ready. */
  readonly house: HouseToStore | null;
  /** The file, posted before, into which the one that is posted is joined. */
  readonly joinedInto: string | null;
}

export function prepareFolder(task: FolderToPrepare, onStep: (step: AssessStep) => void): PreparedFolder {
  const db = openForReading(task.database);
  try {
    const store = readingFrom(db);
    const byTouched = task.onto?.unseen === true ? preparedByTouched(task, store, onStep) : null;
    return byTouched ?? prepared(task, store, onStep);
  } finally {
    db.close();
  }
}

function prepared(
  { folder, onto, into }: FolderToPrepare,
  store: Reading,
  onStep: (step: AssessStep) => void,
): PreparedFolder {
  const brought = readStaged(folder);
  const base = onto === null ? null : storedBase(store, onto.id);
  const files = new Map([...(base?.files ?? []), ...brought]);
  const bytes = bytesOf(files);
  const read = readingOnce();
  const onFile = (step: FileStep) => onStep({ kind: 'read', ...step });
  const matches =
    base === null ? new Map<string, Match>() : matchesOf(base, brought, bytes, { read, onFile });

  const json = jsonOf(folder, base, matches);
  const reading = json === null ? null : houseIn(json);
  const house = reading?.kind === 'house' ? reading.house : null;
  if (base !== null && brought.size === 0 && house !== null && json !== null && readAlike(base.house, house))
    return unread({ house, json, files: base.files });
  const named = house === null ? [] : filesNamed(house);
  const unnamed = [...brought.keys()].filter((name) => !named.includes(name));
  const all = withPlaced(house ?? base?.house ?? houseless, unnamed, (name) => {
    const match = matches.get(name);
    return match?.kind === 'continues' ? match.of : null;
  });
  // Of a house that is added to, all has been read by now.
  const shelf = shelfOf(all, bytes, base === null ? { read, onFile } : { read });
  const accounts = shelf.accounts.filter(({ file }) => brought.has(file));
  const imports = accounts.map((account): FilePreview => {
    const { file } = account;
    const match = matches.get(file);
    return {
      imported: reportImport(account, all.location.timeZone),
      named: named.includes(file),
      remembered: house !== null && isAnswered(file, house) ? null : rememberedOf(account, store),
      change:
        match === undefined
          ? null
          : fileChange(file, match, all, (it) => base?.files.has(it) === true, shelf),
    };
  });
  const rest = { house, files: imports };
  const notReady = (problems: readonly Message[], missing: readonly string[]): PreparedFolder => ({
    preview: { ...rest, problems, missing, notes: [], ready: false },
    house: null,
    joinedInto: null,
  });
  if (house === null || json === null)
    return notReady(reading?.kind === 'problems' ? reading.problems.map(say) : [noHouseFile], []);

  const missing = named.filter((name) => !files.has(name));
  const apart = farApart(shelf.accounts.filter(({ file }) => named.includes(file)));
  if (apart.length > 0) return notReady(apart, missing);
  const joined =
    base !== null && onto !== null && onto.posted !== null
      ? joinedInto(store.postedFiles(onto.id), { brought, matches, shelf }, base, into, { read })
      : null;
  const folderNow =
    base === null || joined === null
      ? { house, json, files: new Map([...files].filter(([name]) => named.includes(name))) }
      : { ...base, files: joined.files };
  const gathered = gatherRecord(folderNow.house, bytesOf(folderNow.files), { read });
  const problems = accounts.flatMap((account) => (named.includes(account.file) ? noLog(account) : []));
  // While files are still to come, the list of the missing says enough.
  if (gathered.kind === 'no record' && missing.length === 0) problems.push(noRecord(gathered.missing));
  const ready = gathered.kind === 'record' && problems.length === 0;
  return {
    preview: { ...rest, problems, missing, notes: notesOf(gathered.findings, shelf), ready },
    house: ready ? houseToStore(folderNow, into, read) : null,
    joinedInto: joined?.file ?? null,
  };
}

/** A change of house.json that no reading hangs on: a note, a decision, a wall. */
const unread = (folder: ReadFolder): PreparedFolder => ({
  preview: { house: folder.house, files: [], problems: [], missing: [], notes: [], ready: true },
  house: unreadHouse(folder),
  joinedInto: null,
});

function matchesOf(
  { house, files }: StoredBase,
  brought: ReadonlyMap<string, BroughtFile>,
  bytes: ReadonlyMap<string, Uint8Array>,
  how: ReadingFiles,
): ReadonlyMap<string, Match> {
  const shelf = shelfOf(withAllTried(house, [...brought.keys()]), bytes, how);
  return new Map(Array.from(brought, ([name, file]) => [name, matchOf(name, file, house, files, shelf)]));
}

/** As it was brought, else that of the stored house with the later exports where they belong. */
function jsonOf(
  folder: StagedFolder,
  base: StoredBase | null,
  matches: ReadonlyMap<string, Match>,
): Uint8Array | null {
  const own = folder.get(HOUSE_FILE);
  if (own !== undefined) return readFileSync(own.path);
  if (base === null) return null;
  const placed = filesNamed(base.house);
  const continued = Array.from(matches).flatMap(([name, { kind, of }]): [string, string][] =>
    kind === 'continues' && of !== null && !placed.includes(name) ? [[name, of]] : [],
  );
  return continued.length === 0 ? base.json : continuedJson(base, new Map(continued));
}

const continuedJson = ({ json, house }: StoredBase, continued: ReadonlyMap<string, string>) =>
  new TextEncoder().encode(continuedText(new TextDecoder().decode(json), house, continued));

const isAnswered = (file: string, house: House) =>
  entriesOf(house).some(({ entry }) => filesOf(entry).includes(file) && answersOf(entry) !== null);

const rememberedOf = ({ reading }: FileAccount, store: Reading) =>
  reading.understood === null ? null : store.layout(signatureOf(reading.understood));

/** What speaks against storing a file at all: it holds no log, whatever may be answered about it. */
const noLog = ({ reading }: FileAccount): Message[] =>
  reading.findings.filter(({ code }) => isNoLog.has(code)).map(say);
const isNoLog: ReadonlySet<LogFinding['code']> = new Set([
  'file-empty',
  'file-not-text',
  'archive-refused',
  'archive-several-logs',
]);

/** What is not told with a file already. */
function notesOf(findings: readonly Parameters<typeof say>[0][], shelf: Shelf): Message[] {
  const told = new Set(
    shelf.accounts.flatMap(({ reading }) => reading.findings.map((it) => JSON.stringify(say(it)))),
  );
  return findings
    .filter(({ code }) => code !== 'file-missing')
    .map(say)
    .filter((note) => !told.has(JSON.stringify(note)));
}

const noHouseFile: Message = {
  code: 'house-json-missing',
  text: 'There is no house.json yet.',
  remedy: 'Add the file house.json, which says what the house is and which logs belong to it.',
};
