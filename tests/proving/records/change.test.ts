import { expect, test } from 'vitest';
import { boxPlan } from '../houses/box.ts';
import { houseTypes } from '../houses/index.ts';
import { airChangesPerHour } from '../leakage.ts';
import { heatLoss } from '../truth.ts';
import { deviationsOf, leakageOf } from './asBuilt.ts';
import { beforeThe } from './change.ts';
import { sites } from './sites.ts';

const changes = houseTypes.flatMap((type) =>
  Array.from({ length: 20 }, (_, seed) => {
    const plan = boxPlan(type.box);
    const [site] = sites;
    const after = deviationsOf(type, plan, seed);
    const leakage = leakageOf(type, site, seed);
    const before = beforeThe(plan, after, leakage, site, seed);
    const usual = (it: typeof leakage) => airChangesPerHour(it, 12, site.climate.meanWindSpeed);
    const ratio =
      heatLoss(plan, after, usual(leakage)).whole / heatLoss(plan, before.built, usual(before.leakage)).whole;
    return { ratio, mass: before.built.mass / after.mass, same: before.built === after };
  }),
);

test('after sealing or insulating a house loses half as much at least, and never more', () => {
  for (const { ratio } of changes) {
    expect(ratio).toBeGreaterThan(0.499);
    expect(ratio).toBeLessThanOrEqual(1);
  }
});

test('some houses are left as they were', () => {
  const left = changes.filter(({ same }) => same);
  expect(left.length).toBeGreaterThan(changes.length / 20);
  expect(left.every(({ ratio }) => ratio === 1)).toBe(true);
});

test('the mass stays the same', () => {
  for (const { mass } of changes) expect(mass).toBe(1);
});
