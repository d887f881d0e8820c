import { getPosition } from 'suncalc';
import { describe, expect, test } from 'vitest';
import { diffuseIrradiance, globalIrradiance, sunPosition, tiltedIrradiance } from './sun.ts';

const degrees = (angle: number) => (angle * 180) / Math.PI;

describe('sunPosition', () => {
  test('agrees with a library of another author to 0.1 degrees while the sun stands above 10', () => {
    let compared = 0;
    for (let hour = 0; hour < 365 * 24; hour += 7) {
      const time = Date.parse('2027-01-01T00:00:00Z') / 1000 + hour * 3600;
      const peer = getPosition(new Date(time * 1000), 52.2, -1.5);
      if (peer.altitude < 10) continue;
      const sun = sunPosition(time, 52.2, -1.5);
      // The peer bends the rays: 0.09 degrees at 10 degrees of altitude, less above.
      expect(Math.abs(degrees(sun.altitude) - peer.altitude)).toBeLessThan(0.1);
      expect(Math.abs(degrees(sun.bearing) - peer.azimuth)).toBeLessThan(0.1);
      compared++;
    }
    expect(compared).toBeGreaterThan(300);
  });
});

describe('irradiance', () => {
  test('a clear sky with the sun overhead sends 1035 W/m², an overcast one a quarter of it', () => {
    // COMPUTED Haurwitz: 1098 exp(-0.059) = 1035.09; Kasten and Czeplak: 1 - 0.75 = 0.25.
    expect(globalIrradiance(Math.PI / 2, 0)).toBeCloseTo(1035.09, 1);
    expect(globalIrradiance(Math.PI / 2, 1)).toBeCloseTo(258.77, 1);
  });

  test('half of the extraterrestrial irradiance is 66 % diffuse', () => {
    // COMPUTED Erbs at kt = 0.5: 0.9511 - 0.0802 + 1.097 - 2.07975 + 0.771 = 0.65915.
    expect(diffuseIrradiance(683.5, Math.PI / 2) / 683.5).toBeCloseTo(0.65915, 5);
  });

  test('a level face receives what the level receives, and a face turned away only diffuse light', () => {
    const sun = { altitude: 0.5, bearing: Math.PI };
    const level = tiltedIrradiance(sun, 400, 150, 0, 0);
    expect(level.direct + level.diffuse).toBeCloseTo(400, 9);
    expect(tiltedIrradiance(sun, 400, 150, 0, 90).direct).toBe(0);
  });
});
