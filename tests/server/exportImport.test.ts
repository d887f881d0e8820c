/** A house taken out of one store and brought into another: the same to the last bit. */
import fc from 'fast-check';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { HouseDetail } from '../../server/api/shapes.ts';
import { sha256 } from '../../server/store/sha256.ts';
import { readPack } from '../../src/sheet/pack/readPack.ts';
import { type ServerAtHand, serverAtHand, until } from './serverAtHand.ts';

let from: ServerAtHand;
let to: ServerAtHand;
beforeEach(() => {
  from = serverAtHand();
  to = serverAtHand();
});
afterEach(async () => {
  await from.end();
  await to.end();
});

/** A log as loggers write them: odd steps, odd digits, holes, values that are doubted, lines that are none. */
const log = fc
  .record({
    step: fc.constantFrom(300, 600, 613, 3600),
    level: fc.double({ min: -5, max: 22, noNaN: true }),
    digits: fc.integer({ min: 0, max: 12 }),
    hole: fc.integer({ min: 0, max: 20 }),
    odd: fc.constantFrom('', 'n/a', '999', '-', '85.0'),
    humid: fc.boolean(),
    end: fc.constantFrom('\n', '\r\n'),
  })
  .map(({ step, level, digits, hole, odd, humid, end }) => {
    const rows = Array.from({ length: Math.floor((40 * 3600) / step) }, (_, i) => {
      if (i > 20 && i < 20 + hole) return [];
      const at = new Date(Date.UTC(2027, 0, 10, 12) + i * step * 1000).toISOString();
      const value =
        i % 37 === 36 ? odd : (level + 5 * Math.exp(-((i * step) % 86_400) / 1e5)).toFixed(digits);
      return [`${at},${value}${humid ? `,${(40 + (i % 7) * 1.37).toFixed(digits)}` : ''}`];
    }).flat();
    return [`Time,Temperature (°C)${humid ? ',Humidity (%)' : ''}`, ...rows, ''].join(end);
  });

const name = fc.constantFrom('in.csv', 'a b.csv', 'küche/öl (1).csv', 'logs/2027/x.txt', '%41&=+#.csv');
const generated = fc.record({
  title: fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' }),
  names: fc.uniqueArray(name, { minLength: 2, maxLength: 4 }),
  logs: fc.array(log, { minLength: 4, maxLength: 4 }),
  later: log,
  zone: fc.constantFrom('Europe/London', 'America/St_Johns', 'Australia/Lord_Howe'),
  indent: fc.constantFrom('', ' ', '\t'),
  bom: fc.constantFrom('', '\uFEFF'),
  note: fc.string({ maxLength: 30, unit: 'grapheme' }),
  used: fc.boolean(),
  zip: fc.constantFrom('folder.zip', 'pack.zip'),
});

/** All of a house that must be the same, and its assessment apart. */
async function contentsOf({ services: { reading }, json }: ServerAtHand, id: string) {
  await until(() => (reading.house(id)?.outcome ?? null) !== null);
  const { files, house, state, name: title, assessment } = await json<HouseDetail>(`/api/houses/${id}`);
  return {
    title,
    house,
    state,
    files,
    json: reading.json(id),
    bytes: files.map(({ file }) => reading.file(id, file)),
    channels: reading.channels(id).map(({ number, first, last, ...channel }) => ({
      ...channel,
      readings: reading.readings(number, first, last),
      hours: reading.hours(number, first, last),
      doubted: [...reading.doubted(number, first, last)],
    })),
    nights: await json(`/api/houses/${id}/nights`),
    assessment,
  };
}

test('export and import again: house.json, files, readings, doubts, decisions and assessment are equal', async () => {
  await fc.assert(
    fc.asyncProperty(generated, async (it) => {
      const house = {
        name: it.title.trim() || 'x',
        location: { latitude: 52, longitude: -1, timeZone: it.zone },
        loggers: it.names.map((file, i) => ({ file, place: i === 0 ? 'outside' : 'inside', room: `R${i}` })),
        notes: [{ at: '2027-01-11T09:00', text: it.note }],
        nights: [{ date: '2027-01-11', used: it.used, why: 'by hand' }],
      };
      const id = await from.bring({
        'house.json': `${it.bom}${JSON.stringify(house, null, it.indent)}\r\n`,
        ...Object.fromEntries(it.names.map((file, i) => [file, it.logs[i]])),
      });
      const later = await from.begin(id); // a later export of the first, under a name that is given to it
      await later.put({ [it.names[0]]: it.later });
      expect((await later.keep()).status).toBe(201);

      const contents = await contentsOf(from, id); // assessed by now, so that there is a pack
      const zip = await from.ask(`/api/houses/${id}/${it.zip}`);
      expect(zip.status).toBe(200);
      const pack = await readPack(
        new Uint8Array(await zip.arrayBuffer()),
        async (bytes) => sha256(bytes),
        'Stillwarm 0.0.1',
      );
      if (pack.kind === 'refused') throw new Error(JSON.stringify(pack.problems));
      const again = await to.bring(Object.fromEntries(pack.files));
      expect(contents.channels.length).toBeGreaterThanOrEqual(it.names.length);
      expect(await contentsOf(to, again)).toEqual(contents);
    }),
    { numRuns: 4 },
  );
});
