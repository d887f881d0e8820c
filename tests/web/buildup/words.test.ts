import { expect, test } from 'vitest';
import { materials } from '../../../src/fabric/index.ts';
import { junctionKinds } from '../../../src/house.ts';
import { framingOf } from '../../../web/buildup/framing.ts';
import { junctionNames } from '../../../web/buildup/junctionNames.ts';
import { labelled } from '../../../web/buildup/labels.ts';
import { numberIn } from '../../../web/buildup/numberIn.ts';
import { sourceWords } from '../../../web/buildup/sourceWords.ts';

test('a reason speaks of the fields by the names that they have on the page', () => {
  expect(labelled('Give "perimeterM".')).toBe('Give “Exposed perimeter, m”.');
  expect(labelled('Give widthMm and spacingMm, or a fraction outright.')).toBe(
    'Give “Width, mm” and “Centres, mm”, or a fraction outright.',
  );
});

test('a remedy on the page does not say where in house.json a field stands', () => {
  const remedy = 'Hang a logger there, or give its "temperatureC" under "conditions"."neighbour".';
  expect(labelled(remedy)).toBe('Hang a logger there, or give its “Neighbour’s temperature, °C”.');
});

test.each([
  ['12,5', 12.5],
  [' 0.022 ', 0.022],
  ['−5', -5],
  ['100.', 100],
  ['', undefined],
  ['1e3', null],
  ['12 mm', null],
])('“%s” is read as %s', (typed, number) => {
  expect(numberIn(typed)).toBe(number);
});

test('every material of the library says where each of its figures comes from', () => {
  const source = /: .+ \((read|from memory, to be confirmed|practice)\)\.$/;
  for (const material of materials)
    if (material.kind !== 'air')
      for (const sentence of sourceWords(material)) expect(sentence, material.name).toMatch(source);
});

test('figures of one source are told in one sentence, those of several apart', () => {
  const value = (it: number, source: string) => ({ value: it, mark: 'READ', source }) as const;
  const board = {
    kind: 'solid',
    name: 'board',
    group: 'timber',
    aliases: [],
    conductivity: value(0.1, 'one table'),
    density: value(600, 'another'),
    specificHeat: value(1600, 'one table'),
    vapour: { kind: 'factor', dry: 50, humid: 20, mark: 'PRACTICE', source: 'the trade' },
  } as const;
  expect(sourceWords(board)).toEqual([
    'Conductivity 0.1 W/(mK), specific heat 1600 J/(kgK): one table (read).',
    'Density 600 kg/m³: another (read).',
    'Vapour factor 50 dry and 20 humid: the trade (practice).',
  ]);
});

test('the convention for timber follows what the members are called, else the flow of heat', () => {
  const facing = (it: 'up' | 'across' | 'down') => ({
    name: 'x',
    areaM2: 1,
    buildUp: { facing: it, layers: [] },
  });
  const called = (name: string) => ({ name, conductivityWmK: 0.13 });
  expect(framingOf(facing('up'), called('Rafters'))).toBe('rafters');
  expect(framingOf(facing('up'), called('ceiling joists'))).toBe('ceiling joists');
  expect(framingOf(facing('across'), called('timbers'))).toBe('timber-frame wall');
  expect(framingOf(facing('down'), called('joists'))).toBe('floor joists');
});

test('a word of the language stays one where it is no key in quotes', () => {
  expect(labelled('It stands in the shelter of a wood.')).toBe('It stands in the shelter of a wood.');
  expect(labelled('Give "shelter".')).toBe('Give “From the wind it is”.');
});

test('every line where parts meet has a name of its own', () => {
  const names = junctionKinds.map((kind) => junctionNames[kind]);
  expect(new Set(names).size).toBe(junctionKinds.length);
});
