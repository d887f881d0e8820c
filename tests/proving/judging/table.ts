/** The judged records as tables to read. */
import { median, quantile, standardDeviation } from 'simple-statistics';
import { type ProvingTier, tiers } from '../records/provingRecord.ts';
import type { JudgedFigure, JudgedRecord } from './judge.ts';
import { wilson } from './wilson.ts';

export const covers = ({ truth, estimate }: JudgedFigure) => estimate.low <= truth && truth <= estimate.high;

/** One line a tier and method: figures given of records, error, coverage with its own interval, half-width. */
export function figuresTable(records: readonly JudgedRecord[], only?: string): string {
  const lines = tiers.flatMap((tier) => {
    const own = records.filter((it) => it.tier === tier);
    const names = new Set(own.flatMap(({ figures }) => figures.map(({ what }) => what)));
    return [...names]
      .filter((what) => only === undefined || what === only)
      .map((what) => figureLine(tier, what, own));
  });
  const head = `${'tier'.padEnd(40)}${'figure'.padEnd(20)}  figs/recs  median |e|    p90  covers (95 % Wilson)  half/truth   ln(value/truth)`;
  return [head, ...lines].join('\n');
}

function figureLine(tier: ProvingTier, what: string, records: readonly JudgedRecord[]): string {
  const figures = records.flatMap((it) => it.figures.filter((figure) => figure.what === what));
  const errors = figures.map(({ truth, estimate }) => Math.abs(estimate.value / truth - 1));
  const logs = figures.map(({ truth, estimate }) => Math.log(Math.max(1e-3, estimate.value / truth)));
  const hits = figures.filter(covers).length;
  const { low, high } = wilson(hits, figures.length);
  const half = figures.map(({ truth, estimate }) => (estimate.high - estimate.low) / 2 / truth);
  return [
    tier.padEnd(40) + what.padEnd(20),
    `${figures.length}/${records.length}`.padStart(9),
    percent(median(errors)).padStart(10),
    percent(quantile(errors, 0.9)).padStart(6),
    `${percent(hits / figures.length)} (${percent(low)} to ${percent(high)})`.padStart(20),
    percent(median(half)).padStart(10),
    `    ${median(logs).toFixed(2)} ± ${figures.length > 1 ? standardDeviation(logs).toFixed(2) : '-'}`,
  ].join('  ');
}

/** The headline by kind of house: where a method fails. */
export function typesTable(records: readonly JudgedRecord[], what = 'headline'): string {
  const types = [...new Set(records.map(({ type }) => type))];
  return tiers
    .filter((tier) => records.some((it) => it.tier === tier))
    .flatMap((tier) => [
      `${tier}: ${what}`,
      ...types.flatMap((type) => {
        const own = records.filter((it) => it.tier === tier && it.type === type);
        const figures = own.flatMap((it) => it.figures.filter((figure) => figure.what === what));
        if (figures.length === 0) return [];
        const errors = figures.map(({ truth, estimate }) => Math.abs(estimate.value / truth - 1));
        const bias = median(figures.map(({ truth, estimate }) => estimate.value / truth));
        const covered = `${figures.filter(covers).length}/${figures.length}`;
        return [
          `  ${type.padEnd(34)} median |e| ${percent(median(errors)).padStart(5)}   median value/truth ${bias.toFixed(2)}   covers ${covered}`,
        ];
      }),
    ])
    .join('\n');
}

/** How often a verdict is wrong, how often there is one, and how often loggers keep the time constant within 10 %. */
export function verdictTable(records: readonly JudgedRecord[]): string {
  const lines = tiers.flatMap((tier) => {
    const own = records.filter((it) => it.tier === tier);
    if (own.length === 0) return [];
    const told = own.filter(({ verdict }) => verdict !== null);
    const meets = told.filter(({ verdict }) => verdict === 'meets');
    const exceeds = told.filter(({ verdict }) => verdict === 'exceeds');
    const wrongMeets = meets.filter(({ ratioToDesign, allowance }) => ratioToDesign > 1 + allowance);
    const wrongExceeds = exceeds.filter(({ ratioToDesign }) => ratioToDesign <= 1);
    const errors = own.flatMap(({ timeConstantErrors }) => timeConstantErrors);
    const near = errors.filter((error) => Math.abs(error) <= 0.1);
    return [
      [
        tier.padEnd(40),
        `${meets.length} meets, ${wrongMeets.length} wrongly`.padEnd(24),
        `${exceeds.length} exceeds, ${wrongExceeds.length} wrongly`.padEnd(26),
        `${told.length - meets.length - exceeds.length} undecided`.padEnd(16),
        errors.length === 0
          ? ''
          : `${percent(near.length / errors.length)} of ${errors.length}, median ${percent(median(errors.map(Math.abs)))}`,
      ].join(''),
    ];
  });
  const head = `${'tier'.padEnd(40)}${'verdicts'.padEnd(66)}time constant within 10 %`;
  return [head, ...lines].join('\n');
}

/** What was drawn of how houses stray from their drawings. */
export function straysLine(records: readonly JudgedRecord[]): string {
  const houses = [...new Map(records.map((it) => [`${it.type} ${it.seed}`, it])).values()];
  const spread = (values: readonly number[]) =>
    `${[0.05, 0.5, 0.95].map((p) => quantile([...values], p).toFixed(2)).join(' / ')}`;
  return [
    `${houses.length} houses; 5 % / middle / 95 % of as built over as drawn:`,
    `fabric ${spread(houses.map(({ strays }) => strays.fabric))};`,
    `leakage ${spread(houses.map(({ strays }) => strays.leakage))};`,
    `whole ${spread(houses.map(({ ratioToDesign }) => ratioToDesign))};`,
    `mass ${spread(houses.map(({ strays }) => strays.mass))}`,
  ].join(' ');
}

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
