/** What is no log, or too much of one, is refused in words and not stored. */
import { gzipSync, strToU8, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Refusal } from '../../server/api/shapes.ts';
import { house, houseFolder, inside } from './inventedHouse.ts';
import { type BringingAtHand, type ServerAtHand, serverAtHand } from './serverAtHand.ts';

let server: ServerAtHand;
let bringing: BringingAtHand;
beforeEach(async () => {
  server = serverAtHand();
  bringing = await server.begin();
});
afterEach(() => server.end());

const bytes = (...head: readonly number[]) =>
  Uint8Array.from([...head, ...Array(2000).keys()], (it) => it % 256);
/** Far more inside than any log has, in a few hundred kilobytes. */
const bomb = () => gzipSync(new Uint8Array(300 * 1024 * 1024), { level: 1 });
const manyZeros = zipSync({ 'log.csv': [new Uint8Array(300 * 1024 * 1024), { level: 1 }] });

const noLogs: readonly (readonly [string, Uint8Array | string, string])[] = [
  ['a picture', bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), 'file-not-text'],
  ['a photo', bytes(0xff, 0xd8, 0xff, 0xe0), 'file-not-text'],
  ['a PDF', `%PDF-1.7\n${'x'.repeat(500)}`, 'file-not-text'],
  ['a login page', '<!DOCTYPE html><html><body>Please log in</body></html>', 'file-not-text'],
  [
    'a spreadsheet',
    zipSync({ '[Content_Types].xml': strToU8('<x/>'), 'xl/sheet.xml': strToU8('<x/>') }),
    'archive-refused',
  ],
  ['an old spreadsheet', bytes(0xd0, 0xcf, 0x11, 0xe0), 'file-not-text'],
  ['bytes of no kind', bytes(0, 1, 2, 3), 'file-not-text'],
  ['an empty file', '', 'file-empty'],
  ['a path out of the folder in a zip', zipSync({ '../../evil.csv': strToU8(inside) }), 'archive-refused'],
  ['a broken zip', zipSync({ 'log.csv': strToU8(inside) }).subarray(0, 900), 'archive-refused'],
  ['a zip bomb', manyZeros, 'archive-refused'],
  ['a gzip bomb', bomb(), 'archive-refused'],
  [
    'several logs in a zip',
    zipSync({ 'a.csv': strToU8(inside), 'b.csv': strToU8(inside) }),
    'archive-several-logs',
  ],
];

describe('what is no log', () => {
  test.each(noLogs)(
    'is told in the preview, and a house that names it is not kept: %s',
    async (_, content, code) => {
      const spare = { file: 'spare.csv', place: 'inside' };
      const named = { ...house, loggers: [...house.loggers, spare] };
      await bringing.put({ ...houseFolder, 'spare.csv': content });
      const of = async () => {
        const preview = await bringing.preview();
        return { ...preview, file: preview.files.find(({ imported }) => imported.file === 'spare.csv') };
      };
      const unnamed = await of();
      expect(unnamed.file?.imported).toMatchObject({ readings: 0, channels: [], understood: null });
      expect(unnamed.file?.imported.notes.map((it) => it.code)).toEqual([code]);
      expect(unnamed.ready).toBe(true);

      await bringing.put({ 'house.json': JSON.stringify(named) });
      const { ready, problems } = await of();
      expect(ready).toBe(false);
      expect(problems).toMatchObject([{ code, where: { file: 'spare.csv' }, remedy: expect.any(String) }]);
      const refused = await bringing.keep();
      expect([refused.status, ((await refused.json()) as Refusal).problems]).toEqual([409, problems]);
      expect(server.services.reading.houses()).toEqual([]);
    },
  );

  test('that no house.json names is left behind', async () => {
    await bringing.put({ ...houseFolder, 'photo.csv': bytes(0xff, 0xd8, 0xff) });
    const { id } = (await (await bringing.keep()).json()) as { id: string };
    expect(server.services.reading.files(id).map(({ file }) => file)).toEqual(['in.csv', 'logs/out.csv']);
    expect(server.db.prepare('SELECT count(*) FROM original').pluck().get()).toBe(2);
  });
});
