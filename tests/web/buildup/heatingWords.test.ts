import { expect, test } from 'vitest';
import { designOf } from '../../../src/fabric/index.ts';
import type { House } from '../../../src/house.ts';
import { heatingOf } from '../../../web/buildup/heatingWords.ts';

/** 100 W/K: 50 m² of U 1 and 50 W/K along its edges; 96 m² of "medium" class. */
const house: House = {
  name: 'Invented house',
  location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
  loggers: [{ file: 'inside.csv', place: 'inside' }],
  floorAreaM2: 96,
  elements: [{ name: 'Shell', areaM2: 50, uValue: 1 }],
  thermalBridges: { psiLengthWK: 50 },
  heatCapacity: { class: 'medium' },
};

function said(it: House): string[] {
  const design = designOf(it);
  if (design === null) throw new Error('it has an element');
  return heatingOf(design, it, 20, -5);
}

test('the house as a whole is told in figures that can be worked out by hand', () => {
  const [mean, stored, load, year] = said(house);
  expect(mean).toContain('2.00 W/(m²K), over 50.0 m²'); // COMPUTED: 100/50
  expect(stored).toContain('15840 kJ/K'); // COMPUTED: 165·96
  expect(stored).toContain('44 h'); // COMPUTED: 15840/100/3.6
  expect(load).toContain('2.5 kW'); // COMPUTED: 100·25
  expect(year).toContain('2463 K·day below 15.5 °C'); // READ second-hand: degreeDays.ts
  expect(year).toContain('5910 kWh'); // COMPUTED: 100·2463·24/1000 = 5911
});

test('what flows to a neighbour whose temperature is stated is in the load, and in nothing else', () => {
  const party = { name: 'Party wall', areaM2: 20, uValue: 2, to: 'adjacent' } as const;
  const warm = (temperatureC: number): House => ({
    ...house,
    elements: [...(house.elements ?? []), party],
    conditions: { neighbour: { temperatureC, plusMinusK: 2 } },
  });
  expect(said(warm(5))[2]).toContain('3.1 kW'); // COMPUTED: 2500 + 40·15
  expect(said(warm(5)).toSpliced(2, 1)).toEqual(said(warm(20)).toSpliced(2, 1));
});

test('nothing is said where an element has no U-value', () => {
  const steel = { name: 'steel', fraction: 0.1, conductivityWmK: 50 };
  const wool = { name: 'wool', thicknessMm: 140, conductivityWmK: 0.035, bridge: steel };
  const refused = { name: 'Wall', areaM2: 10, buildUp: { layers: [wool] } };
  const sentences = said({ ...house, elements: [refused] });
  expect(sentences).toHaveLength(1); // what it stores is known all the same
});
