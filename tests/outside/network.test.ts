/**
 * The conduction network against published formulas: ISO 13786:2017 for a single element, the eigenvalues of a house
 * of two nodes. No figure is published; all are COMPUTED, see beside each.
 */
import { describe, expect, test } from 'vitest';
import { argument, modulus } from '../../src/fabric/complex.ts';
import { type BuildUp, periodicResponse } from '../../src/fabric/index.ts';
import { type Chain, chainsOf } from '../../src/heatloss/network/cells.ts';
import { slabOf, slabTransmittance } from '../../src/heatloss/network/slab.ts';
import { networkOf } from '../../src/heatloss/network/stepping.ts';
import { chainResponse } from '../heatloss/network/chainResponse.ts';
import { driveFrom } from '../heatloss/network/chains.ts';
import { dynamicWalls } from './dynamicWalls.ts';

const surfaces = { inside: 0.13, outside: 0.04 };

/** The chain of one square metre of a build-up. */
function chainOf(buildUp: BuildUp): Chain {
  const slab = slabOf(buildUp, surfaces, null);
  const [chain] = chainsOf(
    {
      elements: [
        {
          name: 'Wall',
          area: 1,
          slab,
          beyond: 'outside',
          temperatureFactor: 1,
          solarTransmittance: 0,
          plane: { tilt: Math.PI / 2, azimuth: null },
          facing: 'wall',
          fixed: true,
        },
      ],
      furnitureCapacity: 8e3,
      furnitureArea: 1,
      airCapacity: 1,
      bridges: 0,
      ventilation: 0,
      layering: 'as drawn',
      capacitySd: 0.15,
    },
    { insulation: 1, mass: 1, furniture: 1 },
  );
  return chain;
}

describe.each(dynamicWalls)('the cells of $name', ({ layers, U, Y11, Y12, κ1 }) => {
  const buildUp: BuildUp = { facing: 'across', layers };
  const response = chainResponse(chainOf(buildUp), surfaces.inside);
  const hours = 12 / Math.PI;
  // What cutting into cells may cost: far less than conductivities are known by.
  const CELLS = 0.005;

  test('resist as the layers do', () => {
    const slab = slabOf(buildUp, surfaces, null);
    // half of the last digit of the figure
    expect(Math.abs(slabTransmittance(slab, 1) - U)).toBeLessThan(5e-5);
    const { toInside, conductances, toBeyond } = chainOf(buildUp);
    const resistance = 0.13 + 1 / toInside + conductances.reduce((sum, it) => sum + 1 / it, 1 / toBeyond);
    expect(1 / resistance).toBeCloseTo(slabTransmittance(slab, 1), 12);
  });
  test('take up a daily swing of the room as ISO 13786 says, to 0.5 %', () => {
    expect(Math.abs(modulus(response.inside) / Y11[0] - 1)).toBeLessThan(CELLS);
    expect(Math.abs(argument(response.inside) * hours - Y11[1])).toBeLessThan(0.05);
    expect(Math.abs(response.heatCapacity / 1e3 / κ1 - 1)).toBeLessThan(CELLS);
  });
  test('pass it on as ISO 13786 says, to 0.5 % of what they pass steadily', () => {
    // What comes through is small beside what goes in and what is lost: a part of it that small moves no balance.
    expect(Math.abs(modulus(response.through) - Y12[0])).toBeLessThan(CELLS * U);
    const lag = argument(response.through) * hours;
    expect(Math.abs((lag > 0 ? lag - 24 : lag) - Y12[1])).toBeLessThan(0.1);
  });
  test('agree with what the design is worked out by', () => {
    const { insideAdmittance, insideHeatCapacity } = periodicResponse(buildUp, surfaces);
    expect(Math.abs(modulus(response.inside) / insideAdmittance.modulus - 1)).toBeLessThan(CELLS);
    expect(Math.abs(response.heatCapacity / insideHeatCapacity - 1)).toBeLessThan(CELLS);
  });
});

describe('a house of two nodes', () => {
  // COMPUTED by eigenvalues: air 3 MJ/K, mass 25 MJ/K, 0.002 K/W between them, 0.006 K/W to outside at 5 °C
  const foretold = [
    [0.5, 20.72107],
    [1, 20.47633],
    [2, 20.05487],
    [4, 19.354],
    [8, 18.1567],
    [12, 17.07851],
  ] as const;
  const mass: Chain = {
    area: 1,
    facing: 'wall',
    capacities: Float64Array.of(25e6),
    conductances: new Float64Array(0),
    toInside: 1 / 0.002,
    toBeyond: 1 / 0.006,
  };
  /** Convection so strong that the face is as warm as the air leaves the 0.002 K/W alone. */
  const NO_FILM = 1e9;
  const five = () => 5;
  const freeRun = (step: number) => {
    const length = (12 * 3600) / step + 1;
    const drive = driveFrom(1, { length, inside: () => 21, outside: five, beyond: five });
    const state = { temperatures: Float64Array.of(20), differences: Float64Array.of(0), lacking: 0 };
    return networkOf([mass], 3e6, NO_FILM, step).free(state, drive, 0, length - 1, 21);
  };

  test('cools as its eigenvalues say, to 1e-4 K in steps of half a minute', () => {
    const curve = freeRun(30);
    for (const [hours, temperature] of foretold)
      expect(Math.abs(curve[hours * 120] - temperature)).toBeLessThan(1e-4);
  });
  test('cools as its eigenvalues say, to 0.002 K in the steps of ten minutes', () => {
    // the trapezoidal rule: (h/τ)²/12 of the 0.4 K that go with the fast time constant of 1.48 h
    const curve = freeRun(600);
    for (const [hours, temperature] of foretold)
      expect(Math.abs(curve[hours * 6] - temperature)).toBeLessThan(2e-3);
  });
  test('loses 125 W/K when nothing changes', () => {
    const length = 6 * 24 * 60 + 1;
    const drive = driveFrom(1, { length, inside: () => 21, outside: five, beyond: five });
    const network = networkOf([mass], 3e6, NO_FILM, 600);
    const lacking = new Float64Array(length - 1);
    network.driven(network.steady(21, [5]), drive, 0, length - 1, lacking);
    // COMPUTED: 16 K/(0.002 + 0.006) K/W; 60 days are 30 of the mass's time constants of 10.4 h over and over
    expect(Math.abs(lacking[length - 2] - 2000)).toBeLessThan(1e-3);
  });
});
