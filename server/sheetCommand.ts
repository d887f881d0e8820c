/** `sheet FOLDER`: the handover sheet, its first page, or the whole pack, from a house folder. */
import { parseArgs } from 'node:util';
import { assess } from '../src/assess.ts';
import { nightCurves } from '../src/curves.ts';
import { reportOf } from '../src/report.ts';
import { firstPageHtml, type SheetInput, sheetHtml } from '../src/sheet/index.ts';
import { clashing, packDocuments } from '../src/sheet/pack/packDocuments.ts';
import { say } from '../src/words/index.ts';
import { asLine } from './assessCommand.ts';
import { noRecord } from './jobs/noRecord.ts';
import { softwareVersion } from './root.ts';
import { checkPack } from './sheet/checkPack.ts';
import { type FolderOnRecord, folderOnRecord } from './sheet/folderOnRecord.ts';
import { readPhotos } from './sheet/photos.ts';
import { today } from './sheet/today.ts';
import { writeWhole } from './sheet/writeWhole.ts';
import { sha256 } from './store/sha256.ts';
import { zipStream } from './zipStream.ts';

interface Out {
  write(text: string): unknown;
}

const NOT_MADE = 2;
const HOW =
  'Name one house folder and what to make of it: stillwarm sheet FOLDER --out sheet.html, --first-page FILE, or --pack pack.zip.';

/** Runs the command and returns its exit code; problems go to `err`. Each file is written whole or not at all. */
export async function sheetCommand(args: readonly string[], now: Date, out: Out, err: Out): Promise<number> {
  const fail = (text: string) => {
    err.write(`${text}\n`);
    return NOT_MADE;
  };
  const asked = parse(args);
  if (typeof asked === 'string') return fail(asked);
  try {
    if (asked.check !== undefined) return await checkPack(asked.check, out, err);
    const folder = await folderOnRecord(asked.folder);
    if (folder.kind === 'problems') return fail(folder.problems.map(asLine).join('\n'));
    const photos = await readPhotos(asked.photos);
    if (photos.kind === 'problems') return fail(photos.problems.map(asLine).join('\n'));
    const input = inputOf(folder, photos.photos, asked.date ?? today(folder.house.location.timeZone, now));
    if (typeof input === 'string') return fail(input);
    const made: [string, Iterable<string | Uint8Array> | ReadableStream<Uint8Array>][] = [];
    if (asked.out !== undefined) made.push([asked.out, [sheetHtml(input)]]);
    if (asked.firstPage !== undefined) made.push([asked.firstPage, [firstPageHtml(input)]]);
    if (asked.pack !== undefined) {
      if (folder.remarks.size > 0) return fail(notPacked([...folder.remarks.keys()]));
      const clash = clashing(input);
      if (clash !== null)
        return fail(
          `${clash}: a pack has a file or folder of this name of its own. Rename it in the folder and in house.json.`,
        );
      made.push([asked.pack, zipStream(packed(input, folder))]);
    }
    for (const [path, content] of made) {
      await writeWhole(path, content);
      out.write(`${path}\n`);
    }
    return 0;
  } catch (error) {
    return fail(error instanceof Error ? error.message : String(error));
  }
}

/** What was not taken in whole is not in the pack, and without it other figures would come out of it. */
const notPacked = (files: readonly string[]) =>
  files
    .map(
      (file) =>
        `${file}: this file could not be read whole, so a pack would not give the same figures again. Mend it, or take it out of house.json.`,
    )
    .join('\n');

function inputOf(
  { house, files, bytes, remarks }: FolderOnRecord,
  photos: SheetInput['photos'],
  date: string,
): SheetInput | string {
  const assessing = assess(house, bytes, undefined, remarks);
  if (assessing.kind === 'no record')
    return [noRecord(assessing.missing), ...assessing.findings.map(say)].map(asLine).join('\n');
  const { evidence } = assessing;
  return {
    house,
    assessment: reportOf(evidence),
    curves: nightCurves(evidence),
    files,
    version: softwareVersion().split(' ')[0],
    date,
    photos,
  };
}

function* packed(input: SheetInput, { json, bytes }: FolderOnRecord) {
  for (const { name, text } of packDocuments(input, sha256))
    yield { name, bytes: () => new TextEncoder().encode(text) };
  yield { name: 'house.json', bytes: () => json };
  for (const [name, content] of bytes) yield { name, bytes: () => content };
}

interface Asked {
  readonly folder: string;
  readonly out: string | undefined;
  readonly firstPage: string | undefined;
  readonly pack: string | undefined;
  readonly check: string | undefined;
  readonly date: string | undefined;
  readonly photos: readonly string[];
}

function parse(args: readonly string[]): Asked | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        'first-page': { type: 'string' },
        pack: { type: 'string' },
        check: { type: 'string' },
        date: { type: 'string' },
        photo: { type: 'string', multiple: true, default: [] },
      },
    });
    const { out, pack, check, date, photo } = values;
    const firstPage = values['first-page'];
    if (date !== undefined && !isDate(date)) return `“${date}” is no date: write it as 2027-02-14.`;
    const anything = [out, firstPage, pack].some((it) => it !== undefined);
    if (check === undefined ? positionals.length !== 1 || !anything : positionals.length > 0 || anything)
      return HOW;
    return { folder: positionals[0] ?? '', out, firstPage, pack, check, date, photos: photo };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

const isDate = (text: string) => {
  const time = /^\d{4}-\d\d-\d\d$/.test(text) ? Date.parse(text) : Number.NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
};
