/** Files that are no log: refused, never thrown at. */
import { describe, expect, test } from 'vitest';
import { codesOf, finding, read } from './reading.ts';

const bytes = (...values: number[]) => Uint8Array.from(values);
/** An honest beginning, and then no text. */
function mostlyBinary() {
  const all = Uint8Array.from({ length: 50_000 }, (_, i) => i % 7);
  all.set(new TextEncoder().encode('Time,Temperature\n2026-01-25 18:00,21.5\n'));
  return all;
}

describe('no log', () => {
  test.each([
    ['an empty file', new Uint8Array()],
    ['blank lines only', '\r\n \n'],
    ['a byte order mark only', bytes(0xef, 0xbb, 0xbf)],
  ])('%s is called empty', (_, file) => {
    expect(read(file)).toMatchObject({
      kind: 'unreadable',
      rows: 0,
      findings: [{ code: 'file-empty', where: { file: 'log.csv' } }],
    });
  });

  test.each([
    ['a PNG picture', bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), 'picture'],
    ['a JPEG picture', bytes(0xff, 0xd8, 0xff, 0xe0), 'picture'],
    ['a PDF', '%PDF-1.7\n1 0 obj', 'pdf'],
    ['an old word processor file', bytes(0xd0, 0xcf, 0x11, 0xe0, 0xa1), 'office'],
    ['a database', 'SQLite format 3\0invented', 'database'],
    [
      'a page that begins with a remark',
      '<!-- made up -->\n<html><p>2026-01-01 00:00, 21</p></html>',
      'html',
    ],
    ['text with a blob behind it', mostlyBinary(), 'binary'],
    [
      'a login page saved as CSV',
      '<!DOCTYPE html>\n<html><body>Log in, 2026-01-01 00:00, 21</body></html>',
      'html',
    ],
    ['control bytes', Uint8Array.from({ length: 200 }, (_, i) => i % 16), 'binary'],
  ])('%s is called what it is', (_, file, looksLike) => {
    expect(finding(read(file), 'file-not-text')).toMatchObject({ looksLike });
  });

  test.each([
    ['prose', 'Dear reader,\nthis is a letter, not a log.\n', 'no-time-column'],
    ['numbers without a time', 'a,b\n1,2\n3,4\n', 'no-time-column'],
    ['a header and nothing under it', 'Time,Temperature\n', 'no-readings'],
    [
      'numbers beside times in no known writing',
      'Time,Temperature\nsix,21.5\nseven,21.4\n',
      'times-not-understood',
    ],
    [
      'numbers beside days that never were',
      'Time,Temperature\n2026-02-30 18:00,21.5\n2026-02-30 18:10,21.4\n',
      'times-not-understood',
    ],
    ['times without a number', 'Time,State\n2026-01-25 18:00,on\n2026-01-25 18:10,off\n', 'no-readings'],
    [
      'numbers of nothing known',
      'Time,Lamps,Doors\n2026-01-25 18:00,500,300\n2026-01-25 18:10,400,290\n',
      'no-known-column',
    ],
    [
      'a column of faults',
      'Time,Temperature\n2026-01-25 18:00,-999\n2026-01-25 18:10,-999\n',
      'no-known-column',
    ],
  ])('%s', (_, file, code) => {
    const reading = read(file);
    expect(reading.kind).toBe('unreadable');
    expect(codesOf(reading)).toContain(code);
  });

  test('one run of NULs from a power cut costs only its line', () => {
    const rows = Array.from(
      { length: 50 },
      (_, i) => `2026-01-25 18:${String(i).padStart(2, '0')},${20 + i / 10}`,
    );
    const reading = read(`Time,Temperature\n${rows.join('\n')}\n${'\0'.repeat(30)}\n2026-01-25 19:00,20\n`);
    expect(reading).toMatchObject({ kind: 'read', rows: 52, rejected: 1 });
  });
});
