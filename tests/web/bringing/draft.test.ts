/** house.json into the form and out of it again. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { houseSchema } from '../../../src/house.ts';
import { readHouse } from '../../../src/houseFile.ts';
import {
  columnRoles,
  elementNames,
  emptyDraft,
  type HouseDraft,
  newPlacement,
  type Placement,
  places,
  sectionOf,
} from '../../../web/bringing/draft.ts';
import { problemsOfDraft } from '../../../web/bringing/problems.ts';
import { draftOf } from '../../../web/bringing/readDraft.ts';
import { placedAt, townOfZone, towns } from '../../../web/bringing/towns.ts';
import { houseJsonOf, houseOf } from '../../../web/bringing/writeDraft.ts';

const text = fc.string({ minLength: 1, maxLength: 20 }).filter((it) => it.trim() !== '');
const number = fc
  .double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 })
  .map((value) => String(value === 0 ? 0 : value));
const orEmpty = (it: fc.Arbitrary<string>) => fc.oneof(fc.constant(''), it);
/** Of two zeros JSON has one. */
const json = fc.jsonValue().map((value): unknown => JSON.parse(JSON.stringify(value)));
const others = fc.dictionary(
  fc.constantFrom('temperatureOffsetK', 'putBack', 'leaveOut', 'part', 'somethingNew'),
  json,
  { minKeys: 1, noNullPrototype: true },
);

const placement: fc.Arbitrary<Placement> = fc
  .record({
    file: text,
    continuedIn: fc.array(text, { maxLength: 2 }),
    place: fc.constantFrom(...places.filter((it) => it !== 'left out')),
    room: orEmpty(text),
    volume: orEmpty(number),
    element: orEmpty(text),
    columns: fc.dictionary(fc.constantFrom(...columnRoles), text, { noNullPrototype: true }),
    timeZone: orEmpty(text),
    clockOffset: orEmpty(number),
    read: fc.record(
      {
        dateOrder: fc.constantFrom('day-first', 'month-first', 'year-first'),
        decimal: fc.constantFrom('.', ','),
        unit: fc.constantFrom('C', 'F', 'K'),
        serialFrom: fc.constantFrom(1900, 1904),
        stamp: fc.constantFrom('start', 'end'),
      },
      { requiredKeys: [], noNullPrototype: true },
    ),
    keys: fc.option(others),
  })
  .map(({ keys, ...it }): Placement => {
    const section = sectionOf(it.place) ?? 'loggers';
    const logger = section === 'loggers' ? {} : { room: '', volume: '', element: '' };
    return { ...it, ...logger, rest: keys === null ? null : { section, keys }, guess: null };
  });

const order = (section: ReturnType<typeof sectionOf>) =>
  ['loggers', 'weather', 'heat'].indexOf(section ?? '');
const draft: fc.Arbitrary<HouseDraft> = fc.record({
  name: text,
  latitude: number,
  longitude: number,
  timeZone: text,
  floorArea: orEmpty(number),
  volume: orEmpty(number),
  placements: fc
    .array(placement, { maxLength: 5 })
    .map((all) => all.toSorted((a, b) => order(sectionOf(a.place)) - order(sectionOf(b.place)))),
  heatByHand: fc.array(
    fc.record({ from: text, to: text, energyKWh: fc.integer() }, { noNullPrototype: true }),
  ),
  rest: fc.dictionary(fc.constantFrom('stages', 'elements', 'nights', 'notes', 'unheardOf'), json, {
    noNullPrototype: true,
  }),
});

test('what a form says is what it says again after it was house.json', () => {
  fc.assert(
    fc.property(draft, (it) => {
      expect(draftOf(houseJsonOf(it))).toEqual(it);
    }),
  );
});

describe('a house.json that was brought', () => {
  const sample = readFileSync(new URL('../../../sample-logs/house.json', import.meta.url), 'utf8');

  test('says the same after it went through the form, the design and the stages as well', () => {
    const opened = draftOf(sample);
    expect(opened?.placements).toHaveLength(7);
    expect(JSON.parse(houseJsonOf(opened ?? emptyDraft))).toEqual(JSON.parse(sample));
  });

  test('keeps keys that nobody knows, so that the person is told of them', () => {
    const odd = sample.replace('"floorAreaM2"', '"florAreaM2"');
    const reading = readHouse(houseJsonOf(draftOf(odd) ?? emptyDraft));
    expect(reading.kind === 'problems' && reading.problems.map(({ code }) => code)).toContain('key-unknown');
  });

  test.each(['', 'no house', '[]', '{"loggers": "living.csv"}', '{"loggers": ["living.csv"]}'])(
    'of which no form can be made gives none: %s',
    (broken) => {
      expect(draftOf(broken)).toBeNull();
    },
  );
});

test('a logger that becomes a weather station leaves its room and what only loggers have behind', () => {
  const logger = {
    ...newPlacement('a.csv', 'weather'),
    room: 'Loft',
    volume: '20',
    element: 'Ceiling',
    rest: { section: 'loggers' as const, keys: { temperatureOffsetK: 0.125 } },
  };
  expect(houseOf({ ...emptyDraft, placements: [logger] })).toMatchObject({ weather: [{ file: 'a.csv' }] });
  expect(JSON.stringify(houseOf({ ...emptyDraft, placements: [logger] }))).not.toMatch(/Loft|Ceiling|0\.125/);
});

test('a logger in a void names the element that it lies behind, of those that were drawn', () => {
  const drawn = { ...emptyDraft, rest: { elements: [{ name: 'Roof' }, { areaM2: 4 }, { name: 'Floor' }] } };
  expect(elementNames(drawn, 'Roof')).toEqual(['Roof', 'Floor']);
  expect(elementNames(emptyDraft, '')).toEqual([]);
  const placements = [{ ...newPlacement('loft.csv', 'void'), element: 'Roof' }];
  expect(houseOf({ ...drawn, placements })).toMatchObject({ loggers: [{ place: 'void', element: 'Roof' }] });
});

test('an element that the design does not have stays in sight among those to choose from', () => {
  const drawn = { ...emptyDraft, rest: { elements: [{ name: 'Roof' }] } };
  expect(elementNames(drawn, 'Rooof')).toEqual(['Rooof', 'Roof']);
  expect(elementNames(emptyDraft, 'Roof')).toEqual(['Roof']);
});

test('what is left out does not stand in house.json', () => {
  const placements = [newPlacement('notes.txt', 'left out')];
  expect(houseJsonOf({ ...emptyDraft, placements })).not.toContain('notes.txt');
});

const begun = placedAt(
  { ...emptyDraft, name: 'House', placements: [newPlacement('living.csv', 'inside')] },
  townOfZone('Europe/London') ?? towns[0],
);

test('a name, a town and one logger make a house.json that is valid', () => {
  expect(readHouse(houseJsonOf(begun)).kind).toBe('house');
  expect(problemsOfDraft(begun)).toMatchObject({ house: {}, canBeTried: true });
});

test('without a name the house can be tried all the same, and the name is asked for', () => {
  const nameless = { ...begun, name: ' ' };
  expect(readHouse(houseJsonOf({ ...begun, name: '' })).kind).toBe('house');
  expect(problemsOfDraft({ ...nameless, name: '' })).toMatchObject({
    house: { name: expect.stringContaining('name') },
    canBeTried: true,
  });
});

test.each([
  ['latitude', { ...begun, latitude: '520' }, 'latitude'],
  ['a floor area in words', { ...begun, floorArea: 'large' }, 'floorArea'],
  ['a zone that nobody has', { ...begun, timeZone: 'Europe/Atlantis' }, 'timeZone'],
])('%s that cannot be is told at its field', (_, wrong, field) => {
  expect(Object.keys(problemsOfDraft(wrong).house)).toEqual([field]);
  expect(problemsOfDraft(wrong).canBeTried).toBe(false);
});

test('a volume that cannot be is told at its own logger', () => {
  const [right, wrong] = [
    newPlacement('a.csv', 'inside'),
    { ...newPlacement('b.csv', 'inside'), volume: '-3' },
  ];
  const problems = problemsOfDraft({
    ...begun,
    placements: [newPlacement('w.csv', 'weather'), right, wrong],
  });
  expect(Object.keys(problems.of(right))).toEqual([]);
  expect(Object.keys(problems.of(wrong))).toEqual(['volume']);
});

test('figures may be typed with a decimal comma', () => {
  expect(houseOf({ ...begun, floorArea: '96,5' })).toMatchObject({ floorAreaM2: 96.5 });
});

test('every town has coordinates and a zone that house.json takes', () => {
  for (const town of towns) {
    const checked = houseSchema.shape.location.safeParse(town);
    const { name, country, ...location } = town;
    expect(checked.success || houseSchema.shape.location.safeParse(location).success, name + country).toBe(
      true,
    );
  }
});

test('of a house.json that was brought the form changes what was changed, and leaves the rest as it was written', () => {
  const written =
    '{ "loggers": [{"place":"inside", "file":"in.csv"}],\n\t"name": "Old", "location": {"timeZone":"Europe/London","latitude":52,"longitude":-1}, "notes": [] }';
  const draft = draftOf(written);
  expect(draft && houseJsonOf({ ...draft, name: 'New' }, written)).toBe(written.replace('Old', 'New'));
});
