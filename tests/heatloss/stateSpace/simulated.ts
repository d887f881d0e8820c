/** A house that is what the model says: simulated from it, so that the truth is known. */
import type { Inputs } from '../../../src/heatloss/stateSpace/inputs.ts';
import { modelAt, priorsOf, type Scale } from '../../../src/heatloss/stateSpace/thermalModel.ts';
import { discretise } from '../../../src/maths/discretise.ts';
import type { HouseRecord } from '../../../src/series/record.ts';
import { random } from '../../proving/random.ts';

export const scale: Scale = {
  heatLoss: 120,
  heatCapacity: null,
  gains: { mean: 60, sd: 25 },
  readingSd: 0.05,
  aperture: { mean: Math.log(3), sd: 0.4 },
};

/** Parameters of two states drawn from what is believed of them beforehand, so that the truth is one of those houses. */
export function drawn(seed: number): Float64Array {
  const source = random(seed, 'house');
  return Float64Array.from(priorsOf(2, scale), ({ mean, sd }) => mean + 0.6 * sd * source.normal());
}

/** Two states; a heater that comes on when it is colder than 20 °C, at times chosen by chance as well. */
export function simulated(parameters: Float64Array, seed: number, days: number, step: number): Inputs {
  const source = random(seed, 'weather and noise');
  const model = modelAt(2, parameters);
  const { transition, atStart, atEnd, covariance } = discretise(model, step);
  const lower = [Math.sqrt(covariance[0][0]), 0, 0];
  lower[1] = covariance[1][0] / lower[0];
  lower[2] = Math.sqrt(covariance[1][1] - lower[1] ** 2);
  const length = Math.round((days * 86_400) / step);
  const hour = (t: number) => ((t * step) / 3600) % 24;
  const inside = new Float64Array(length);
  const driver = new Float64Array(length);
  const heat = new Float64Array(length);
  const sun = new Float64Array(length);
  let state = [19, 15];
  let front = 0;
  for (let t = 0; t < length; t++) {
    const clear = Math.max(0, Math.cos(((hour(t) - 12) / 8) * Math.PI)) * 250;
    front = 0.99 * front + 0.4 * source.normal();
    driver[t] = 3 + front - 3 * Math.cos((2 * Math.PI * hour(t)) / 24);
    sun[t] = clear * (0.3 + 0.2 * Math.sin(t / 60));
    heat[t] = source.uniform() < (inside[Math.max(0, t - 1)] < 20 ? 0.8 : 0.2) ? 4000 : 0;
    if (t > 0) {
      const at = (k: number) => [driver[k], heat[k] + model.gains, sun[k]];
      const [from, to] = [at(t - 1), at(t)];
      const [one, two] = [source.normal(), source.normal()];
      const shocks = [lower[0] * one, lower[1] * one + lower[2] * two];
      state = transition.map((row, i) =>
        from.reduce(
          (sum, it, k) => sum + atStart[k][i] * it + atEnd[k][i] * to[k],
          row[0] * state[0] + row[1] * state[1] + shocks[i],
        ),
      );
    }
    inside[t] = state[0] + Math.sqrt(model.readingVariance) * source.normal();
  }
  return { step, inside, driver, heat, sun, sunLogged: true, unknown: new Uint8Array(length) };
}

/** The same as a record of ten-minute cells, all heat metered and no irradiance that could be told from none. */
export function recordOf({ inside, driver, heat, step }: Inputs): HouseRecord {
  return {
    grid: { start: 1_767_225_600, step, length: inside.length },
    rooms: [],
    insideTemperature: inside,
    outsideTemperature: driver,
    differenceSd: 0.2,
    insideResolution: 0.1,
    windSpeed: null,
    irradiance: null,
    heatingPower: heat,
    heatingPowerSd: 0.02,
  };
}
