import { expect, test } from 'vitest';
import type { ChannelFacts } from '../../../server/api/loggerShapes.ts';
import type { Assessment, Message } from '../../../src/assessment.ts';
import type { House } from '../../../src/house.ts';
import { loggerRows } from '../../../web/loggers/loggerRows.ts';

const house: House = {
  name: 'Invented',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  loggers: [
    { file: 'in.csv', place: 'inside', room: 'Hall', continuedIn: ['in2.csv'] },
    { file: 'out.csv', place: 'outside', columns: { temperature: 'Probe' } },
  ],
};
const facts = (file: string, column: string): ChannelFacts => ({
  file,
  column,
  quantity: 'temperature',
  unit: 'C',
  readings: 10,
  first: 0,
  last: 5400,
  every: 600,
  resolution: 0.1,
  gaps: { count: 0, longest: 0 },
  doubted: 0,
});
const answer = {
  asked: 0,
  channels: [facts('in.csv', 'T'), facts('out.csv', 'Case'), facts('out.csv', 'Probe')],
};
const warning = (code: string, file: string): Message => ({
  code,
  text: `${code} of ${file}`,
  where: { file },
});
const assessment = (warnings: Message[]): Assessment => ({
  house: 'Invented',
  design: null,
  imports: [],
  stages: [],
  comparisons: [],
  warnings,
});

test('a logger has the facts of the column that house.json names', () => {
  expect(loggerRows(house, answer, null).map(({ facts: of }) => of?.column)).toEqual(['T', 'Probe']);
});

test('what is told of any of its exports is told of the logger, once, without its place', () => {
  const told = [warning('gaps', 'in2.csv'), warning('gaps', 'in2.csv'), warning('logger-in-sun', 'out.csv')];
  const [hall, outside] = loggerRows(house, answer, assessment(told));
  expect(hall.findings).toEqual([{ code: 'gaps', text: 'gaps of in2.csv' }]);
  expect([hall.sensed, outside.sensed]).toEqual([false, true]);
});

test('what lying side by side told is its offset and no doubt', () => {
  const [hall] = loggerRows(house, answer, assessment([warning('co-location-offset', 'in.csv')]));
  expect([hall.sideBySide, hall.findings]).toEqual(['co-location-offset of in.csv', []]);
});
