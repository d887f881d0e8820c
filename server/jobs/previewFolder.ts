/** What was understood of a house folder, before anything of it is stored. */
import type { Message } from '../../src/assessment.ts';
import { gatherRecord } from '../../src/logs/index.ts';
import { reportImport } from '../../src/report.ts';
import type { BringingPreview } from '../api/shapes.ts';
import { noRecord } from './noRecord.ts';
import { readStaged, type StagedFolder } from './stagedFolder.ts';

export type FolderPreview = Omit<BringingPreview, 'id'>;

export function previewFolder(folder: StagedFolder): FolderPreview {
  const read = readStaged(folder);
  if (read.kind === 'problems')
    return { name: null, problems: read.problems, imports: [], missing: [], unnamed: [], ready: false };
  const { house, files, missing } = read;
  const gathered = gatherRecord(house, files);
  // While files are still to come, the list of the missing says enough.
  const problems: Message[] =
    gathered.kind === 'record' || missing.length > 0 ? [] : [noRecord(gathered.missing)];
  return {
    name: house.name,
    problems,
    imports: gathered.accounts.map((account) => reportImport(account, house.location.timeZone)),
    missing,
    unnamed: [...folder.keys()].filter((name) => name !== 'house.json' && !files.has(name)),
    ready: gathered.kind === 'record',
  };
}
