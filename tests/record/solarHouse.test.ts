/** The solar house of 2012 without any hint but the place: its clock is UTC, which the file does not say. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { House } from '../../src/house.ts';
import { gatherRecord } from '../../src/record/index.ts';

const folder = new URL('../real-logs/solar-house-2012/', import.meta.url);
const file = 'solar-house-2012.txt';
const stated: House = JSON.parse(readFileSync(new URL('house.json', folder), 'utf8'));
const files = new Map([[file, readFileSync(new URL(file, folder))]]);

/** Its loggers and weather as house.json has them, but read in the place's own time. */
const local: House = {
  ...stated,
  location: { ...stated.location, timeZone: 'Europe/Madrid' },
  loggers: stated.loggers.map(({ timeZone: _, ...logger }) => logger),
  weather: stated.weather?.map(({ timeZone: _, ...entry }) => entry),
};

test('rows in an hour that does not exist, and daylight before sunrise, are told; UTC is offered', () => {
  const { findings } = gatherRecord(local, files);
  const codes = findings.map(({ code }) => code);
  expect(codes).toContain('local-time-missing');
  const bySun = findings.find((it) => it.code === 'clock-off-sun');
  expect(bySun?.offers).toContainEqual({ timeZone: 'UTC' });
});

test('read as UTC it raises no question of its clock', () => {
  const codes = gatherRecord(stated, files).findings.map(({ code }) => code);
  expect(codes.filter((code) => code.startsWith('clock-off') || code === 'local-time-missing')).toEqual([]);
});
