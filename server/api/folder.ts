/** A house folder as a zip: house.json and the original files, byte for byte as they were brought. */
import { Hono } from 'hono';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import { zipStream } from '../zipStream.ts';

export const folderApi = ({ reading }: Services) =>
  new Hono().get('/:id/folder.zip', (c) => {
    const id = c.req.param('id');
    const house = reading.house(id);
    const json = reading.json(id);
    if (house === null || json === null) throw noSuchHouse();
    function* files() {
      yield { name: 'house.json', bytes: () => json };
      for (const { file } of reading.files(id)) yield { name: file, bytes: () => reading.file(id, file) };
    }
    return c.body(zipStream(files()), 200, {
      'Content-Type': 'application/zip',
      'Content-Disposition': `attachment; filename="house.zip"; filename*=UTF-8''${encoded(house.name)}.zip`,
    });
  });

/** A file name from a house's name, as RFC 5987 has it. */
const encoded = (name: string) =>
  encodeURIComponent(name.replace(/[\p{Cc}/\\:*?"<>|]+/gu, ' ').trim() || 'house').replace(
    /['()*]/g,
    (it) => `%${it.charCodeAt(0).toString(16).toUpperCase()}`,
  );
