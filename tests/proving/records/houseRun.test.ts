import { describe, expect, test } from 'vitest';
import { houseTypeNamed, houseTypes } from '../houses/index.ts';
import { day, days } from './calendar.ts';
import { runHouse, usualStep } from './houseRun.ts';

const cabin = houseTypeNamed('timber cabin');

describe('a simulated house', () => {
  test.each(houseTypes.filter((_, i) => i % 4 === 0))(
    '$name: heat given is heat lost and heat stored',
    (type) => {
      const { given, lost, stored } = runHouse(type, 900, 1200).run.balance;
      // All exchanges are solved for at one instant, also where insulation changes on the way: rounding only.
      expect(Math.abs(given - lost - stored)).toBeLessThan(1e-9 * Math.abs(given));
    },
  );

  test('the same seed gives the same run, another seed another house', () => {
    const [first, again, other] = [901, 901, 902].map((seed) => runHouse(cabin, seed, 1200));
    expect(again.run).toEqual(first.run);
    expect(again.after).toEqual(first.after);
    expect(other.after.mass).not.toBe(first.after.mass);
  });

  test('two types with one seed have chance of their own', () => {
    const [a, b] = houseTypes.slice(0, 2).map((type) => runHouse(type, 901, 1200));
    expect(a.after.bridges).not.toBe(b.after.bridges);
    expect(a.weather.airTemperature[0]).not.toBe(b.weather.airTemperature[0]);
  });

  test.each(['timber cabin', 'solid brick, insulated inside'])(
    '%s: half the step changes leakage, and the heat that keeps it warm, by less than 0.5 %%',
    (type) => {
      const [coarse, fine] = [usualStep, usualStep / 2].map((step) => {
        const { run, course, weather } = runHouse(houseTypeNamed(type), 903, step);
        const { from, to } = course.meteredDays;
        let power = 0;
        let difference = 0;
        let changes = 0;
        run.heating.forEach((heating, k) => {
          const time = run.start + k * step;
          if (time < from || time >= to) return;
          power += heating;
          difference += run.airTemperature[0][k] - weather.airTemperature[k];
          changes += run.airChangesPerHour[k] * step;
        });
        return { perKelvin: power / difference, changes };
      });
      expect(Math.abs(coarse.changes / fine.changes - 1)).toBeLessThan(0.005);
      expect(Math.abs(coarse.perKelvin / fine.perKelvin - 1)).toBeLessThan(0.005);
    },
  );

  test('half the step changes how fast a heated night cools by less than 0.5 %', () => {
    const [coarse, fine] = [usualStep, usualStep / 2].map((step) => {
      const { run, course, weather } = runHouse(cabin, 903, step);
      const above = (time: number) => {
        const k = Math.round((time - run.start) / step);
        return run.airTemperature[0][k] - weather.airTemperature[k];
      };
      return Math.log(above(course.heatedNight.to + 7200) / above(course.heatedNight.to + 5 * 3600));
    });
    expect(Math.abs(coarse / fine - 1)).toBeLessThan(0.005);
  });

  test('nobody heats about the heated night but the metered heater', () => {
    const { run, course, start } = runHouse(cabin, 904, 600);
    const { from, to, power } = course.heatedNight;
    expect(from).toBeGreaterThan(start + days.after.from * day);
    expect(to - from).toBeGreaterThanOrEqual(4 * 3600);
    expect(power).toBeLessThanOrEqual(4000);
    run.metered.forEach((metered, k) => {
      const middle = run.start + (k - 0.5) * run.step;
      if (k > 0) expect(metered).toBe(middle >= from && middle < to ? power : 0);
      if (middle > from - 3 * 3600 && middle < to + 6 * 3600) expect(run.heating[k]).toBe(0);
    });
  });
});
