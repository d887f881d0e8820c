/** What was typed of a plug meter -> an entry of house.json, or what is wrong with which field. */
import type { HeatEntry } from '../../src/house.ts';
import { meterWords } from '../../src/words/testPlan.ts';
import { numberIn } from '../buildup/numberIn.ts';

/** As it was typed. */
export interface HeatDraft {
  readonly from: string;
  readonly to: string;
  readonly how: 'readings' | 'energy' | 'power';
  readonly before: string;
  readonly after: string;
  readonly energy: string;
  readonly power: string;
  readonly plusMinus: string;
}

export const emptyDraft: HeatDraft = {
  from: '',
  to: '',
  how: 'readings',
  before: '',
  after: '',
  energy: '',
  power: '',
  plusMinus: '',
};

export type DraftProblems = Readonly<Partial<Record<keyof HeatDraft, string>>>;

export function readHeat(
  draft: HeatDraft,
): { readonly entry: HeatEntry } | { readonly problems: DraftProblems } {
  const problems = problemsOf(draft);
  if (Object.keys(problems).length > 0) return { problems };
  const percent = numberIn(draft.plusMinus);
  return {
    entry: {
      from: draft.from,
      to: draft.to,
      ...amountOf(draft),
      ...(typeof percent === 'number' ? { plusMinusPercent: percent } : {}),
    },
  };
}

function problemsOf(draft: HeatDraft): DraftProblems {
  const { needTime, needLater, needNumber, needMore, needPercent } = meterWords;
  const wanted = ({ readings: ['before', 'after'], energy: ['energy'], power: ['power'] } as const)[
    draft.how
  ];
  const amounts = wanted.filter((key) => figure(draft[key]) === null);
  const percent = numberIn(draft.plusMinus);
  const [before, after] = [figure(draft.before), figure(draft.after)];
  return {
    ...(draft.from === '' ? { from: needTime } : {}),
    ...(draft.to === '' ? { to: needTime } : draft.from >= draft.to ? { to: needLater } : {}),
    ...Object.fromEntries(amounts.map((key) => [key, needNumber])),
    ...(draft.how === 'readings' && before !== null && after !== null && after < before
      ? { after: needMore }
      : {}),
    ...(percent === null || (percent !== undefined && (percent < 0 || percent > 100))
      ? { plusMinus: needPercent }
      : {}),
  };
}

function amountOf({ how, before, after, energy, power }: HeatDraft): Pick<HeatEntry, 'energyKWh' | 'powerW'> {
  if (how === 'power') return { powerW: figure(power) ?? 0 };
  const energyKWh = how === 'energy' ? (figure(energy) ?? 0) : (figure(after) ?? 0) - (figure(before) ?? 0);
  // Two counts of a meter differ by no more digits than it shows.
  return { energyKWh: Number(energyKWh.toFixed(6)) };
}

/** Null for what is no figure from 0 up. */
const figure = (text: string): number | null => {
  const value = numberIn(text);
  return typeof value === 'number' && value >= 0 ? value : null;
};
