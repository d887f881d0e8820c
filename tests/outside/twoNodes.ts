/** For comparison only: air and one mass, whose temperature at the start of a night is what the days before left in it. */
import type { JudgedNight } from '../../src/cooling/index.ts';
import { levenbergMarquardt } from '../../src/maths/levenbergMarquardt.ts';
import type { HouseRecord } from '../../src/series/record.ts';

const DAYS_BEFORE = 2 * 144; // cells in which the mass forgets where it began

/** Fitted to `learnt` together; the inside temperature of each night of `later`, foretold from its start [°C]. */
export function twoNodes(
  record: HouseRecord,
  learnt: readonly JudgedNight[],
  later: readonly JudgedNight[],
): Float64Array[] {
  const windows = learnt.flatMap(({ window }) => window ?? []);
  const measured = windows.flatMap(({ first, last }) =>
    Array.from(record.insideTemperature.subarray(first, last + 1)),
  );
  const fit = levenbergMarquardt({
    start: [15, 5, 15].map((hours) => Math.log(hours * 3600)),
    count: measured.length,
    residuals: (logs, out) => {
      const foretold = windows.flatMap((window) => Array.from(foretell(record, logs, window)));
      measured.forEach((it, i) => {
        out[i] = foretold[i] - it;
      });
    },
  });
  if (fit.kind === 'not fitted') throw new Error(fit.reason);
  return later.flatMap(({ window }) => (window === null ? [] : [foretell(record, fit.parameters, window)]));
}

/** Time constants: air to outdoors, air to mass, mass to air. */
function foretell(
  { grid, insideTemperature: inside, outsideTemperature: outside }: HouseRecord,
  logs: Float64Array,
  { first, last }: { first: number; last: number },
): Float64Array {
  const [airOut, airMass, massAir] = Array.from(logs, (it) => grid.step / Math.exp(it));
  const from = Math.max(0, first - DAYS_BEFORE);
  let mass = (inside[first] + outside[first]) / 2;
  const step = (air: number) => mass + massAir * (air - mass);
  for (let i = from; i < first; i++) if (!Number.isNaN(inside[i])) mass = step(inside[i]);
  const curve = new Float64Array(last - first + 1);
  let air = inside[first];
  for (let i = first; i <= last; i++) {
    curve[i - first] = air;
    const next = air + airOut * (outside[i] - air) + airMass * (mass - air);
    mass = step(air);
    air = next;
  }
  return curve;
}
