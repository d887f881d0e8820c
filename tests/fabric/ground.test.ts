import fc from 'fast-check';
import { expect, test } from 'vitest';
import { slabOnGround } from '../../src/fabric/ground.ts';

const around = { wallThickness: 0.3, groundConductivity: 1.5 };

test('a strip along the edge of a narrow floor never makes it gain heat, nor beats insulation under all of it', () => {
  // 10 m² with 40 m around it, as when a digit of the area is missing.
  const slab = { ...around, area: 10, perimeter: 40, resistance: 0.05 };
  const edge = { lies: 'upright', reach: 2, thickness: 0.2, conductivity: 0.02 } as const;
  const strip = slabOnGround({ ...slab, edge }).transmittance;
  // What the strip adds to the ground that it takes the place of: 0.2/0.02 - 0.2/1.5 m²K/W.
  const everywhere = slabOnGround({ ...slab, resistance: 0.05 + 10 - 0.2 / 1.5 }).transmittance;
  expect(strip).toBeCloseTo(everywhere, 9);
});

test('edge insulation takes heat away and leaves some, whatever the floor', () => {
  const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  fc.assert(
    fc.property(figure(1, 500), figure(1, 200), figure(0, 10), figure(0.1, 5), figure(0.01, 0.5), (...it) => {
      const [area, perimeter, resistance, reach, thickness] = it;
      const slab = { ...around, area, perimeter, resistance };
      const edge = { lies: 'flat', reach, thickness, conductivity: 0.03 } as const;
      const { transmittance } = slabOnGround({ ...slab, edge });
      expect(transmittance).toBeGreaterThan(0);
      expect(transmittance).toBeLessThanOrEqual(slabOnGround(slab).transmittance);
    }),
  );
});
