import { describe, expect, test } from 'vitest';
import { advance, makeSlab, resistanceOf, respond, type SlabLayer } from './conduction.ts';

const brick = { thickness: 0.2, conductivity: 0.8, density: 1700, specificHeat: 800 };
const wool = { thickness: 0.15, conductivity: 0.035, density: 25, specificHeat: 1030 };

function run(
  layers: SlabLayer[],
  inside: number,
  films: readonly [number, number],
  step: number,
  steps: number,
) {
  const slab = makeSlab(layers, 0);
  for (let k = 0; k < steps; k++) {
    respond(slab, step, films[0], films[1], 0, false);
    advance(slab, films[0] * inside, 0);
  }
  return slab;
}

describe('a slab', () => {
  test('in the end passes what its resistances in series pass', () => {
    const layers = [brick, wool, { resistance: 0.18 }, brick];
    const slab = run(layers, 20, [1 / 0.13, 1 / 0.04], 600, 20_000);
    const resistance = 0.13 + 0.04 + layers.reduce((sum, layer) => sum + resistanceOf(layer), 0);
    // 140 days are more than a hundred of its time constants: rounding only.
    expect((20 - slab.temperature[0]) / 0.13 / (20 / resistance)).toBeCloseTo(1, 9);
  });

  test('deep and suddenly warmed at its face, warms as the error function says', () => {
    const deep = { thickness: 1, conductivity: 1, density: 2000, specificHeat: 1000 };
    const layers = Array.from({ length: 10 }, () => ({ ...deep, thickness: 0.1 }));
    const slab = run(layers, 1, [1e6, 0], 60, 120);
    // COMPUTED Carslaw and Jaeger, half-space at 0 with its face at 1: erfc(x / (2 sqrt(a t))), a = 5e-7 m²/s,
    // t = 7200 s, sqrt(a t) = 0.06 m: erfc(0.5) = 0.4795 at 0.06 m, erfc(1) = 0.1573 at 0.12 m.
    // Nodes stand 20 mm apart, a third of sqrt(a t): second order leaves about 0.01.
    expect(Math.abs(slab.temperature[3] - 0.4795)).toBeLessThan(0.01);
    expect(Math.abs(slab.temperature[6] - 0.1573)).toBeLessThan(0.01);
  });
});
