/** Which houses can stand side by side. */
import type { HouseSummary } from '../../server/api/shapes.ts';
import type { Estimate, Verdict } from '../../src/assessment.ts';

export interface Compared {
  readonly id: string;
  /** Its name; houses of one name are numbered. */
  readonly label: string;
  /** Measured over drawn. */
  readonly ratio: Estimate;
  readonly verdict: Verdict;
}

/** In the order of the list, without what is invented; nor is a ratio a verdict where a stage was not finished. */
export function comparedOf(houses: readonly HouseSummary[]): Compared[] {
  const met = new Map<string, number>();
  return houses.flatMap(({ id, name, invented, answer }) => {
    if (invented || answer === null || answer.ratio === null || answer.verdict === null) return [];
    const times = (met.get(name) ?? 0) + 1;
    met.set(name, times);
    return [
      { id, label: times === 1 ? name : `${name} (${times})`, ratio: answer.ratio, verdict: answer.verdict },
    ];
  });
}
