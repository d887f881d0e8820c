/** What the house, had it been built as drawn, would have done in its nights: the network as believed before any fit. */
import type { StageNights } from '../../cooling/index.ts';
import type { Design } from '../../fabric/index.ts';
import type { House } from '../../house.ts';
import { logSdOf, NORMAL_95 } from '../../maths/logInterval.ts';
import { indexAt } from '../../series/grid.ts';
import type { HouseRecord } from '../../series/record.ts';
import { airFlowOf } from '../airFlow.ts';
import { dryingSd, vapourExcess } from '../drying.ts';
import { actInStage } from './drive.ts';
import { hoursOf } from './hours.ts';
import { leakageOf } from './leakage.ts';
import { modelOf } from './model.ts';
import { placeOf, priorsOf } from './parameters.ts';
import { heatLossAt, type NetworkProblem } from './problem.ts';
import { copyOf, type Drive, type Network, type State } from './stepping.ts';
import { surroundingsOf } from './surroundings.ts';
import { stateAtStart, wayAt } from './way.ts';

export interface ToForetell {
  readonly house: House;
  readonly design: Design;
  readonly record: HouseRecord;
  /** In the order of time, not overlapping. */
  readonly stages: readonly StageNights[];
  /** What the house as drawn loses with its vents as they were [W/K]. */
  readonly heatLossAsDrawn: number;
}

/** A night's window, both ends included, from the evening's measured temperature on. */
export interface ForetoldNight {
  /** The evening's date. */
  readonly date: string;
  /** Cells of the grid. */
  readonly first: number;
  readonly last: number;
  /** [°C], one for each cell of the window, with the 95 % interval. */
  readonly temperature: Float64Array;
  readonly coolest: Float64Array;
  readonly warmest: Float64Array;
}

/** Of a long record the last so many nights: each takes the network through its days. */
const MOST = 42;
/** Before the first of them the mass is given so long to come to know the weather [s]. */
const LEAD = 4 * 86_400;
/**
 * What one room with one film and one leak leaves untold of a night, one standard deviation, of its drop [–]: more
 * where the layers are made up. Set on the tuning seeds until 95 % of nights held, with the drawing put right.
 */
const BEYOND = { 'as drawn': 0.1, 'made up': 0.22 } as const;
/** A single reading's scatter, beside its resolution [K]. PRACTICE. */
const READING_SD = 0.05;

/** The last used nights; none where the network cannot be built of the design. */
export function foretoldNights(input: ToForetell): ForetoldNight[] {
  const nights = input.stages
    .flatMap(({ nights: all }, stage) =>
      all.flatMap(({ used, window, night }) =>
        used && window !== null ? [{ ...window, stage, date: night.date }] : [],
      ),
    )
    .slice(-MOST);
  const problem = nights.length === 0 ? null : problemAsDrawn(input, nights[0].first);
  return problem === null ? [] : foretell(problem, input, nights);
}

interface Window {
  readonly date: string;
  readonly stage: number;
  readonly first: number;
  readonly last: number;
}

function problemAsDrawn(
  { house, design, record, stages, heatLossAsDrawn }: ToForetell,
  firstCell: number,
): NetworkProblem | null {
  const { grid } = record;
  const model = modelOf(house, design);
  if (model === null) return null;
  const surroundings = surroundingsOf(house, record, model);
  const constantGains = house.constantGainsW ?? 0;
  const drying = dryingSd(
    house,
    stages.map((stage) => vapourExcess(record, stage, airFlowOf(house, design))),
  );
  const begin = Math.max(0, firstCell - Math.round(LEAD / grid.step));
  return {
    grid,
    surroundings,
    leakage: leakageOf(surroundings),
    stages: stages.map(({ from, missing }, s) => ({
      model: modelOf(house, design, missing) ?? model,
      from: s === 0 ? begin : Math.min(grid.length - 1, Math.max(begin, indexAt(grid, from))),
    })),
    to: grid.length - 1,
    spans: [],
    constantGains,
    metered: hoursOf(record, stages, heatLossAsDrawn).metered,
    priors: priorsOf(model, surroundings, record, constantGains, stages.length, drying),
  };
}

/** Every doubt is moved by itself, one standard deviation either way; what each does adds up in squares. */
function foretell(problem: NetworkProblem, input: ToForetell, windows: readonly Window[]): ForetoldNight[] {
  const believed = Float64Array.from(problem.priors, ({ mean }) => mean);
  const curves = freeCurves(problem, believed, windows);
  const variances = curves.map((curve) => new Float64Array(curve.length));
  doubtsOf(problem, input, believed).forEach((sd, k) => {
    if (sd === 0) return;
    const moved = (by: number) => freeCurves(problem, believed.with(k, believed[k] + by), windows);
    const [up, down] = [moved(sd), moved(-sd)];
    variances.forEach((variance, n) => {
      for (let i = 0; i < variance.length; i++) variance[i] += ((up[n][i] - down[n][i]) / 2) ** 2;
    });
  });
  const beyond = BEYOND[problem.stages[0].model.layering];
  const reading = Math.SQRT2 * Math.hypot(READING_SD, input.record.insideResolution / Math.sqrt(12));
  return windows.map(({ date, first, last }, n) => {
    const temperature = curves[n];
    const half = temperature.map((value, i) => {
      const untold = beyond * (temperature[0] - value);
      return NORMAL_95 * Math.hypot(Math.sqrt(variances[n][i]), untold, reading);
    });
    return {
      date,
      first,
      last,
      temperature,
      coolest: temperature.map((value, i) => value - half[i]),
      warmest: temperature.map((value, i) => value + half[i]),
    };
  });
}

/**
 * Standard deviations of the parameters: what is believed of them, but insulation and leakage are as sure as the
 * design is. Zero where a parameter moves no free night.
 */
function doubtsOf(problem: NetworkProblem, { design }: ToForetell, believed: Float64Array): number[] {
  const { fabric, ventilation } = design.ranges;
  const count = problem.stages.length;
  return problem.priors.map(({ sd }, k) => {
    const place = placeOf(k, count);
    if ('shared' in place) return place.shared === 'settling' ? 0 : sd;
    if (place.own === 'leakage') return ventilation.low > 0 ? logSdOf(ventilation) : USUAL_LEAKAGE_SD;
    if (fabric === null || !(fabric.low > 0)) return 0;
    const [as, more] = [believed, believed.with(k, REACH)].map((x) => heatLossAt(problem, x, place.stage));
    const perInsulation = (more - as) / REACH;
    return perInsulation > 0 ? (logSdOf(fabric) * fabric.value) / perInsulation : 0;
  });
}
/** Step of a difference, on the logarithm. */
const REACH = 0.01;
/** Where the design states no leakage; one standard deviation of the logarithm. PRACTICE. */
const USUAL_LEAKAGE_SD = 0.4;

/** The air's temperature in each window [°C], left free from the measured one at its beginning. */
function freeCurves(problem: NetworkProblem, x: Float64Array, windows: readonly Window[]): Float64Array[] {
  const way = wayAt(problem, x);
  const { drive, networks } = way;
  const ignored = new Float64Array(problem.grid.length - 1);
  const state = stateAtStart(problem, way, x);
  let at = problem.stages[0].from;
  let of = 0;
  return windows.map(({ stage, first, last }) => {
    for (; of < stage; of++) {
      const { from } = problem.stages[of + 1];
      networks[of].driven(state, drive, at, Math.max(at, from), ignored);
      at = Math.max(at, from);
    }
    networks[stage].driven(state, drive, at, first, ignored);
    at = first;
    // The last night of a stage may end when by its date the next one stands.
    actInStage(drive, problem, stage, x, { from: first, to: last });
    return freeFrom(inEvening(state, networks[stage], drive, first), networks[stage], drive, first, last);
  });
}

const freeFrom = (state: State, network: Network, drive: Drive, first: number, last: number): Float64Array =>
  network.free(state, drive, first, last, drive.inside[first]);

/**
 * The mass as the drawn house would have it when its air is as warm as measured and nothing heats it: a house that
 * loses more than drawn has its air further below its mass, which the drawn one would make up for at once.
 */
function inEvening(state: State, network: Network, drive: Drive, first: number): State {
  const begun = copyOf(state);
  const tried = freeFrom(copyOf(state), network, drive, first, first + SETTLED);
  let off = 0;
  for (let i = 1; i <= SETTLED; i++) off += (tried[i] - drive.inside[first + i]) / SETTLED;
  const even = drive.beyond.map(() => 0);
  const warmer = network.steady(off, even).temperatures;
  for (let i = 0; i < warmer.length; i++) begun.temperatures[i] -= warmer[i];
  return begun;
}
/** Over so many instants the air comes to its mass. */
const SETTLED = 3;
