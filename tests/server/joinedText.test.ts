/** Two logs with the same header as one text. */
import { expect, test } from 'vitest';
import { joinedText } from '../../server/jobs/joinedText.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const joined = (earlier: string, later: string) => {
  const text = joinedText(bytes(earlier), bytes(later));
  return text === null ? null : new TextDecoder().decode(text);
};

test.each([
  [
    'later rows come after',
    'T,V\n2027-01-01 10:00,1\n',
    'T,V\n2027-01-01 10:10,2',
    '2027-01-01 10:00,1\n2027-01-01 10:10,2',
  ],
  [
    'earlier rows come before',
    'T,V\n2027-01-01T10:00Z,1',
    'T,V\n2027-01-01T09:00Z,2',
    '2027-01-01T09:00Z,2\n2027-01-01T10:00Z,1',
  ],
  [
    'of one instant the earlier file’s row is first',
    'T,V\n2027-01-01 10:00,7',
    'T,V\n2027-01-01 10:00,2',
    '2027-01-01 10:00,7\n2027-01-01 10:00,2',
  ],
  [
    'a row that both have stands there once, whatever the line ends',
    '\uFEFFT,V\r\n2027-01-01 10:00,1\r\n',
    'T,V\n2027-01-01 10:00,1\n',
    '2027-01-01 10:00,1',
  ],
  [
    'rows that begin otherwise stay as they came',
    'T,V\n1:00 PM,1',
    'T,V\n11:00 AM,2',
    '1:00 PM,1\n11:00 AM,2',
  ],
])('%s', (_, earlier, later, rows) => {
  expect(joined(earlier, later)).toBe(`T,V\n${rows}\n`);
});

test('logs with other headers, empty ones and such as are not UTF-8 are not joined', () => {
  expect(joined('T,V\n', 'T,W\n')).toBeNull();
  expect(joined('', '')).toBeNull();
  const latin = Uint8Array.from([84, 0xb0, 10]);
  expect(joinedText(latin, latin)).toBeNull();
});
