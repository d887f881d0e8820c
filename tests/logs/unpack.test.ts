/** Archives: what is opened, and what is not. Made by fflate, or by hand where no honest packer makes them. */
import { gzipSync, strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { crc32 } from '../../src/logs/crc32.ts';
import { unpack } from '../../src/logs/unpack.ts';
import { say } from '../../src/words/index.ts';
import { finding, read } from './reading.ts';

const log = 'Time,Temperature\n2026-01-25 18:00,21.5\n2026-01-25 18:10,21.4\n';
const zip = (files: Record<string, string>) =>
  zipSync(Object.fromEntries(Object.entries(files).map(([name, text]) => [name, strToU8(text)])));

/** The archive with bytes changed at a place of its table of contents (APPNOTE 4.3.12: from the signature on). */
function changed(archive: Uint8Array, at: number, ...values: number[]): Uint8Array {
  const copy = archive.slice();
  const view = new DataView(copy.buffer);
  let central = 0;
  while (view.getUint32(central, true) !== 0x02014b50) central++;
  copy.set(values, central + at);
  return copy;
}

describe('an archive is refused', () => {
  test.each([
    ['encrypted', 'that asks for a password', changed(zip({ 'a.csv': log }), 8, 1)],
    ['path out of the folder', 'with a name that climbs', zip({ '../a.csv': log })],
    ['path out of the folder', 'with a name from the root', zip({ '/etc/a.csv': log })],
    ['path out of the folder', 'with a drive in a name', zip({ 'C:\\a.csv': log })],
    ['office', 'that is a spreadsheet', zip({ '[Content_Types].xml': '<Types/>', 'xl/a.xml': '<x/>' })],
    ['no log inside', 'that is empty', zip({})],
    ['no log inside', 'that holds folders and hidden files only', zip({ 'logs/': '', '.hidden': 'x' })],
    ['broken', 'that breaks off', zip({ 'a.csv': log }).slice(0, 60)],
    ['broken', 'whose checksum is wrong', changed(zip({ 'a.csv': log }), 16, 1, 2, 3, 4)],
    ['broken', 'that is gzip and breaks off', gzipSync(strToU8(log)).slice(0, 30)],
    ['broken', 'that is the beginning of a gzip', Uint8Array.of(0x1f, 0x8b, 8)],
  ])('as %s: one %s', (why, _, archive) => {
    expect(unpack(archive)).toEqual({ kind: 'refused', why });
    expect(finding(read(archive), 'archive-refused')).toMatchObject({ why });
  });

  test('with several logs in it, by their names', () => {
    const archive = zip({ 'kitchen.csv': log, 'loft.csv': log, 'readme.md': 'invented' });
    expect(finding(read(archive), 'archive-several-logs')).toMatchObject({
      names: ['kitchen.csv', 'loft.csv'],
    });
  });
});

test('of an archive with thousands of logs a few are named', () => {
  const names = Array.from({ length: 3000 }, (_, i) => `${i}.csv`);
  const found = finding(
    read(zip(Object.fromEntries(names.map((name) => [name, ''])))),
    'archive-several-logs',
  );
  if (found === undefined) throw new Error('nothing is said of it');
  expect(say(found).text).toMatch(/^The archive holds 3000 logs, among them /);
  expect(say(found).text.length).toBeLessThan(200);
});

describe('a bomb', () => {
  const zeros = new Uint8Array(8_000_000);
  const limit = 1_000_000;

  test('is refused by the size that it states', () => {
    expect(unpack(zipSync({ 'a.csv': zeros }), limit)).toEqual({ kind: 'refused', why: 'too large' });
    expect(unpack(gzipSync(zeros), limit)).toEqual({ kind: 'refused', why: 'too large' });
  });

  test('that states a small size is stopped where it passes the limit', () => {
    const small = [100, 0, 0, 0];
    const packed = changed(zipSync({ 'a.csv': zeros }), 24, ...small);
    expect(unpack(packed, limit)).toEqual({ kind: 'refused', why: 'too large' });
    const gzip = gzipSync(zeros);
    gzip.set(small, gzip.length - 4);
    expect(unpack(gzip, limit)).toEqual({ kind: 'refused', why: 'too large' });
  });
});

test('the checksum of "123456789" is cbf43926', () => {
  // MEMORY: the check value by which catalogues of CRC name this one
  expect(crc32(strToU8('123456789'))).toBe(0xcbf43926);
});

test('two gzip members one after the other are one log', () => {
  const [first, second] = [log, '2026-01-25 18:20,21.25\n'].map((text) => gzipSync(strToU8(text)));
  const both = new Uint8Array(first.length + second.length);
  both.set(first);
  both.set(second, first.length);
  expect(read(both)).toMatchObject({ kind: 'read', rows: 3, rejected: 0 });
});
