/**
 * Ground floors against published tables. READ: the figure stands in the source named. MEMORY: known, not seen
 * this time. COMPUTED: no published figure; worked out independently by the published formula.
 */
import { describe, expect, test } from 'vitest';
import { slabOnGround } from '../../src/fabric/ground.ts';
import { suspendedFloor } from '../../src/fabric/suspendedFloor.ts';

/** Asserts |value - expected| <= tolerance, with the printed figure's own tolerance. */
const near = (value: number, expected: number, tolerance: number) => {
  expect(Math.abs(value - expected), `${value} against ${expected}`).toBeLessThanOrEqual(tolerance);
};

describe('solid ground floors on clay with a 300 mm wall, ISO 13370', () => {
  // Approved Document L1 2002 Table C1, BRE IP 3/90, CIBSE Guide A. MEMORY: the column R = 0; COMPUTED: the
  // others. Two decimals are printed: 0.006.
  const resistances = [0, 0.5, 1, 1.5, 2, 2.5];
  const table: [number, number[]][] = [
    [0.1, [0.22, 0.18, 0.16, 0.14, 0.13, 0.12]],
    [0.2, [0.37, 0.29, 0.25, 0.22, 0.19, 0.18]],
    [0.3, [0.49, 0.38, 0.31, 0.27, 0.23, 0.21]],
    [0.4, [0.6, 0.44, 0.36, 0.3, 0.26, 0.23]],
    [0.5, [0.7, 0.5, 0.4, 0.33, 0.28, 0.24]],
    [0.6, [0.78, 0.55, 0.43, 0.35, 0.29, 0.25]],
    [0.7, [0.86, 0.59, 0.45, 0.36, 0.3, 0.26]],
    [0.8, [0.93, 0.62, 0.47, 0.37, 0.32, 0.27]],
    [0.9, [0.99, 0.65, 0.48, 0.39, 0.32, 0.28]],
    [1, [1.05, 0.68, 0.5, 0.4, 0.33, 0.28]],
  ];
  test.each(table)('with %f m of perimeter per m² they have the tabulated U', (perimeter, row) => {
    row.forEach((transmittance, i) => {
      const slab = {
        area: 100,
        perimeter: 100 * perimeter,
        resistance: resistances[i],
        wallThickness: 0.3,
        groundConductivity: 1.5,
      };
      near(slabOnGround(slab).transmittance, transmittance, 0.006);
    });
  });

  // COMPUTED; tolerance 0.0002: A, P, w, λ, Rf, B′, dt, U, well insulated
  test.each([
    [80, 36, 0.3, 1.5, 0, 4.4444, 0.615, 0.6515, false],
    [80, 36, 0.3, 2, 2.5, 4.4444, 5.72, 0.258, true],
    [100, 25, 0.4, 2, 1, 8, 2.82, 0.3282, false],
  ] as const)(
    'a floor of %f m² with %f m exposed has its B′, dt and U',
    (area, perimeter, w, λ, resistance, B, dt, U, well) => {
      const floor = slabOnGround({
        area,
        perimeter,
        resistance,
        wallThickness: w,
        groundConductivity: λ,
      });
      near(floor.characteristicDimension, B, 0.0002);
      near(floor.equivalentThickness, dt, 0.0002);
      near(floor.transmittance, U, 0.0002);
      expect(floor.wellInsulated).toBe(well);
    },
  );
});

describe('a slab with insulation along its edge, ISO 13370', () => {
  // COMPUTED in another language by ψ = -λ/π·(ln(D/dt + 1) - ln(D/(dt + d′) + 1)), the formula from MEMORY; no
  // published figure could be read. 80 m² with 36 m exposed, w 0.3, λ 1.5, Rf 0; 50 mm of 0.035 reaching 0.6 m:
  // dt 0.615, d′ 2.092857, U0 0.651468. Tolerance: rounding of the sixth decimal.
  const bare = { area: 80, perimeter: 36, resistance: 0, wallThickness: 0.3, groundConductivity: 1.5 };
  const edge = { reach: 0.6, thickness: 0.05, conductivity: 0.035 };
  test.each([
    ['flat', -0.229534, 0.548178],
    ['upright', -0.341572, 0.497761],
  ] as const)('lying %s has the ψ and the U of the formula', (lies, psi, U) => {
    const floor = slabOnGround({ ...bare, edge: { lies, ...edge } });
    near(floor.edgeTransmittance, psi, 1e-6);
    near(floor.transmittance, U, 1e-6);
  });
  test('gains nothing from an edge that is no better than the ground it takes the place of', () => {
    const poor = { lies: 'flat', ...edge, conductivity: 1.5 } as const;
    expect(slabOnGround({ ...bare, edge: poor }).transmittance).toBe(slabOnGround(bare).transmittance);
  });
});

describe('a suspended floor over a ventilated space, ISO 13370', () => {
  // COMPUTED by 1/U = 1/Uf + 1/(Ug + Ux), the formula from MEMORY; tolerance 0.0002.
  test('of 50 m² with 30 m exposed and Uf 0.25 has Ug 0.7825, Ux 0.4691 and U 0.2084', () => {
    const floor = suspendedFloor({
      area: 50,
      perimeter: 30,
      wallThickness: 0.3,
      groundConductivity: 1.5,
      floorTransmittance: 0.25,
      groundResistance: 0,
      height: 0.3,
      wallTransmittance: 1.7,
      opening: 1500e-6,
      windSpeed: 5,
      shelter: 'average',
    });
    near(floor.characteristicDimension, 3.3333, 0.0002);
    near(floor.groundTransmittance, 0.7825, 0.0002);
    near(floor.spaceTransmittance, 0.4691, 0.0002);
    near(floor.transmittance, 0.2084, 0.0002);
  });
  test('higher, exposed, on insulated sand has the U of the same formula', () => {
    const floor = suspendedFloor({
      area: 50,
      perimeter: 30,
      wallThickness: 0.3,
      groundConductivity: 2,
      floorTransmittance: 0.25,
      groundResistance: 1,
      height: 0.5,
      wallTransmittance: 1,
      opening: 3000e-6,
      windSpeed: 4,
      shelter: 'exposed',
    });
    near(floor.groundTransmittance, 0.4788, 0.0002);
    near(floor.spaceTransmittance, 0.822, 0.0002);
    near(floor.transmittance, 0.2097, 0.0002);
  });
});
