import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Chain } from '../../../src/heatloss/network/cells.ts';
import { copyOf, type Drive, networkOf, type State } from '../../../src/heatloss/network/stepping.ts';
import { type Acting, anyShell, driveFrom, rowOf, smallHouse, swinging } from './chains.ts';
import { freeCourse, steadyLoss } from './starNetwork.ts';

const STEP = 600;
const AIR = 300e3;

const stateAt = (chains: readonly Chain[], temperature: number): State => ({
  temperatures: new Float64Array(chains.reduce((sum, it) => sum + it.capacities.length, 0)).fill(temperature),
  differences: new Float64Array(chains.length),
  lacking: 0,
});

/** Steps the air along the drive from its start; the heat lacking in each interval [W] and the state at the end. */
function drivenAlong(chains: readonly Chain[], drive: Drive, airCapacity = AIR, step = STEP) {
  const network = networkOf(chains, airCapacity, 1, step);
  const state = network.steady(
    drive.inside[0],
    drive.beyond.map((it) => it[0]),
  );
  const last = drive.inside.length - 1;
  const lacking = new Float64Array(last);
  network.driven(state, drive, 0, last, lacking);
  return { network, state, lacking };
}

const mean = (values: Float64Array) => values.reduce((sum, it) => sum + it, 0) / values.length;

describe('temperatures that have held for twelve weeks', () => {
  const steadyActing = (more: Partial<Acting> = {}): Acting => ({
    length: 12 * 7 * 144 + 1,
    inside: () => 20,
    outside: () => 2,
    beyond: (_, c) => (c === 2 ? 9 : 2),
    direct: 30,
    ...more,
  });
  const at = { inside: 20, outside: 2, beyond: smallHouse.map((_, c) => (c === 2 ? 9 : 2)), direct: 30 };

  test.each([
    { name: 'no heat inside', radiant: 0, convective: 0 },
    { name: 'heat that is known of', radiant: 400, convective: 250 },
    { name: 'more heat known of than is lost', radiant: 2500, convective: 900 },
  ])(
    'with $name, the air lacks what a dense solution of all temperatures says',
    ({ radiant, convective }) => {
      const drive = driveFrom(smallHouse.length, steadyActing({ radiant, convective }));
      const { lacking } = drivenAlong(smallHouse, drive);
      const expected = steadyLoss(smallHouse, { ...at, radiant, convective });
      // 1e-6 of some 2 kW: what twelve weeks and the halved rounds leave
      expect(Math.abs(lacking[lacking.length - 1] - expected)).toBeLessThan(2e-3);
    },
  );

  test('lose a tenth less than U·A times the difference at most, and never more', () => {
    const drive = driveFrom(smallHouse.length, steadyActing());
    const { lacking } = drivenAlong(smallHouse, drive);
    // COMPUTED: 1/U = 0.13 + 1/toInside + conductances in series + 1/toBeyond
    const byTransmittance = smallHouse.reduce((sum, { area, toInside, conductances, toBeyond }, c) => {
      if (toBeyond === 0) return sum;
      const resistance = 0.13 + 1 / toInside + conductances.reduce((all, it) => all + 1 / it, 1 / toBeyond);
      return sum + (area * (20 - at.beyond[c])) / resistance;
    }, 30 * 18);
    // Heated air warms all faces by natural convection only: less than the 7.7 W/(m²K) of ISO 6946 with warm walls all
    // round.
    expect(lacking[lacking.length - 1] / byTransmittance).toBeLessThan(1);
    expect(lacking[lacking.length - 1] / byTransmittance).toBeGreaterThan(0.9);
  });

  test('radiant heat that goes with what is lacking takes its share of it', () => {
    const drive = driveFrom(smallHouse.length, steadyActing({ unknownRadiance: 0.25 }));
    const { lacking } = drivenAlong(smallHouse, drive);
    const held = lacking[lacking.length - 1];
    const expected = steadyLoss(smallHouse, { ...at, radiant: 0.25 * held, convective: 0 });
    expect(Math.abs(held - expected)).toBeLessThan(2e-3);
  });
});

/** Heat stored in the cells [J], above 0 °C. */
const storedIn = (chains: readonly Chain[], { temperatures }: State) => {
  let at = 0;
  return chains.reduce(
    (sum, { area, capacities }) =>
      sum + area * capacities.reduce((all, capacity) => all + capacity * temperatures[at++], 0),
    0,
  );
};

/** What passes outward through the shell over one step [J], by the mean of both states. */
function outward(chains: readonly Chain[], before: State, after: State, drive: Drive, k: number): number {
  let last = -1;
  return chains.reduce((sum, { area, capacities, toBeyond }, c) => {
    last += capacities.length;
    if (toBeyond === 0) return sum;
    const cell = (before.temperatures[last] + after.temperatures[last]) / 2;
    return sum + STEP * area * toBeyond * (cell - (drive.beyond[c][k] + drive.beyond[c][k + 1]) / 2);
  }, 0);
}

describe('no heat is lost or made', () => {
  // rounding: 1e-9 of the heat that is stored, some 1e9 J, in each of a few hundred steps
  const ROUNDING = 1;

  test.each([0, 0.4])(
    'while the air follows the loggers, with %f of the lacking heat radiant beside it',
    (unknownRadiance) => {
      const drive = driveFrom(smallHouse.length, swinging(STEP, 72, { unknownRadiance }));
      const network = networkOf(smallHouse, AIR, 1, STEP);
      const state = stateAt(smallHouse, 15);
      const lacking = new Float64Array(drive.inside.length - 1);
      const stored = storedIn(smallHouse, state);
      let given = 0;
      let lost = 0;
      for (let k = 0; k < lacking.length; k++) {
        const before = copyOf(state);
        network.driven(state, drive, k, k + 1, lacking);
        const followed = Math.max(0, before.lacking) * unknownRadiance;
        given += STEP * (lacking[k] + followed + drive.radiant[k] + drive.convective[k]);
        lost += outward(smallHouse, before, state, drive, k);
        const air = (drive.inside[k] + drive.inside[k + 1]) / 2;
        lost += STEP * drive.direct[k] * (air - (drive.outside[k] + drive.outside[k + 1]) / 2);
      }
      const warmedAir = AIR * (drive.inside[lacking.length] - drive.inside[0]);
      const warmedCells = storedIn(smallHouse, state) - stored;
      expect(Math.abs(given - lost - warmedAir - warmedCells)).toBeLessThan(ROUNDING);
      // the check would notice: far more than that passed
      expect(lost).toBeGreaterThan(1e7);
    },
  );

  test('while the air is left free', () => {
    const drive = driveFrom(smallHouse.length, swinging(STEP, 72));
    const network = networkOf(smallHouse, AIR, 1, STEP);
    const state = stateAt(smallHouse, 17);
    const stored = storedIn(smallHouse, state);
    const last = drive.inside.length - 1;
    let air = 21;
    let given = 0;
    let lost = 0;
    for (let k = 0; k < last; k++) {
      const before = copyOf(state);
      const [from, to] = network.free(state, drive, k, k + 1, air);
      air = to;
      given += STEP * (drive.radiant[k] + drive.convective[k]);
      lost += outward(smallHouse, before, state, drive, k);
      lost += STEP * drive.direct[k] * ((from + to) / 2 - (drive.outside[k] + drive.outside[k + 1]) / 2);
    }
    const warmed = AIR * (air - 21) + storedIn(smallHouse, state) - stored;
    expect(Math.abs(given - lost - warmed)).toBeLessThan(ROUNDING);
    expect(lost).toBeGreaterThan(1e7);
  });

  test('a house as warm as all around it stays so and lacks nothing', () => {
    fc.assert(
      fc.property(anyShell, fc.double({ min: -20, max: 35, noNaN: true }), (chains, temperature) => {
        const same = () => temperature;
        const drive = driveFrom(chains.length, {
          length: 100,
          inside: same,
          outside: same,
          beyond: same,
          direct: 20,
        });
        const { network, state, lacking } = drivenAlong(chains, drive);
        // rounding of the air's heat, some 1e5 W/K times 1e-14 of 35 °C
        for (const it of lacking) expect(Math.abs(it)).toBeLessThan(1e-6);
        for (const it of network.free(state, drive, 0, 99, temperature))
          expect(Math.abs(it - temperature)).toBeLessThan(1e-9);
      }),
      { numRuns: 50 },
    );
  });
});

describe('free and driven are one network', () => {
  test('air that follows its own free course lacks nothing', () => {
    fc.assert(
      fc.property(anyShell, fc.double({ min: 15, max: 25, noNaN: true }), (chains, start) => {
        const acting = swinging(STEP, 12);
        const drive = driveFrom(chains.length, acting);
        const network = networkOf(chains, AIR, 1, STEP);
        const curve = network.free(stateAt(chains, 18), drive, 0, acting.length - 1, start);
        const lacking = new Float64Array(acting.length - 1);
        network.driven(stateAt(chains, 18), { ...drive, inside: curve }, 0, acting.length - 1, lacking);
        // rounding: the air alone carries 500 W/K times some 20 °C
        for (const it of lacking) expect(Math.abs(it)).toBeLessThan(1e-6);
      }),
      { numRuns: 50 },
    );
  });

  test('a free course in two halves is the course in one', () => {
    const drive = driveFrom(smallHouse.length, swinging(STEP, 12));
    const network = networkOf(smallHouse, AIR, 1, STEP);
    const whole = network.free(stateAt(smallHouse, 18), drive, 0, 72, 20);
    const state = stateAt(smallHouse, 18);
    const first = network.free(state, drive, 0, 30, 20);
    const second = network.free(state, drive, 30, 72, first[30]);
    expect([...first, ...second.subarray(1)]).toEqual([...whole]);
  });
});

describe('half the step', () => {
  const run = (step: number) => {
    const acting = swinging(step, 48 + 8);
    const drive = driveFrom(smallHouse.length, acting);
    const network = networkOf(smallHouse, AIR, 1, step);
    const state = network.steady(
      drive.inside[0],
      drive.beyond.map((it) => it[0]),
    );
    const settled = (48 * 3600) / step;
    const lacking = new Float64Array(acting.length - 1);
    network.driven(state, drive, 0, settled, lacking);
    const end = (8 * 3600) / step;
    const night = network.free(copyOf(state), drive, settled, settled + end, drive.inside[settled]);
    network.driven(state, drive, settled, settled + end, lacking);
    return {
      afterEightHours: night[end],
      afterOneHour: night[3600 / step],
      lacking: mean(lacking.subarray(settled)),
    };
  };
  const ten = run(600);
  const five = run(300);

  test('changes a free course after one and after eight hours by less than 0.02 K', () => {
    expect(Math.abs(ten.afterEightHours - five.afterEightHours)).toBeLessThan(0.02);
    expect(Math.abs(ten.afterOneHour - five.afterOneHour)).toBeLessThan(0.02);
  });
  test('changes the mean of the lacking heat over eight hours by less than 0.5 %', () => {
    expect(Math.abs(ten.lacking / five.lacking - 1)).toBeLessThan(0.005);
  });
});

describe('an integration in steps of a second by Runge and Kutta', () => {
  test.each([
    { name: 'as warm as its air', mass: 20 },
    { name: 'cooler than its air', mass: 17 },
    { name: 'warmer than its air', mass: 22 },
  ])('gives the same course of a house $name, to 0.02 K from the second hour on', ({ mass }) => {
    const acting = swinging(STEP, 8);
    const drive = driveFrom(smallHouse.length, acting);
    const state = stateAt(smallHouse, mass);
    const curve = networkOf(smallHouse, AIR, 1, STEP).free(copyOf(state), drive, 0, 48, 20);
    const fine = freeCourse(
      {
        chains: smallHouse,
        airCapacity: AIR,
        radiant: 150,
        convective: 200,
        direct: 25,
        outside: (time) => acting.outside(time / STEP),
        beyond: (time, c) => acting.beyond(time / STEP, c),
        air: 20,
        temperatures: state.temperatures,
        differences: state.differences,
      },
      3600,
      8 * 3600,
      1,
    );
    // the first hour apart: steps of 600 s cut corners of air that falls onto cooler walls within minutes
    fine.forEach((it, hour) => {
      const tolerance = hour === 1 ? 0.1 : 0.02;
      expect(Math.abs(curve[6 * hour] - it), `after ${hour} h`).toBeLessThan(hour === 0 ? 1e-12 : tolerance);
    });
  });
});

describe('the network follows the rules of all linear conduction', () => {
  const lackingOf = (chains: readonly Chain[], acting: Acting, airCapacity = AIR) => {
    const drive = driveFrom(chains.length, acting);
    return drivenAlong(chains, drive, airCapacity).lacking;
  };
  const same = (a: Float64Array, b: Float64Array, factor = 1) => {
    const size = Math.max(100, ...b.map(Math.abs));
    // rounding, over steps that carry some kW
    a.forEach((it, k) => {
      expect(Math.abs(it - factor * b[k])).toBeLessThan(1e-8 * size * factor);
    });
  };
  const all = (check: (chains: readonly Chain[]) => void) =>
    fc.assert(fc.property(anyShell, check), { numRuns: 40 });

  test('everything warmer by the same lacks the same', () => {
    const acting = swinging(STEP, 24);
    all((chains) =>
      same(
        lackingOf(chains, {
          ...acting,
          inside: (k) => acting.inside(k) + 7.3,
          outside: (k) => acting.outside(k) + 7.3,
          beyond: (k, c) => acting.beyond(k, c) + 7.3,
        }),
        lackingOf(chains, acting),
      ),
    );
  });

  test('a house of 2.5 times the areas, air and heat lacks 2.5 times as much', () => {
    const acting = swinging(STEP, 24);
    const larger = swinging(STEP, 24, { radiant: 2.5 * 150, convective: 2.5 * 200, direct: 2.5 * 25 });
    all((chains) =>
      same(
        lackingOf(
          chains.map((it) => ({ ...it, area: 2.5 * it.area })),
          larger,
          2.5 * AIR,
        ),
        lackingOf(chains, acting),
        2.5,
      ),
    );
  });

  test('the order of the elements does not matter', () => {
    const acting = swinging(STEP, 24);
    all((chains) => {
      const turned: Acting = {
        ...acting,
        beyond: (k, c) => acting.beyond(k, chains.length - 1 - c),
      };
      same(lackingOf(chains.toReversed(), turned), lackingOf(chains, acting));
    });
  });

  test('an element told as two halves is the same', () => {
    const acting = swinging(STEP, 24);
    all((chains) => {
      const halves = chains.flatMap((it) => [
        { ...it, area: it.area / 2 },
        { ...it, area: it.area / 2 },
      ]);
      const twice: Acting = { ...acting, beyond: (k, c) => acting.beyond(k, c >> 1) };
      same(lackingOf(halves, twice), lackingOf(chains, acting));
    });
  });

  test('an element without area is as if it were not there', () => {
    const acting = swinging(STEP, 24);
    all((chains) => {
      const none = { ...rowOf(1, 'ceiling', 3, 60e3, 4, 0.8), area: 0 };
      same(lackingOf([...chains, none], acting), lackingOf(chains, acting));
    });
  });
});
