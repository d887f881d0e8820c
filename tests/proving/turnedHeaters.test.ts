import { expect, test } from 'vitest';
import { twoStoreyHouse } from './archetypes.ts';
import { makeModel } from './makeModel.ts';
import { asDrawn } from './plan.ts';
import { simulate } from './simulate.ts';
import { steadyWeather } from './steadyWeather.ts';
import { turnedHeaters } from './turnedHeaters.ts';
import { leftAlone } from './use.ts';

const model = makeModel(twoStoreyHouse('timber frame'), asDrawn);
const use = { ...leftAlone(4), setTemperature: 20, heatingPower: [3000, 2500, 3000, 0], turnedAbove: 0 };
const always = { ...use, heating: [{ from: 0, to: 1e9 }] };

test('a heater that is turned holds the set temperature without swinging', () => {
  const weather = steadyWeather(2, 4 * 86400, 300, 3);
  const shells = [{ from: 0, leakage: { stack: 0.004, wind: 0.003, intoVoid: 0.2 } }];
  const run = simulate({ model, weather, use: always, shells, films: 'natural', startTemperature: 15 });
  for (const air of run.airTemperature.slice(0, 3))
    for (const temperature of air.slice(-288)) expect(Math.abs(temperature - 20)).toBeLessThan(0.05);
});

test('no heater is turned beyond its power, below nothing, or when nobody wants heat', () => {
  const [living] = turnedHeaters(model, use, 300) ?? [];
  expect(living?.(50)).toBe(3000);
  expect(living?.(-50)).toBe(0);
  expect(living?.(null)).toBe(0);
});

test('heaters too weak to warm a room within a step are switched', () => {
  expect(turnedHeaters(model, { ...use, turnedAbove: 100 }, 300)).toEqual([null, null, null, null]);
  expect(turnedHeaters(model, leftAlone(4), 300)).toBeNull();
});
