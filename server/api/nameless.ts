/** A house without names, as a zip that can be brought again. */
import { Hono } from 'hono';
import { houseIn } from '../jobs/storedFolder.ts';
import { type NamelessFile, nameless } from '../privacy/nameless.ts';
import { readingsCsv } from '../privacy/readingsCsv.ts';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import { zipStream } from '../zipStream.ts';

export const namelessApi = ({ reading }: Services) =>
  new Hono().get('/:id/nameless.zip', (c) => {
    const id = c.req.param('id');
    const json = reading.json(id);
    const read = json === null ? null : houseIn(json);
    if (read === null || read.kind === 'problems') throw noSuchHouse();
    const { house, files } = nameless(read.house, reading.channels(id));
    const version = () =>
      [reading.house(id)?.content, ...reading.channels(id).map(({ number }) => number)].join();
    const begun = version();
    const encoder = new TextEncoder();
    function* readingsOf(file: NamelessFile) {
      for (const piece of readingsCsv(file, reading)) {
        // Readings of two versions must not stand in one file: the download breaks off.
        if (version() !== begun) throw new Error('the house was changed meanwhile');
        yield encoder.encode(piece);
      }
    }
    function* all() {
      yield { name: 'house.json', bytes: () => encoder.encode(`${JSON.stringify(house, null, 2)}\n`) };
      for (const file of files) yield { name: file.name, bytes: () => readingsOf(file) };
    }
    return c.body(zipStream(all()), 200, {
      'Content-Type': 'application/zip',
      'Content-Disposition': 'attachment; filename="house without names.zip"',
    });
  });
