/** Every reader of bytes from outside, fed with bytes that nobody would send. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { gzipSync, zipSync } from 'fflate';
import { photosIn } from '../../../server/sheet/photos.ts';
import { sha256 } from '../../../server/store/sha256.ts';
import { readHouse } from '../../../src/houseFile.ts';
import { readLog } from '../../../src/logs/index.ts';
import { unpack } from '../../../src/logs/unpack.ts';
import { readPack } from '../../../src/sheet/pack/readPack.ts';
import { house, houseFolder, houseText, inside } from '../../server/inventedHouse.ts';
import { mutated, spoilt } from './mutated.ts';

export interface Fuzzed {
  readonly name: string;
  /** Throws when something is not as it has to be. */
  property(): fc.IRawProperty<unknown>;
}

const bytesOf = (text: string) => new TextEncoder().encode(text);
const layouts = new URL('../../logs/layouts', import.meta.url).pathname;
const logs = readdirSync(layouts)
  .filter((name) => !/\.(json|md)$/.test(name))
  .map((name): Uint8Array => readFileSync(join(layouts, name)))
  .filter(({ length }) => length < 20_000);

/** The most that may come out of an archive here [bytes]. */
const LIMIT = 1 << 20;
const folder = Object.fromEntries(Object.entries(houseFolder).map(([name, text]) => [name, bytesOf(text)]));
const zips = [
  zipSync({ 'in.csv': bytesOf(inside) }),
  zipSync({ 'in.csv': bytesOf(inside) }, { level: 0 }),
  zipSync(folder),
  zipSync({ 'house/house.json': folder['house.json'], 'house/x/': new Uint8Array() }),
  zipSync({
    ...folder,
    'handover/hashes.txt': bytesOf('0'),
    'handover/versions.json': bytesOf('{"pack":1}'),
  }),
  zipSync({ 'in.csv': new Uint8Array(8 * LIMIT) }),
  zipSync({}),
];
const gzips = [gzipSync(bytesOf(inside)), gzipSync(new Uint8Array(8 * LIMIT))];
const archive = mutated([...zips, ...gzips]);
const anyBytes = fc.uint8Array({ maxLength: 2000 });

const hints = fc.record({
  timeZone: fc.constantFrom('UTC', 'Europe/London', 'Australia/Lord_Howe'),
  dateOrder: fc.constantFrom('day-first' as const, 'month-first' as const, undefined),
  columns: fc.constantFrom({}, { temperature: 'Temperature (°C)' }, { time: '' }),
  clockOffset: fc.constantFrom(0, 3600, -1e9, 1e12),
});

export const parsers: readonly Fuzzed[] = [
  {
    name: 'logs',
    property: () =>
      fc.property(fc.oneof(mutated(logs), anyBytes, archive), hints, (bytes, { dateOrder, ...rest }) => {
        const reading = readLog('a.csv', bytes, { ...rest, ...(dateOrder && { dateOrder }) });
        if (reading.kind === 'unreadable') return;
        for (const { time, value, doubt } of reading.channels) {
          if (time.length !== value.length || time.length !== doubt.length) throw new Error('lengths differ');
          if (time.some((it, i) => !Number.isFinite(it) || (i > 0 && it <= time[i - 1])))
            throw new Error('instants do not rise');
          if (value.some((it) => !Number.isFinite(it))) throw new Error('a value is no number');
        }
      }),
  },
  {
    name: 'archives of a log',
    property: () =>
      fc.property(fc.oneof(archive, anyBytes), (bytes) => {
        const unpacked = unpack(bytes, LIMIT);
        if (unpacked.kind === 'bytes' && unpacked.packed !== null && unpacked.bytes.length > LIMIT)
          throw new Error('more came out than may');
      }),
  },
  {
    name: 'packs',
    property: () =>
      fc.asyncProperty(fc.oneof(archive, anyBytes), async (bytes) => {
        const reading = await readPack(bytes, async (it) => sha256(it), 'Stillwarm 0.0.0', LIMIT);
        if (reading.kind === 'refused') return;
        const size = [...reading.all.values()].reduce((sum, { length }) => sum + length, 0);
        if (size > LIMIT) throw new Error('more came out than may');
        if ([...reading.all.keys()].some((name) => /(^|[\\/])\.\.([\\/]|$)|^\//.test(name)))
          throw new Error('a name leads out of the folder');
      }),
  },
  {
    name: 'house.json',
    property: () =>
      fc.property(
        fc.oneof(
          mutated([bytesOf(houseText)]).map((bytes) => new TextDecoder().decode(bytes)),
          spoilt(house).map((it) => JSON.stringify(it)),
          fc.string(),
          fc.constantFrom('['.repeat(100_000), '{"a":'.repeat(50_000), '9'.repeat(100_000)),
        ),
        (text) => {
          const reading = readHouse(text);
          if (reading.kind === 'problems' && reading.problems.length === 0)
            throw new Error('refused without why');
        },
      ),
  },
  {
    name: 'photos',
    property: () =>
      fc.asyncProperty(
        mutated([Uint8Array.of(0xff, 0xd8, 0xff, 1), Buffer.from('89504e470d0a1a0a00', 'hex')]),
        fc.string(),
        async (bytes, name) => {
          const photos = await photosIn([new File([Uint8Array.from(bytes)], name), name]);
          if (
            photos.kind === 'photos' &&
            !photos.photos.every(({ dataUri }) => /^data:image\/(jpeg|png);base64,[\w+/=]*$/.test(dataUri))
          )
            throw new Error('no picture of ours');
        },
      ),
  },
];
