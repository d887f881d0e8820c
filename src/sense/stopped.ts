/** A logger that stopped measuring and goes on repeating itself, while its peers go on living. */
import { timeAt } from '../series/grid.ts';
import { known } from '../series/known.ts';
import { resolutionOf } from '../series/steps.ts';
import type { SenseFinding } from './finding.ts';
import { type Laid, type Scene, whereOf } from './scene.ts';
import { localText } from './spans.ts';

/** [s] No thermometer that shows tenths rests for so long in a place where others move by more than this [K]. */
const LONGEST_REST = 24 * 3600;
const PEERS_MOVE = 1.5;
/** A cellar rests for a day again and again; what stopped rests once, so many times as long as ever else. */
const BEYOND_USUAL = 6;
/** [K] A coarser display rests for days honestly. */
const COARSE = 0.4;

export function stopped({ grid, loggers, weatherTemperature, place }: Scene): SenseFinding[] {
  return loggers.flatMap((one): SenseFinding[] => {
    const [rest, next] = rests(one.temperature);
    const length = ({ first, last }: Rest) => (last - first) * grid.step;
    const isLong = length(rest) >= LONGEST_REST && length(rest) >= BEYOND_USUAL * length(next);
    if (!isLong || resolutionOf(one.logger.temperature.value) >= COARSE) return [];
    const peers = peersOf(one, loggers, weatherTemperature);
    const moved = Math.max(0, ...peers.map((peer) => rangeOf(peer.subarray(rest.first, rest.last + 1))));
    if (moved < PEERS_MOVE) return [];
    const [from, to] = [timeAt(grid, rest.first), timeAt(grid, rest.last)];
    const [begins, ends] = [from, to].map((t) => localText(t, place.timeZone));
    return [
      {
        code: 'logger-stopped',
        value: one.temperature[rest.first],
        from,
        to,
        peersMoved: moved,
        where: whereOf(one.logger),
        offers: [{ leaveOut: [{ from: begins, to: ends, why: 'the logger had stopped' }] }],
      },
    ];
  });
}

/** Those in a place that moves alike; outdoors the weather too. */
const peersOf = (
  { logger }: Laid,
  loggers: readonly Laid[],
  weather: Float64Array | null,
): Float64Array[] => [
  ...loggers
    .filter((it) => it.logger !== logger && it.logger.place === logger.place)
    .map(({ temperature }) => temperature),
  ...(logger.place === 'outside' && weather !== null ? [weather] : []),
];

interface Rest {
  readonly first: number;
  readonly last: number;
}

/** The longest run of one value and the next longest; a gap ends a run. */
function rests(values: Float64Array): [Rest, Rest] {
  const none = { first: 0, last: 0 };
  let found: [Rest, Rest] = [none, none];
  let first = 0;
  const length = (rest: Rest) => rest.last - rest.first;
  for (let i = 1; i <= values.length; i++) {
    if (i < values.length && Math.abs(values[i] - values[first]) < SAME) continue;
    const rest = { first, last: i - 1 };
    if (length(rest) > length(found[0])) found = [rest, found[0]];
    else if (length(rest) > length(found[1])) found = [found[0], rest];
    first = i;
  }
  return found;
}

/** What the means on the grid may differ by when the readings do not [K]. */
const SAME = 1e-9;

const rangeOf = (values: Float64Array): number => {
  const present = known(values);
  return present.length === 0
    ? 0
    : present.reduce((a, b) => Math.max(a, b)) - present.reduce((a, b) => Math.min(a, b));
};
