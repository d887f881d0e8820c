/** Adding readings by a link: later exports of the loggers of its house, and nothing else. */
import { type Context, Hono } from 'hono';
import type { LinkInUse } from '../access/links.ts';
import { noSuchBringing } from '../jobs/bringingRefusals.ts';
import { refuseFarOff } from '../jobs/farApart.ts';
import { HOUSE_FILE } from '../jobs/stagedFolder.ts';
import { refused } from '../refused.ts';
import type { Services } from '../services.ts';
import type { SharedBringing } from './accessShapes.ts';
import type { BringingPreview } from './shapes.ts';
import { wrongType } from './validate.ts';

const LONGEST_NAME = 100;
/** A link brings what some loggers have saved, not a disk full. */
export const MOST_FILES = 20;
const MOST_BYTES = 256 * 1024 * 1024;
const LOG_NAME = /^[^/\\\0]+\.(csv|txt|tsv|tab|log|dat|zip|gz)$/i;

interface OfLink {
  readonly link: number;
  files: number;
  bytes: number;
}

export const sharedBringingsApi = ({ bringings, reading }: Services, linkFor: (c: Context) => LinkInUse) => {
  const begun = new Map<string, OfLink>();

  /** Of this link alone: those of others, the builder's too, are not there. */
  function own(c: Context): { readonly id: string; readonly of: OfLink } {
    const id = c.req.param('bringing') ?? '';
    const of = begun.get(id);
    if (of === undefined || of.link !== linkFor(c).number) throw noSuchBringing();
    return { id, of };
  }

  async function drop(id: string): Promise<void> {
    begun.delete(id);
    await bringings.drop(id);
  }

  return new Hono()
    .post('/', async (c) => {
      const { number, house } = linkFor(c);
      // One at a time: what was begun before and left lying goes.
      for (const [id, { link }] of begun) if (link === number) await drop(id).catch(() => {});
      const id = await bringings.start(house);
      begun.set(id, { link: number, files: 0, bytes: 0 });
      return c.json({ id }, 201);
    })
    .put('/:bringing/files/:name', async (c) => {
      const { id, of } = own(c);
      const name = c.req.param('name');
      if (c.req.header('content-type') !== 'application/octet-stream')
        throw wrongType('application/octet-stream');
      if (name === HOUSE_FILE || !LOG_NAME.test(name) || name.length > LONGEST_NAME) throw noLog();
      // Counted before it comes, so that several at once are no more than one after the other.
      const stated = Number(c.req.header('content-length') ?? Number.NaN);
      if (!Number.isInteger(stated)) throw lengthUnstated();
      if (of.files >= MOST_FILES || of.bytes + stated > MOST_BYTES) throw tooMuch();
      of.files++;
      of.bytes += stated;
      try {
        return c.json(await bringings.put(id, name, c.req.raw.body));
      } catch (error) {
        of.files--;
        of.bytes -= stated;
        throw error;
      }
    })
    .get('/:bringing', async (c) => c.json(seen(await bringings.preview(own(c).id))))
    .post('/:bringing/keep', async (c) => {
      const { id } = own(c);
      const preview = await bringings.preview(id);
      for (const { imported } of preview.files) refuseFarOff(imported, reading.channels(linkFor(c).house));
      if (!seen(preview).ready) throw nothingNew();
      await bringings.keep(id);
      begun.delete(id);
      return c.body(null, 204);
    })
    .delete('/:bringing', async (c) => {
      await drop(own(c).id);
      return c.body(null, 204);
    });
};

/** Nothing of house.json. */
function seen({ files, ready }: BringingPreview): SharedBringing {
  const shown = files.map(({ imported, named, change }) => ({
    file: imported.file,
    change: named && change?.kind !== 'new' ? change : null,
  }));
  const added = shown.some(({ change }) => change?.kind === 'continues' && change.newReadings > 0);
  return { files: shown, ready: ready && added };
}

const noLog = () =>
  refused(
    400,
    'no-log',
    'This is not taken as a logger’s file.',
    'Bring what the logger’s app saved: a CSV or text file, or a zip of one.',
  );

const lengthUnstated = () =>
  refused(
    411,
    'length-unstated',
    'The request does not state how long it is.',
    'Send it with a Content-Length.',
  );

const tooMuch = () =>
  refused(
    413,
    'too-much',
    `By a link at most ${MOST_FILES} files of ${MOST_BYTES / 1024 / 1024} MB together are brought at a time.`,
    'Bring fewer files, and the rest afterwards.',
  );

const nothingNew = () =>
  refused(
    409,
    'nothing-new',
    'None of these files goes on where a logger of this house left off.',
    'Export the record of a logger once more, from its beginning or from the last time on.',
  );
