import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { firstPageHtml, type SheetInput, sheetHtml } from '../../src/sheet/index.ts';
import { figures } from '../../src/words/index.ts';
import {
  inputOfFolder,
  inventedInput,
  sampleFolder,
  withNights,
  withOneStage,
  withStages,
} from './inputs.ts';

let demonstration: SheetInput;
const invented = inventedInput();
beforeAll(async () => {
  demonstration = await inputOfFolder(sampleFolder);
}, 180_000);

/** What a person reads: no tags, no style, references resolved, ties undone. */
const textOf = (sheet: string) =>
  sheet
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/&#(\d+);/g, (_, code) => String.fromCharCode(Number(code)))
    .replaceAll('\u00a0', ' ')
    .replace(/\s+/g, ' ');

describe('the sheet of the demonstration house', () => {
  test('has the figures of the JSON: heat loss, time constant and ratio of every stage, the design, every element', () => {
    const text = textOf(sheetHtml(demonstration));
    const { stages, design } = demonstration.assessment;
    expect(stages).toHaveLength(2);
    for (const { heatLossWK, timeConstantH, gap } of stages) {
      if (heatLossWK === null || timeConstantH === null || gap === null)
        throw new Error('a figure is missing');
      expect(text).toContain(figures.heatLossBetween(heatLossWK));
      expect(text).toContain(figures.hoursBetween(timeConstantH));
      expect(text).toContain(figures.ratioBetween(gap.ratio));
    }
    if (design === null) throw new Error('no design');
    for (const { name, heatLossWK } of design.elements)
      expect(text).toMatch(
        new RegExp(`${name}.{0,60} ${figures.heatLoss(heatLossWK ?? Number.NaN).replace('/', '\\/')}`),
      );
    expect(text).toContain(`The whole house as drawn ${figures.heatLoss(design.heatLossWK)}`);
  });

  test('has every night, used or left out, with its reason', () => {
    const text = textOf(sheetHtml(demonstration));
    for (const { date, used, reasons } of demonstration.assessment.stages.flatMap(({ nights }) => nights)) {
      expect(text).toContain(figures.dayOfYear(date));
      if (!used) for (const reason of reasons) expect(text).toContain(reason.text);
    }
  });

  test('has the hash of every file, the time zone and the version', () => {
    const text = textOf(sheetHtml(demonstration));
    expect(demonstration.files).toHaveLength(8);
    for (const { sha256 } of demonstration.files) expect(text).toContain(sha256);
    expect(text).toContain('Europe/London');
    expect(text).toContain('Stillwarm 1.2.3');
  });

  test('has its last night and its ruler as drawings within it', () => {
    expect(sheetHtml(demonstration).match(/<svg role="img"/g)?.length).toBeGreaterThan(8);
  });

  test('says that it is evidence, not a certificate, on the first page too', () => {
    expect(textOf(firstPageHtml(demonstration))).toContain('evidence, not a certificate');
  });
});

describe('the same data', () => {
  test('give the same bytes', () => {
    expect(sheetHtml(inventedInput())).toBe(sheetHtml(invented));
  });

  test.each([sheetHtml, firstPageHtml])('on another day differ in one line, that of the date', (make) => {
    const [before, after] = [demonstration, { ...demonstration, date: '2037-11-03' }].map((it) =>
      make(it).split('\n'),
    );
    expect(after).toHaveLength(before.length);
    expect(after.filter((line, i) => line !== before[i])).toEqual(['Made on 3 November 2037.']);
  });
});

/** All that a sheet is built of. */
const TAGS =
  /^(!doctype|html|head|meta|title|style|body|main|header|section|div|h[1-4]|p|span|strong|bdi|ul|li|figure|figcaption|img|table|caption|thead|tbody|tr|th|td|svg|g|path|line|rect|circle|text|tspan)$/;

function foreignMarkup(sheet: string): string[] {
  const plain = sheet.replace(/<style>[^<]*<\/style>/, '');
  const tags = plain.match(/<[^>]*>/g) ?? [];
  const odd = tags.filter((tag) => !TAGS.test(/^<\/?([!a-z0-9]+)/i.exec(tag)?.[1] ?? ''));
  const stray = (plain.match(/</g) ?? []).length - tags.length;
  return [...odd, ...(stray === 0 ? [] : [`${stray} stray “<”`])];
}

describe('what a sheet asks for', () => {
  test('is nothing: no script, no link, no address, no picture from elsewhere', () => {
    for (const sheet of [sheetHtml(demonstration), firstPageHtml(demonstration)]) {
      expect(foreignMarkup(sheet)).toEqual([]);
      expect(sheet).not.toMatch(/\b(href|srcset|url\(|@import|https?:|on[a-z]+=)/);
    }
  });
});

/** Every text of what a sheet is made of, but for those that the program itself keeps to a few words or to a form. */
const textsReplaced = (input: SheetInput, by: (text: string) => string): SheetInput => {
  const replaced = (value: unknown, key: string): unknown => {
    if (Array.isArray(value)) return value.map((it) => replaced(it, key));
    if (typeof value === 'string') return KEPT.has(key) || PLACES.has(value) ? value : by(value);
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([own, it]) => [own, replaced(it, own)]));
  };
  return replaced(input, '') as SheetInput;
};
const PLACES = new Set(['inside', 'outside', 'void', 'surface', 'adjacent', 'ground']);
const KEPT = new Set(
  [
    'date',
    'from',
    'to',
    'at',
    'timeZone',
    'place',
    'kind',
    'verdict',
    'method',
    'methods',
    'groups',
    'lower',
    'higher',
  ]
    .concat([
      'source',
      'quantity',
      'unit',
      'tier',
      'code',
      'dataUri',
      'massClass',
      'soil',
      'clock',
      'zone',
      'how',
    ])
    .concat(['orientation', 'time', 'dayFirst', 'start', 'end', 'sharing', 'test', 'country']),
);

test('hostile texts come out as text, wherever a house or an assessment has one', () => {
  const hostile = fc
    .oneof(
      fc.string({ unit: 'binary', minLength: 1, maxLength: 200 }),
      fc.constantFrom(
        '<script>alert(1)</script>',
        '"><img src=x onerror=1>',
        "'><svg/onload=1>",
        '</style><b>',
        '</title><b>',
        '=cmd|x',
        'א'.repeat(200),
        '\u202Eabc\u2067',
        `${'w'.repeat(199)}`,
        '--><svg/onload=1>',
        '\\3c script>',
        '&lt;b&gt;',
      ),
    )
    .filter((it) => it.trim() !== '');
  fc.assert(
    fc.property(fc.array(hostile, { minLength: 1, maxLength: 4 }), (texts) => {
      let next = 0;
      const input = textsReplaced(
        demonstration,
        (text) => `${texts[next++ % texts.length]}${text.slice(0, 4)}`,
      );
      for (const sheet of [sheetHtml(input), firstPageHtml(input)]) {
        expect(foreignMarkup(sheet)).toEqual([]);
        expect(sheet).not.toMatch(/[\u202A-\u202E\u2066-\u2069]/);
      }
      expect(next).toBeGreaterThan(200);
    }),
    { numRuns: 12 },
  );
});

describe('a sheet is made of less and of more', () => {
  test('without a design it says so, and has neither section nor ratio', () => {
    const text = textOf(sheetHtml(invented));
    expect(text).toContain('There is no design to set the measurement beside.');
    expect(text).not.toContain('Where the drawing lets heat out');
  });

  test('with one stage it says that there is nothing to compare', () => {
    expect(textOf(sheetHtml(withOneStage(demonstration)))).toContain('nothing to compare it with');
  });

  test('with fifteen stages each is on a ruler and in the table', () => {
    const text = textOf(sheetHtml(withStages(demonstration, 15)));
    for (let i = 1; i <= 15; i++) expect(text).toContain(`Stage ${i}, the`);
  });

  test('with a hundred nights each has its row', () => {
    const sheet = sheetHtml(withNights(demonstration, 100));
    expect(sheet.match(/<tr><th scope="row" class="whole">/g)).toHaveLength(100);
    expect(textOf(sheet)).toContain('of 100 nights');
  });

  test('photos are within it, and without any there is room to glue them in', () => {
    const photo = { name: 'hatch.jpg', dataUri: 'data:image/jpeg;base64,AAAA' };
    expect(sheetHtml({ ...invented, photos: [photo] })).toContain('<img src="data:image/jpeg;base64,AAAA"');
    expect(sheetHtml(invented).match(/class="frame"/g)).toHaveLength(4);
  });
});
