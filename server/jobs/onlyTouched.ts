/** A later export that nobody looks at before it is kept: of the stored house only the loggers that it touches are read. */
import type { AssessStep } from '../../src/assess.ts';
import type { House } from '../../src/house.ts';
import { type FileAccount, type FileStep, filesNamed, filesOf, shelfOf } from '../../src/record/index.ts';
import { reportImport } from '../../src/report.ts';
import { bytesOf, type FolderFile, type HouseToStore, type ListedFolder } from '../store/houseToStore.ts';
import { entriesOf } from '../store/joinedChannels.ts';
import type { Reading, StoredChannel } from '../store/reading.ts';
import { continuedText } from './continued.ts';
import { isTooLong } from './farApart.ts';
import { fileChange } from './fileChange.ts';
import { joinedInto } from './joinedInto.ts';
import { withAllTried, withPlaced } from './placed.ts';
import type { FolderToPrepare, PreparedFolder } from './prepareFolder.ts';
import { readingOnce } from './readingOnce.ts';
import { matchOf } from './sameLogger.ts';
import { type BroughtFile, HOUSE_FILE, readStaged } from './stagedFolder.ts';
import { houseIn } from './storedFolder.ts';
import { partWith, storedByPart, toldByPart } from './touched.ts';

/** Null where it cannot be told without reading all of the house. */
export function preparedByTouched(
  { folder, onto, into }: FolderToPrepare,
  store: Reading,
  onStep: (step: AssessStep) => void,
): PreparedFolder | null {
  const json = onto === null ? null : store.json(onto.id);
  if (onto === null || json === null || folder.size !== 1 || folder.has(HOUSE_FILE)) return null;
  const now = houseIn(json);
  if (now.kind === 'problems') return null;
  const { house } = now;
  const brought = readStaged(folder);
  const [[name, file]] = brought;
  if (filesNamed(house).includes(name)) return null; // for another logger, of which it had not come yet
  const part = partWith(house, [file.sentAs]);
  const files = storedOf(part, onto.id, store);
  if (files === null) return null;

  const read = readingOnce();
  const onFile = (step: FileStep) => onStep({ kind: 'read', ...step });
  const bytes = bytesOf(new Map([...files, ...brought]));
  const triedHouse = withAllTried(part, [name]);
  const tried = shelfOf(triedHouse, bytes, { read, onFile });
  const told = toldByPart(part, shelfOf(part, bytesOf(files), { read }));
  if (told === null || toldByPart(triedHouse, tried) === null) return null;
  const match = matchOf(name, file, part, files, tried);
  const { kind, of } = match;
  if (of === null || (kind !== 'same' && of !== onlyLoggerWith(file.sentAs, part))) return null;

  const continued = withPlaced(part, [name], () => of);
  const shelf = shelfOf(continued, bytes, { read });
  const account = shelf.accounts.find((it) => it.file === name);
  const stored = store.channels(onto.id);
  if (account === undefined || stretches(stored, account)) return null;
  const listed = store.files(onto.id).map(({ file, ...rest }) => ({ name: file, ...rest, path: null }));
  const change = fileChange(name, match, continued, (it) => files.has(it), shelf);
  const preview: PreparedFolder['preview'] = {
    house,
    files: [
      { imported: reportImport(account, house.location.timeZone), named: true, remembered: null, change },
    ],
    problems: [],
    missing: filesNamed(house).filter((it) => listed.every((file) => file.name !== it)),
    notes: [],
    ready: true,
  };
  if (change.newReadings === 0) return { preview, house: null, joinedInto: null };

  const earlier = onto.posted === null ? [] : store.postedFiles(onto.id);
  const posted = { brought, matches: new Map([[name, match]]), shelf };
  const joined = joinedInto(earlier, posted, { house: part, json, files }, into, { read });
  const touched = { files: new Set(filesNamed(continued)), stored, into };
  let toStore: HouseToStore | null = null;
  if (joined === null) {
    if (toldByPart(continued, shelf) !== told) return null;
    const whole = withFile({ house, json, files: listed }, name, file, of);
    toStore = whole && storedByPart(whole, { part: continued, shelf, ...touched });
  } else {
    if (toldByPart(part, joined.shelf) !== told) return null;
    const { sha256, bytes: text, path } = joined.joined;
    const now = { name: joined.file, sha256, bytes: text.length, path };
    const whole = { house, json, files: listed.map((it) => (it.name === now.name ? now : it)) };
    toStore = storedByPart(whole, { part, shelf: joined.shelf, ...touched });
  }
  return toStore && { preview, house: toStore, joinedInto: joined?.file ?? null };
}

/** The house with one more file, which goes on where a stored one of its logger ends. */
function withFile(
  { house, json, files }: ListedFolder,
  name: string,
  { sha256, bytes, path }: BroughtFile,
  of: string,
): ListedFolder | null {
  const text = continuedText(new TextDecoder().decode(json), house, new Map([[name, of]]));
  const then = new TextEncoder().encode(text);
  const reading = houseIn(then);
  if (reading.kind === 'problems') return null;
  return { house: reading.house, json: then, files: [...files, { name, sha256, bytes: bytes.length, path }] };
}

/** The stored files of a part of the house; null when one has not come yet, or there is none. */
function storedOf(part: House, id: string, store: Reading): ReadonlyMap<string, FolderFile> | null {
  const hashes = new Map(store.files(id).map(({ file, sha256 }) => [file, sha256]));
  const files = new Map<string, FolderFile>();
  for (const name of filesNamed(part)) {
    const sha256 = hashes.get(name);
    const bytes = sha256 === undefined ? null : store.original(sha256);
    if (sha256 === undefined || bytes === null) return null;
    files.set(name, { bytes, sha256, path: null });
  }
  return files.size === 0 ? null : files;
}

/** The first file of the one logger that has this file; null where several have it. */
function onlyLoggerWith(file: string, part: House): string | null {
  const first = new Set(
    entriesOf(part).flatMap(({ entry }) => (filesOf(entry).includes(file) ? [filesOf(entry)[0]] : [])),
  );
  return first.size === 1 ? [...first][0] : null;
}

/** Whether the house's record were longer with this file than any is. */
function stretches(stored: readonly StoredChannel[], { reading }: FileAccount): boolean {
  const channels = reading.kind === 'read' ? reading.channels : [];
  const first = [...stored.map((it) => it.first), ...channels.map(({ time }) => time[0])];
  const last = [...stored.map((it) => it.last), ...channels.map(({ time }) => time[time.length - 1])];
  return isTooLong(Math.min(...first), Math.max(...last));
}
