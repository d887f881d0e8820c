/** Which night belongs to which stage. */
import type { StageEntry } from '../house.ts';
import { type Grid, timeAt } from '../series/grid.ts';
import { instantOf } from '../sky/zone.ts';
import type { JudgedNight } from './judge.ts';

export interface StageNights {
  readonly name: string;
  /** Instants of the bounds [s]. */
  readonly from: number;
  readonly to: number;
  readonly complete: boolean;
  readonly missing: readonly string[];
  readonly nights: readonly JudgedNight[];
  /** Dates of nights whose window crosses a bound: they belong to no stage. */
  readonly crossing: readonly string[];
}

/**
 * Bounds that are dates select nights by their evening, `from` <= date < `to`. A bound with a clock time cuts:
 * a night whose fitted window (or, without one, its sunset to sunrise) crosses it belongs to neither side.
 */
export function nightsOfStage(
  stage: StageEntry,
  nights: readonly JudgedNight[],
  grid: Grid,
  timeZone: string,
): StageNights {
  const from = instantOf(stage.from, timeZone);
  const to = instantOf(stage.to, timeZone);
  const sides = nights.map((judged) => {
    const { date, sunset, sunrise } = judged.night;
    const begins = judged.window === null ? sunset : timeAt(grid, judged.window.first);
    const ends = judged.window === null ? sunrise : timeAt(grid, judged.window.last);
    const afterFrom = isDate(stage.from)
      ? date >= stage.from
        ? 'in'
        : 'out'
      : sideOf(begins, ends, from, 'after');
    const beforeTo = isDate(stage.to) ? (date < stage.to ? 'in' : 'out') : sideOf(begins, ends, to, 'before');
    if (afterFrom === 'out' || beforeTo === 'out') return 'out';
    return afterFrom === 'crosses' || beforeTo === 'crosses' ? 'crosses' : 'in';
  });
  return {
    name: stage.name,
    from,
    to,
    complete: stage.complete ?? true,
    missing: stage.missing ?? [],
    nights: nights.filter((_, i) => sides[i] === 'in'),
    crossing: nights.filter((_, i) => sides[i] === 'crosses').map(({ night }) => night.date),
  };
}

const isDate = (bound: string) => bound.length === 10;

function sideOf(
  begins: number,
  ends: number,
  bound: number,
  wanted: 'after' | 'before',
): 'in' | 'out' | 'crosses' {
  if (begins < bound && ends > bound) return 'crosses';
  const after = begins >= bound;
  return after === (wanted === 'after') ? 'in' : 'out';
}

/** Elements that are missing from one of two stages only: where there are any, the mass may differ as well. */
export function missingFromOne(a: Pick<StageNights, 'missing'>, b: Pick<StageNights, 'missing'>): string[] {
  return [
    ...a.missing.filter((name) => !b.missing.includes(name)),
    ...b.missing.filter((name) => !a.missing.includes(name)),
  ];
}
