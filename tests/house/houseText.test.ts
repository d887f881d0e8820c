import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rewritten } from '../../src/houseText.ts';

/** As a person lays it out: some in one line, some not, blanks where they like them. */
const written = `{
   "name": "Plot 14",   "floorAreaM2": 96,

   "stages": [
      { "name": "Before", "from": "2027-01-09", "to": "2027-01-25" },
      { "name": "After",  "from": "2027-01-28", "to": "2027-02-13" }
   ],
   "notes": [ { "at": "2027-01-12", "text": "Loft hatch open" } ]
}
`;
const house = JSON.parse(written);
const between = { name: 'Between', from: '2027-01-25', to: '2027-01-28' };

describe('the text of a house', () => {
  test('keeps every line that has nothing to do with the change', () => {
    const [before, after] = house.stages;
    const text = rewritten(written, { ...house, stages: [before, between, after] });
    expect(JSON.parse(text).stages).toEqual([before, between, after]);
    const lines = text.split('\n');
    for (const line of written.split('\n')) expect(lines.map(plain)).toContain(plain(line));
    expect(rewritten(text, house)).toBe(written);
  });

  test('has one value put in the place of another, and nothing else touched', () => {
    const [before, after] = house.stages;
    expect(rewritten(written, { ...house, stages: [before, { ...after, to: '2027-02-14' }] })).toBe(
      written.replace('2027-02-13', '2027-02-14'),
    );
  });

  test('loses a key with all that it holds', () => {
    const { notes: _, ...quiet } = house;
    expect(rewritten(written, quiet)).toBe(written.replace(/,\s+"notes".*/, ''));
  });

  test('holds the value that it is given, whatever stood there before', () => {
    const json = fc.jsonValue();
    fc.assert(
      fc.property(json, json, fc.constantFrom(0, 1, 3), (before, after, indent) => {
        const text = rewritten(JSON.stringify(before, null, indent), after);
        expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(after)));
        expect(rewritten(text, after)).toBe(text);
      }),
    );
  });
});

/** A line goes on being that line when another follows it. */
const plain = (line: string) => line.replace(/,$/, '');
