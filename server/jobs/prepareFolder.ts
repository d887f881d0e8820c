/** A house folder on disk, read once -> what was understood of it, and all that is to be stored of it. */
import type { AssessStep } from '../../src/assess.ts';
import type { Message } from '../../src/assessment.ts';
import { readLog } from '../../src/logs/index.ts';
import { gatherRecord } from '../../src/record/index.ts';
import { reportImport } from '../../src/report.ts';
import type { BringingPreview } from '../api/shapes.ts';
import { type HouseToStore, houseToStore } from '../store/houseToStore.ts';
import { noRecord } from './noRecord.ts';
import { readStaged, type StagedFolder } from './stagedFolder.ts';

export interface PreparedFolder {
  readonly preview: Omit<BringingPreview, 'id'>;
  /** Null unless the preview is ready. */
  readonly house: HouseToStore | null;
}

/** @param into a folder for the readings that are to be stored, made here */
export function prepareFolder(
  folder: StagedFolder,
  into: string,
  onStep: (step: AssessStep) => void,
): PreparedFolder {
  const staged = readStaged(folder);
  if (staged.kind === 'problems')
    return {
      preview: { name: null, problems: staged.problems, imports: [], missing: [], unnamed: [], ready: false },
      house: null,
    };
  const { house, files, missing } = staged;
  const read = readingOnce();
  const gathered = gatherRecord(house, files, { onFile: (step) => onStep({ kind: 'read', ...step }), read });
  const ready = gathered.kind === 'record';
  // While files are still to come, the list of the missing says enough.
  const problems: Message[] = ready || missing.length > 0 ? [] : [noRecord(gathered.missing)];
  return {
    preview: {
      name: house.name,
      problems,
      imports: gathered.accounts.map((account) => reportImport(account, house.location.timeZone)),
      missing,
      unnamed: [...folder.keys()].filter((name) => name !== 'house.json' && !files.has(name)),
      ready,
    },
    house: ready ? houseToStore(staged, folder, into, read) : null,
  };
}

/**
 * Reads a log as `readLog` does, and the same log in the same way only once. Once the other files have told the order
 * of day and month, the log is so read, also for a caller that does not know of them.
 */
function readingOnce(): typeof readLog {
  const known = new Map<string, { readonly order: unknown; readonly reading: ReturnType<typeof readLog> }>();
  return (file, bytes, hints) => {
    const { orderOfOthers: order, ...own } = hints;
    const way = JSON.stringify([file, own]);
    const before = known.get(way);
    if (before !== undefined && (order === undefined || order === before.order)) return before.reading;
    const reading = readLog(file, bytes, hints);
    known.set(way, { order, reading });
    return reading;
  };
}
