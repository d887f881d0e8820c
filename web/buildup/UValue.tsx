/** An element's U-value with its doubt, on one rule with the limiting value of an example table. */
import { useState } from 'preact/hooks';
import {
  besideLimit,
  type ElementDesign,
  exampleLimits,
  type LimitKind,
  limitKindOf,
} from '../../src/fabric/index.ts';
import { figures } from '../../src/words/index.ts';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { tied } from '../parts/tied.ts';
import { Choice } from './Choice.tsx';

/** Standard deviations on either side of 95 % of a normal distribution. */
const COVERAGE = 1.96;

const kinds: Readonly<Record<string, string>> = Object.fromEntries(
  exampleLimits.limits.map(({ kind }) => [kind, kind]),
);

export function UValue({ design }: { design: ElementDesign }) {
  const { transmittance, spread, heatLoss } = design;
  const [chosen, setChosen] = useState<LimitKind | null>(null);
  const kind = chosen ?? limitKindOf(design);
  if (transmittance === null) return <p class="buildup-figure">No U-value can be given for these layers:</p>;
  const beside = kind === null ? null : besideLimit(transmittance, kind, exampleLimits);
  const sd = spread === null ? 0 : Math.hypot(spread.conductivity, spread.timber, spread.other);
  const marks: RuleMark[] = [
    {
      label: 'Now',
      value: transmittance,
      low: Math.max(0, transmittance - COVERAGE * sd),
      high: transmittance + COVERAGE * sd,
      kind: 'other',
    },
    ...(beside === null
      ? []
      : [{ label: `Example, ${kind}`, value: beside.limit.transmittance, kind: 'drawn' } as const]),
  ];
  return (
    <>
      <p class="buildup-figure" aria-live="polite">
        U-value <strong class="figure">{tied(figures.transmittance(transmittance))}</strong> (
        <span class="figure">{figures.decimal(transmittance, 4)}</span>)
        {heatLoss === null ? '' : tied(`, so it loses ${figures.heatLoss(heatLoss)}.`)}
      </p>
      <Rule title={`U-value of ${design.name}`} unit="W/(m²K)" marks={marks} />
      <p class="small lesser">
        {exampleLimits.name}, {figures.dayOfYear(exampleLimits.dated)}. {exampleLimits.note}
      </p>
      <details class="screen-only">
        <summary>Set it beside another example</summary>
        <div class="buildup-fields screen-only">
          <Choice
            label="Beside the example for a"
            value={kind ?? 'none'}
            options={kind === null ? { none: 'Choose one', ...kinds } : kinds}
            onValue={(wanted) =>
              setChosen(exampleLimits.limits.find((it) => it.kind === wanted)?.kind ?? null)
            }
          />
        </div>
      </details>
    </>
  );
}
