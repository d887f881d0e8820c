/** One of the models fitted to the inside temperature. */
import { discretise } from '../../maths/discretise.ts';
import { fisherScoring, type Prior, type ScoringFit } from '../../maths/fisherScoring.ts';
import { kalmanFilter } from '../../maths/kalman.ts';
import { matrixOf } from '../../maths/matrix.ts';
import type { Inputs } from './inputs.ts';
import { modelAt, priorsOf, type Scale, type States, type ThermalModel } from './thermalModel.ts';

export interface StatesFit extends ScoringFit {
  readonly states: States;
  readonly priors: readonly Prior[];
}

/** What unknown heat may do to the inside in an hour [K]: it then follows its readings, and the masses follow it. */
const UNKNOWN = 10;
/** Of a mass before the first reading, about a steady state [K]. */
const START_SD = 3;
const START_INSIDE_SD = 1;

/** @returns null where the priors' means already give no finite likelihood */
export function fitStates(
  inputs: Inputs,
  states: States,
  scale: Scale,
  start?: Float64Array,
): StatesFit | null {
  const priors = priorsOf(states, scale);
  const from = Float64Array.from(priors, ({ mean }) => mean);
  if (start !== undefined) from.set(start);
  const fit = fisherScoring({
    count: countOf(inputs),
    priors,
    start: from,
    innovate: innovator(inputs, states),
  });
  return fit && { ...fit, states, priors };
}

/** The same with the heat loss held at a value of its logarithm. */
export function fitHeld(
  inputs: Inputs,
  { states, priors }: StatesFit,
  logHeatLoss: number,
  start: Float64Array,
) {
  const innovate = innovator(inputs, states);
  const whole = (rest: Float64Array) => Float64Array.of(logHeatLoss, ...rest);
  return fisherScoring({
    count: countOf(inputs),
    priors: priors.slice(1),
    start,
    innovate: (rest, innovations, variances) => innovate(whole(rest), innovations, variances),
  });
}

const countOf = ({ inside }: Inputs) => inside.reduce((sum, it) => sum + (Number.isNaN(it) ? 0 : 1), 0);

function innovator(inputs: Inputs, states: States) {
  const heat = new Float64Array(inputs.heat.length);
  const gaps = inputs.unknown.some((it) => it === 1);
  const first = inputs.inside.find((it) => !Number.isNaN(it)) ?? 0;
  return (parameters: Float64Array, innovations: Float64Array, variances: Float64Array) => {
    const model = modelAt(states, parameters);
    for (let t = 0; t < heat.length; t++) heat[t] = inputs.heat[t] + model.gains;
    const known = discretise(model, inputs.step);
    const steps = gaps
      ? [known, discretise({ ...model, noise: [UNKNOWN ** 2 / 3600, ...model.noise.slice(1)] }, inputs.step)]
      : [known];
    kalmanFilter(
      {
        observations: inputs.inside,
        observationVariance: model.readingVariance,
        inputs: [inputs.driver, heat, inputs.sun],
        steps,
        kind: inputs.unknown,
        start: startOf(model, first, inputs.driver[0]),
      },
      { innovations, variances },
    );
  };
}

function startOf({ drift, shellPosition }: ThermalModel, inside: number, driver: number) {
  const size = drift.length;
  return {
    state: [inside, inside + shellPosition * (driver - inside), inside].slice(0, size),
    covariance: matrixOf(size, (i, j) => (i !== j ? 0 : (i === 0 ? START_INSIDE_SD : START_SD) ** 2)),
  };
}
