/**
 * The lacking heat once one parameter alone is moved: what it leaves as it was is taken from the way that was gone
 * before. A search asks this for every parameter in turn, and most of its time goes here.
 */
import { actInStage } from './drive.ts';
import { type Place, placeOf, type SharedKey } from './parameters.ts';
import type { NetworkProblem } from './problem.ts';
import { copyOf, type State } from './stepping.ts';
import { legsOf, networkAt, stateAtStart, type Way, wayAt } from './way.ts';

/** Those that are built into the networks; all others act on them from outside. */
const BUILT_IN: readonly SharedKey[] = ['mass', 'furniture', 'convection'];
/** Those that change how warm it is outside and beyond. */
const WEATHER: readonly SharedKey[] = ['sun', 'sky', 'ground', 'neighbour', 'loggers'];
/** The way at parameters, and at the same with the one at place `k` moved. What it returns holds until it is asked again. */
export function lackingNear(
  problem: NetworkProblem,
  at: Float64Array,
): (k: number, moved: Float64Array) => Float64Array {
  const legs = legsOf(problem);
  const way = wayAt(problem, at);
  const known = new Float64Array(problem.grid.length - 1);
  const state = stateAtStart(problem, way, at);
  const before = legs.map(({ stage, from, to }) => {
    const begun = copyOf(state);
    way.networks[stage].driven(state, way.drive, from, to, known);
    return begun;
  });
  const lacking = new Float64Array(known.length);

  /** From a leg on; from leg `alike` on all is as it was, and once the state is as well, so is the rest. */
  const go = (along: Way, begun: State, first: number, alike: number) => {
    lacking.set(known.subarray(0, legs[first]?.from ?? 0));
    for (let l = first; l < legs.length; l++) {
      const { stage, from, to } = legs[l];
      if (l >= alike && areSame(begun, before[l])) {
        lacking.set(known.subarray(from), from);
        break;
      }
      along.networks[stage].driven(begun, along.drive, from, to, lacking);
    }
    return lacking;
  };

  return (k, moved) => {
    const place = placeOf(k, problem.stages.length);
    if (!acts(problem, place)) return known;
    if ('shared' in place) {
      if (place.shared === 'start') return go(way, stateAtStart(problem, way, moved), 0, 0);
      const along = wayAt(problem, moved, {
        ...(!BUILT_IN.includes(place.shared) && { networks: way.networks }),
        ...(!WEATHER.includes(place.shared) && { beyond: way.drive.beyond }),
      });
      return go(along, stateAtStart(problem, along, moved), 0, legs.length);
    }
    const first = legs.findIndex(({ stage }) => stage === place.stage);
    const next = legs.findIndex(({ stage }) => stage > place.stage);
    const alike = next < 0 ? legs.length : next;
    if (place.stage === 0) {
      const along = wayAt(problem, moved, { beyond: way.drive.beyond });
      return go(along, stateAtStart(problem, along, moved), 0, alike);
    }
    return go(inStage(problem, way, moved, place), copyOf(before[first]), first, alike);
  };
}

/** The way with another insulation or leakage in one stage that is not the first. */
function inStage(
  problem: NetworkProblem,
  way: Way,
  moved: Float64Array,
  { own, stage }: Extract<Place, { own: string }>,
): Way {
  if (own === 'insulation')
    return { ...way, networks: way.networks.with(stage, networkAt(problem, moved, stage)) };
  const drive = { ...way.drive, direct: way.drive.direct.slice() };
  actInStage(drive, problem, stage, moved);
  return { ...way, drive };
}

/** Whether a parameter moves the lacking heat at all in this house. */
function acts({ stages, surroundings }: NetworkProblem, place: Place): boolean {
  if (!('shared' in place)) return true;
  const { elements } = stages[0].model;
  switch (place.shared) {
    case 'settling':
      return false;
    case 'ground':
      return elements.some(({ beyond }) => beyond === 'ground');
    case 'neighbour':
      return elements.some(({ beyond }, e) => beyond === 'adjacent' && surroundings.logged[e] === null);
    default:
      return true;
  }
}

/** To the last bit: the search carries the least rounding on, and a result is not to hang on what was left out. */
function areSame(a: State, b: State): boolean {
  const alike = (x: Float64Array, y: Float64Array) => x.every((it, i) => it === y[i]);
  return (
    a.lacking === b.lacking && alike(a.temperatures, b.temperatures) && alike(a.differences, b.differences)
  );
}
