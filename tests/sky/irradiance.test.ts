import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clearSkyIrradiance, diffuseShare, irradianceOnPlane, type Plane } from '../../src/sky/irradiance.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anySun = fc.record({ elevation: between(-Math.PI / 2, Math.PI / 2), azimuth: between(0, 2 * Math.PI) });
const anyPlane: fc.Arbitrary<Plane> = fc.record({
  tilt: between(0, Math.PI),
  azimuth: fc.option(between(0, 2 * Math.PI)),
});
/** Until 2096 [s]. */
const anyInstant = between(0, 4e9);
/** Outside the atmosphere at its nearest [W/m²]: no ground gets more for long. */
const BEYOND_AIR = 1361 * 1.033;

describe('irradiance on a plane', () => {
  test('is a number and not below nothing, whatever sun, plane and reading', () => {
    fc.assert(
      fc.property(between(-50, 2000), anySun, anyPlane, anyInstant, (global, sun, plane, instant) => {
        const falls = irradianceOnPlane(global, sun, plane, instant);
        expect(Number.isFinite(falls)).toBe(true);
        expect(falls).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 2000 },
    );
  });
  test('is missing where the reading is', () => {
    const sun = { elevation: 0.5, azimuth: 2 };
    expect(irradianceOnPlane(Number.NaN, sun, { tilt: 1, azimuth: null }, 0)).toBeNaN();
  });
  test('is the reading itself on a plane that lies level, or less where a low sun cannot give as much', () => {
    fc.assert(
      fc.property(between(0, 1200), anySun, anyInstant, (global, sun, instant) => {
        const level = irradianceOnPlane(global, sun, { tilt: 0, azimuth: null }, instant);
        // COMPUTED: on the level outside the air at the farthest that the sun is
        const surelyThere = 1361 * 0.967 * Math.sin(sun.elevation);
        if (sun.elevation < 0.035 || global <= surelyThere) expect(level).toBeCloseTo(global, 8);
        else expect(level).toBeLessThanOrEqual(global + 1e-8);
      }),
      { examples: [[58.918454132151034, { elevation: 0.035, azimuth: 0 }, 0]] },
    );
  });
  test('grows with the reading under a sky that is no clearer', () => {
    const sun = { elevation: radians(30), azimuth: radians(180) };
    const south = { tilt: Math.PI / 2, azimuth: radians(180) };
    const falls = [100, 200, 300, 400, 500, 600].map((it) => irradianceOnPlane(it, sun, south, 0));
    falls.slice(1).forEach((it, i) => {
      expect(it).toBeGreaterThan(falls[i]);
    });
  });
  test('on a wall that faces away from the sun is sky and ground only', () => {
    const elevation = radians(30);
    const sun = { elevation, azimuth: radians(180) };
    // COMPUTED: outside the air 1361·1.033·0.5 = 702.957 at the turn of the year; 351.478 of it is a clearness of 0.5
    const global = 1361 * 1.033 * 0.5 * 0.5;
    // whose diffuse share is 0.65915; half the sky, half the ground at 0.2
    const expected = 0.5 * 0.65915 * global + 0.5 * 0.2 * global;
    expect(irradianceOnPlane(global, sun, { tilt: Math.PI / 2, azimuth: 0 }, 0)).toBeCloseTo(expected, 9);
    for (const off of [90, 120, 150, 180])
      expect(
        irradianceOnPlane(global, sun, { tilt: Math.PI / 2, azimuth: radians(180 + off) }, 0),
      ).toBeCloseTo(expected, 9);
    // COMPUTED: towards it the beam stands there besides, 0.34085·global/sin 30° · cos 30°
    expect(irradianceOnPlane(global, sun, { tilt: Math.PI / 2, azimuth: radians(180) }, 0)).toBeCloseTo(
      expected + 0.34085 * global * Math.sqrt(3),
      9,
    );
  });
  test('of a bearing that is not known lies between the least and the most of all bearings', () => {
    const bearings = Array.from({ length: 360 }, (_, k) => radians(k));
    fc.assert(
      fc.property(between(1, 1000), anySun, between(0, Math.PI), (global, sun, tilt) => {
        const all = bearings.map((azimuth) => irradianceOnPlane(global, sun, { tilt, azimuth }, 0));
        const unknown = irradianceOnPlane(global, sun, { tilt, azimuth: null }, 0);
        expect(unknown).toBeGreaterThanOrEqual(Math.min(...all) * (1 - 1e-9));
        expect(unknown).toBeLessThanOrEqual(Math.max(...all) * (1 + 1e-3));
      }),
      { numRuns: 200 },
    );
  });
  test.each([20, 45, 60, 90])('tilted by %i° and of no known bearing is the mean of all, to 1 %', (tilt) => {
    for (const elevation of [5, 15, 30, 60].map(radians)) {
      const sun = { elevation, azimuth: 1 };
      const global = 900 * Math.sin(elevation);
      const unknown = irradianceOnPlane(global, sun, { tilt: radians(tilt), azimuth: null }, 0);
      let sum = 0;
      for (let k = 0; k < 3600; k++)
        sum += irradianceOnPlane(global, sun, { tilt: radians(tilt), azimuth: radians(k / 10) }, 0);
      // far less than what an evenly bright sky and the ground are known by
      expect(Math.abs(unknown / (sum / 3600) - 1)).toBeLessThan(0.01);
    }
  });
  test('is never more than sun, sky and ground together could give, even of a reading that no sky allows', () => {
    fc.assert(
      fc.property(between(0, 1400), anySun, anyPlane, anyInstant, (global, sun, plane, instant) => {
        // a beam as outside the atmosphere, the whole reading once more from the sky and a fifth from the ground
        const most = BEYOND_AIR + 1.2 * global;
        expect(irradianceOnPlane(global, sun, plane, instant)).toBeLessThanOrEqual(most * (1 + 1e-9));
      }),
      {
        numRuns: 2000,
        endOnFailure: true,
        examples: [[130, { elevation: 0.04, azimuth: Math.PI }, { tilt: 1.5, azimuth: Math.PI }, 0]],
      },
    );
  });
});

describe('the diffuse share', () => {
  test('lies between what the clearest sky leaves and all', () => {
    fc.assert(
      fc.property(between(0, 1.5), (clearness) => {
        expect(diffuseShare(clearness)).toBeLessThanOrEqual(1);
        // the published polynomial dips to 0.159 just before 0.8
        expect(diffuseShare(clearness)).toBeGreaterThan(0.15);
      }),
    );
  });
});

describe('the clear sky', () => {
  test('is brighter the higher the sun stands, and never as bright as outside the atmosphere', () => {
    fc.assert(
      fc.property(between(0, Math.PI / 2), between(0, Math.PI / 2), (one, other) => {
        const [low, high] = [one, other].sort((a, b) => a - b);
        const at = (elevation: number) => clearSkyIrradiance({ elevation, azimuth: 0 });
        expect(at(high)).toBeGreaterThanOrEqual(at(low));
        expect(at(high)).toBeLessThanOrEqual(1361 * Math.sin(high));
      }),
    );
  });
});
