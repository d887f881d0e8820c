/** What a person answers -> what house.json says. */
import { describe, expect, test } from 'vitest';
import type { BringingPreview, FileChange, FilePreview } from '../../../server/api/shapes.ts';
import type { Imported } from '../../../src/assessment.ts';
import { placementsOf, withColumn, withRead } from '../../../web/bringing/answers.ts';
import { type Begun, begunAnew, begunWith, withPreview } from '../../../web/bringing/begun.ts';
import { columnsOf } from '../../../web/bringing/columnsOf.ts';
import type { ColumnRole } from '../../../web/bringing/draft.ts';
import { emptyDraft, newPlacement } from '../../../web/bringing/draft.ts';
import { asLaterExport, believing, byItself } from '../../../web/bringing/exports.ts';
import { stillMissing } from '../../../web/bringing/missing.ts';
import { isAnswered, questionsIn, winterZone, withAnswer } from '../../../web/bringing/questions.ts';
import { houseOf } from '../../../web/bringing/writeDraft.ts';
import { importedOf } from './importedOf.ts';

const fileOf = (imported: Imported, more: Partial<FilePreview> = {}): FilePreview => ({
  imported,
  named: false,
  remembered: null,
  change: null,
  ...more,
});
const previewOf = (files: readonly FilePreview[], more: Partial<BringingPreview> = {}): BringingPreview => ({
  id: 'one',
  onto: null,
  house: null,
  problems: [],
  files,
  missing: [],
  notes: [],
  ready: false,
  ...more,
});
const seen = (...files: readonly FilePreview[]) => withPreview(begunAnew('Europe/London'), previewOf(files));

/** Says what a column holds, and gives the columns each logger of the file has then. */
function said(begun: Begun, file: FilePreview, column: string, role: ColumnRole | null) {
  const shown = columnsOf(file.imported.file, begun, previewOf([file]));
  return { ...begun, draft: withColumn(begun.draft, file.imported.file, column, role, shown) };
}
const columnsIn = ({ draft }: Begun, file: string) => placementsOf(file, draft).map(({ columns }) => columns);

describe('a column', () => {
  const one = fileOf(importedOf('a.csv', { A: 'temperature', B: null }));
  const two = fileOf(importedOf('b.csv', { A: 'temperature', B: 'temperature' }));

  test('that was not read and is humidity is so named', () => {
    expect(columnsIn(said(seen(one), one, 'B', 'humidity'), 'a.csv')).toEqual([{ humidity: 'B' }]);
  });

  test('that is another thermometer is another logger, and the first keeps its own', () => {
    expect(columnsIn(said(seen(one), one, 'B', 'temperature'), 'a.csv')).toEqual([
      { temperature: 'A' },
      { temperature: 'B' },
    ]);
  });

  test('that is no thermometer after all takes its logger with it', () => {
    const begun = seen(two);
    expect(columnsIn(begun, 'b.csv')).toEqual([{ temperature: 'A' }, { temperature: 'B' }]);
    expect(columnsIn(said(begun, two, 'A', null), 'b.csv')).toEqual([{ temperature: 'B' }]);
  });

  test('holds one thing: what it was before is taken back', () => {
    const first = said(seen(one), one, 'B', 'humidity');
    expect(columnsIn(said(first, one, 'B', 'power'), 'a.csv')).toEqual([{ power: 'B' }]);
  });

  test('that was guessed remains a guess where house.json names it only for the sake of the others', () => {
    const shown = columnsOf('b.csv', seen(two), previewOf([two]));
    expect(shown.map(({ confidence }) => confidence)).toEqual([null, 'likely', 'likely']);
  });
});

describe('a question', () => {
  const note = (code: string, column?: string) => ({
    code,
    text: 'Noticed.',
    where: { file: 'a.csv', ...(column === undefined ? {} : { column }) },
  });
  const ambiguous = importedOf(
    'a.csv',
    { T: 'temperature' },
    { notes: [note('date-order-unknown')], cells: [['03/04/2027 12:00', '18.5']] },
  );

  test('of day and month reads the file’s own first date both ways', () => {
    const [question] = questionsIn(ambiguous, 'Europe/London');
    expect(question.choices.map(({ label }) => label)).toEqual([
      'The day: 03/04 is 3 April',
      'The month: 03/04 is 4 March',
    ]);
  });

  test('is written as the answer of its file, and stays to be answered otherwise', () => {
    const begun = seen(fileOf(ambiguous));
    const [question] = begun.questions;
    expect(isAnswered(question, begun.draft)).toBe(false);
    const draft = withAnswer(begun.draft, 'a.csv', question.choices[1].answer, []);
    expect(houseOf(draft)).toMatchObject({ loggers: [{ read: { dateOrder: 'month-first' } }] });
    const settled = fileOf(importedOf('a.csv', { T: 'temperature' }));
    const again = withPreview({ ...begun, draft }, previewOf([settled]));
    expect(again.questions).toHaveLength(1);
    expect(isAnswered(again.questions[0], again.draft)).toBe(true);
  });

  test.each([
    'temperature-unit-guessed',
    'unit-doubted',
    'serial-days-guessed',
    'zone-ambiguous',
    'local-time-missing',
    'doubled-hour-once',
    'quantity-guessed',
  ])('is asked of %s, and each of its answers answers it', (code) => {
    const begun = seen(fileOf(importedOf('a.csv', { T: 'temperature' }, { notes: [note(code, 'T')] })));
    const [question] = begun.questions;
    for (const { answer } of question.choices)
      expect(isAnswered(question, withAnswer(begun.draft, 'a.csv', answer, []))).toBe(true);
  });

  test('is not asked of a file that is left out', () => {
    expect(seen(fileOf(importedOf('a.csv', {}, { notes: [note('date-order-unknown')] }))).questions).toEqual(
      [],
    );
  });

  test.each([
    ['Europe/London', 'UTC'],
    ['Europe/Zurich', 'Etc/GMT-1'],
    ['America/New_York', 'Etc/GMT+5'],
    ['Australia/Sydney', 'Etc/GMT-10'],
    ['Asia/Kolkata', null],
  ])('offers for %s the zone of its winter time, %s', (house, zone) => {
    expect(winterZone(house)).toBe(zone);
  });

  test('an answer that is taken back leaves nothing in house.json', () => {
    const { draft } = seen(fileOf(ambiguous));
    const back = withRead(withRead(draft, 'a.csv', { decimal: ',' }), 'a.csv', { decimal: undefined });
    expect(back).toEqual(draft);
  });
});

describe('a file of a known layout', () => {
  test('is read as the last one was, and that is said', () => {
    const remembered = { timeZone: 'UTC', clockOffsetMin: -60, read: { dateOrder: 'month-first' as const } };
    const begun = seen(fileOf(importedOf('a.csv', { T: 'temperature' }), { remembered }));
    expect([...begun.remembered]).toEqual(['a.csv']);
    expect(houseOf(begun.draft)).toMatchObject({ loggers: [remembered] });
  });
});

describe('a later export of a stored logger', () => {
  const stored = { ...emptyDraft, placements: [newPlacement('living.csv', 'inside')] };
  const change: FileChange = {
    kind: 'continues',
    of: 'living.csv',
    newReadings: 10,
    conflicts: { count: 0, first: [] },
  };
  const onto = { id: 'h', name: 'House' };
  const later = fileOf(importedOf('living-2.csv', { T: 'temperature' }), { change });
  const begun = withPreview(begunWith(stored), previewOf([later], { onto }));

  test('continues it, once and no more', () => {
    const again = withPreview(begun, previewOf([later], { onto }));
    expect(again.draft.placements).toMatchObject([{ file: 'living.csv', continuedIn: ['living-2.csv'] }]);
  });

  test('is believed when the person says so, and the stored one again when they change their mind', () => {
    const newer = believing(begun.draft, 'living-2.csv', 'living.csv');
    expect(newer.placements).toMatchObject([{ file: 'living-2.csv', continuedIn: ['living.csv'] }]);
    expect(believing(newer, 'living.csv', 'living-2.csv')).toEqual(begun.draft);
  });

  test('a logger that is new is placed by a guess, the very same file not at all', () => {
    const none = { newReadings: 0, conflicts: { count: 0, first: [] } };
    const same = fileOf(importedOf('copy.csv', { T: 'temperature' }), {
      change: { kind: 'same', of: 'living.csv', ...none },
    });
    const fresh = fileOf(importedOf('loft.csv', { T: 'temperature' }), {
      change: { kind: 'new', of: null, ...none },
    });
    const both = withPreview(begunWith(stored), previewOf([same, fresh], { onto }));
    expect(both.draft.placements.map(({ file, place }) => [file, place])).toEqual([
      ['living.csv', 'inside'],
      ['loft.csv', 'void'],
    ]);
  });
});

test('two exports of one logger become one entry, and two loggers again', () => {
  const january = { ...newPlacement('january.csv', 'inside'), room: 'Hall' };
  const draft = { ...emptyDraft, placements: [january, newPlacement('february.csv', 'outside')] };
  const joined = asLaterExport(draft, 'february.csv', 'january.csv');
  expect(joined.placements).toEqual([{ ...january, continuedIn: ['february.csv'] }]);
  expect(byItself(joined, 'february.csv').placements).toMatchObject([
    january,
    { file: 'february.csv', place: 'inside', continuedIn: [], guess: 'nothing' },
  ]);
  expect(byItself(joined, 'january.csv').placements.map(({ file }) => file)).toEqual([
    'february.csv',
    'january.csv',
  ]);
});

test('a logger that is one by itself after all has neither the room nor the size nor the element of the other', () => {
  const said = { room: 'Hall', volume: '40', element: 'Roof' };
  const hall = { ...newPlacement('january.csv', 'void'), ...said, continuedIn: ['february.csv'] };
  expect(byItself({ ...emptyDraft, placements: [hall] }, 'february.csv').placements).toMatchObject([
    said,
    { file: 'february.csv', place: 'void', room: '', volume: '', element: '' },
  ]);
});

test('a file that a brought house.json does not name is left out of it', () => {
  const house = { ...emptyDraft, placements: [newPlacement('living.csv', 'inside')] };
  const begun = withPreview(
    begunWith(house),
    previewOf([fileOf(importedOf('other.csv', { T: 'temperature' }))]),
  );
  expect(houseOf(begun.draft)).toEqual(houseOf(house));
});

test('what is missing is said in words, and nothing once the house can be kept', () => {
  const log = fileOf(importedOf('living.csv', { T: 'temperature' }));
  const { draft } = seen(log);
  expect(stillMissing(draft, previewOf([log]))).toEqual([
    'Give the house a name of at most 200 letters.',
    'Place a logger outside, or a weather station: the outdoor temperature is needed.',
  ]);
  const outside = {
    ...draft,
    name: 'House',
    placements: [...draft.placements, newPlacement('o.csv', 'outside')],
  };
  expect(stillMissing(outside, previewOf([log], { ready: true }))).toEqual([]);
});
