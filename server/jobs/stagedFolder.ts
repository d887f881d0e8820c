/** A house folder on disk, wherever its files lie: how one waits to be kept, and how the demonstration house comes. */
import { readFileSync } from 'node:fs';
import type { Message } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { readHouse } from '../../src/houseFile.ts';
import { filesNamed } from '../../src/record/index.ts';
import { say } from '../../src/words/index.ts';

/** The path of each file by its name in the house folder, `house.json` among them. */
export type StagedFolder = ReadonlyMap<string, string>;

export type FolderOnDisk =
  | {
      readonly kind: 'house';
      readonly house: House;
      readonly json: Uint8Array;
      /** The files that `house.json` names and that are there. */
      readonly files: ReadonlyMap<string, Uint8Array>;
      readonly missing: readonly string[];
    }
  | { readonly kind: 'problems'; readonly problems: readonly Message[] };

export function readStaged(folder: StagedFolder): FolderOnDisk {
  const path = folder.get('house.json');
  if (path === undefined) return { kind: 'problems', problems: [noHouseFile] };
  const json = readFileSync(path);
  const reading = readHouse(json.toString('utf8'));
  if (reading.kind === 'problems') return { kind: 'problems', problems: reading.problems.map(say) };
  const named = filesNamed(reading.house);
  const files = new Map<string, Uint8Array>();
  for (const name of named) {
    const at = folder.get(name);
    if (at !== undefined) files.set(name, readFileSync(at));
  }
  return { kind: 'house', house: reading.house, json, files, missing: named.filter((it) => !files.has(it)) };
}

const noHouseFile: Message = {
  code: 'house-json-missing',
  text: 'There is no house.json yet.',
  remedy: 'Add the file house.json, which says what the house is and which logs belong to it.',
};
