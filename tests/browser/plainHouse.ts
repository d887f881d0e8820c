/** The demonstration house without its design, by two of its loggers: what is to be tried on it is assessed soon. */
import { readFileSync } from 'node:fs';
import type { House } from '../../src/house.ts';
import type { Files } from './startStillwarm.ts';

const sample = (name: string) => readFileSync(new URL(`../../sample-logs/${name}`, import.meta.url), 'utf8');
const {
  name,
  location,
  floorAreaM2,
  volumeM3,
  loggers,
  notes,
  stages = [],
}: House = JSON.parse(sample('house.json'));

const house = {
  name: name.replace('Demonstration', 'Plain'),
  location,
  floorAreaM2,
  volumeM3,
  loggers: loggers.filter(({ file }) => file === 'living.csv' || file === 'outside.csv'),
  notes,
  stages: stages.map(({ missing: _, ...stage }) => stage),
};

export const plainHouse: Files = {
  'living.csv': sample('living.csv'),
  'outside.csv': sample('outside.csv'),
  'house.json': JSON.stringify(house, null, 2),
};
