/**
 * Later exports that nobody looks at before they are kept: from a script, a gateway, a watched folder. They go the way
 * of what a person brings; what a person would have to be asked about is refused.
 */
import type { ReadableStream } from 'node:stream/web';
import type { Message } from '../../src/assessment.ts';
import { filesOf } from '../../src/record/index.ts';
import type { AddedExport, BringingPreview, FilePreview } from '../api/shapes.ts';
import { noSuchHouse, Refused, refused } from '../refused.ts';
import { entriesOf } from '../store/joinedChannels.ts';
import type { Reading } from '../store/reading.ts';
import type { Bringings } from './bringings.ts';
import { refuseFarOff } from './farApart.ts';
import { HOUSE_FILE } from './stagedFolder.ts';
import { houseIn } from './storedFolder.ts';

/** What is posted bit by bit may share files and versions; a whole file stays as it is. */
export type SentAs = 'posted' | 'file';

/** Files of a logger: all of them are read whenever another one comes. Readings posted bit by bit share files. */
const MOST_EXPORTS = 1000;

const DAY = 86_400_000; // [ms]

interface Needs {
  readonly reading: Reading;
  readonly bringings: Bringings;
}

export type AddLaterExport = ReturnType<typeof laterExports>;

export function laterExports({ reading, bringings }: Needs) {
  /** Of each house what is being added to it: one after the other, for each rests on the one before. */
  const lines = new Map<string, Promise<unknown>>();

  async function add(
    id: string,
    sentAs: string,
    body: ReadableStream | null,
    kind: SentAs,
  ): Promise<AddedExport> {
    if (sentAs === HOUSE_FILE) throw noLog();
    const full = loggers(id).find((files) => files.includes(sentAs) && files.length > MOST_EXPORTS);
    if (full !== undefined) throw tooMany(full[0]);
    const posted = kind === 'posted' ? Math.floor(Date.now() / DAY) : null;
    const bringing = await bringings.start(id, { posted });
    try {
      const { name } = await bringings.put(bringing, sentAs, body);
      const preview = await bringings.preview(bringing);
      const file = preview.files.find(({ imported }) => imported.file === name);
      const { change } = file ?? {};
      if (file === undefined || change == null) throw noSuchHouse();
      if (change.kind === 'new' && !file.named)
        throw new Refused(422, whyUnplaced(file, sentAs, loggers(id)));
      refuseFarOff(file.imported, reading.channels(id));
      const { newReadings, conflicts, of } = change;
      const told = { of: loggerOf(id, of ?? name), newReadings, conflicts: conflicts.count };
      if (newReadings === 0) {
        if (file.imported.readings === 0 && change.kind !== 'same') throw new Refused(422, unreadable(file));
        await bringings.drop(bringing);
        return { ...told, file: null };
      }
      refuseUnlessReady(preview);
      const into = await bringings.joinedInto(bringing);
      await bringings.keep(bringing);
      return { ...told, file: into ?? name };
    } catch (error) {
      await bringings.drop(bringing).catch(() => {}); // what is the matter is told already
      throw error;
    }
  }

  /** Of each logger its files, the first one first. */
  function loggers(id: string): readonly (readonly string[])[] {
    const json = reading.json(id);
    const house = json === null ? null : houseIn(json);
    if (house?.kind !== 'house') return [];
    return entriesOf(house.house).flatMap(({ entry }) => (entry.file === undefined ? [] : [filesOf(entry)]));
  }

  const loggerOf = (id: string, file: string) =>
    loggers(id).find((files) => files.includes(file))?.[0] ?? file;

  /**
   * Adds a file to a stored house as a later export of one of its loggers; the same readings again change nothing.
   *
   * @throws Refused when the house is not there, the file is no log, or it is of no logger of the house
   */
  return (id: string, sentAs: string, body: ReadableStream | null, kind: SentAs): Promise<AddedExport> => {
    const before = lines.get(id) ?? Promise.resolve();
    const own = before.then(
      () => add(id, sentAs, body, kind),
      () => add(id, sentAs, body, kind),
    );
    lines.set(id, own);
    const done = () => {
      if (lines.get(id) === own) lines.delete(id);
    };
    own.then(done, done);
    return own;
  };
}

const tooMany = (logger: string) =>
  refused(
    409,
    'too-many-exports',
    `“${logger}” has ${MOST_EXPORTS} later exports already, the most that are taken; nothing was stored.`,
    'Take the house folder, join the files of this logger into one, and bring it as a house.',
  );

const noLog = () =>
  refused(422, 'no-log', 'house.json is no log; nothing of it was stored.', "Bring it on the house's page.");

function refuseUnlessReady({ ready, problems }: BringingPreview): void {
  if (!ready && problems.length > 0) throw new Refused(422, problems);
}

function whyUnplaced(
  file: FilePreview,
  sentAs: string,
  loggers: readonly (readonly string[])[],
): readonly Message[] {
  if (file.imported.readings === 0) return unreadable(file);
  return [
    {
      code: 'logger-not-known',
      text: 'Nothing shows which logger of this house the file is of; nothing of it was stored.',
      where: { file: sentAs },
      remedy: `Name it as one of its loggers' files (${loggers.map(([first]) => first).join(', ')}), or bring it on the house's page and say where it belongs.`,
    },
  ];
}

const unreadable = ({ imported }: FilePreview): readonly Message[] =>
  imported.notes.length > 0
    ? imported.notes
    : [
        {
          code: 'no-readings-in-file',
          text: 'There is no reading in this file; nothing of it was stored.',
          where: { file: imported.file },
          remedy: 'Send a log with a header, a time and a temperature in each row.',
        },
      ];
