import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { houseSchema } from '../../src/house.ts';
import { sampleFiles } from './sampleFiles.ts';

const folder = new URL('../../sample-logs/', import.meta.url);
const made = sampleFiles();
const lines = (name: string) => (made.folder.get(name) ?? '').split(/\r?\n/).filter((line) => line !== '');

describe('the demonstration house', () => {
  test('is made again byte for byte', () => {
    expect(readdirSync(folder).sort()).toEqual([...made.folder.keys()].sort());
    for (const [name, text] of made.folder)
      expect(readFileSync(new URL(name, folder), 'utf8') === text, name).toBe(true);
    expect(readFileSync(new URL('sampleTruth.json', import.meta.url), 'utf8') === made.truth).toBe(true);
  });

  test('keeps to the contract of house.json', () => {
    const read = houseSchema.safeParse(JSON.parse(made.folder.get('house.json') ?? ''));
    expect(read.error).toBeUndefined();
  });

  test('lets its loss fall by 15 to 25 % when the last openings are closed, and stay above the drawn', () => {
    const { stages, drawn } = JSON.parse(made.truth);
    const [before, after] = stages.map((stage: { heatLossWK: { whole: number } }) => stage.heatLossWK.whole);
    expect(after / before).toBeGreaterThan(0.75);
    expect(after / before).toBeLessThan(0.85);
    expect(after).toBeGreaterThan(drawn.heatLossWK.whole);
  });

  test('has the blemishes that are listed, and no others', () => {
    const rows = 35 * 144 + 1;
    expect(lines('living.csv')).toHaveLength(1 + rows + 1);
    expect(new Set(lines('living.csv')).size).toBe(1 + rows);
    expect(lines('bedroom.csv').filter((line) => line.includes(',,'))).toHaveLength(1);
    expect(lines('outside.csv')).toHaveLength(4 + 35 * 96 + 1);
    expect(lines('kitchen.csv')).toHaveLength(4 + 35 * 96 + 1 - 8);
    expect(lines('roof-void.csv')).toHaveLength(4 + 35 * 96 + 1 + 1);
    expect(lines('weather.csv')).toHaveLength(1 + 35 * 24 + 1);
  });

  test('meters 18 kWh on its heated night and nothing else', () => {
    const watts = lines('heater.csv')
      .slice(1)
      .map((line) => Number(line.split(',')[1]));
    // Six hours of 3 kW, read to 0.2 % each ten minutes: a standard error of 0.006 kWh.
    expect(Math.abs(watts.reduce((sum, power) => sum + power / 6000, 0) - 18)).toBeLessThan(0.025);
    expect(watts.filter((power) => power > 0)).toHaveLength(36);
  });

  test('stays below 1.5 MB, and its truth below 1 MB', () => {
    const bytes = [...made.folder.values()].reduce((sum, text) => sum + Buffer.byteLength(text), 0);
    expect(bytes).toBeLessThan(1.5e6);
    expect(Buffer.byteLength(made.truth)).toBeLessThan(1e6);
  });
});
