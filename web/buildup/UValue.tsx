/** An element's U-value with its doubt, on one rule with the limiting value that it is set beside. */
import { besideLimit, type ElementDesign, limitTableOf } from '../../src/fabric/index.ts';
import { limitKinds } from '../../src/house.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { Choice } from './Choice.tsx';
import { changeElement, elementAt } from './elementEdits.ts';
import type { Editor } from './useEditor.ts';

/** Standard deviations on either side of 95 % of a normal distribution. */
const COVERAGE = 1.96;

const kinds: Readonly<Record<string, string>> = Object.fromEntries(limitKinds.map((it) => [it, it]));

export interface UValueProps {
  readonly editor: Editor;
  readonly element: number;
  readonly design: ElementDesign;
}

export function UValue({ editor, element, design }: UValueProps) {
  const { transmittance, spread, heatLoss, limitKind: kind } = design;
  if (transmittance === null) return <p class="buildup-figure">No U-value can be given for these layers:</p>;
  const table = limitTableOf(editor.house);
  const beside = kind === null ? null : besideLimit(transmittance, kind, table);
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
      : [
          {
            label: editor.house.limits === undefined ? `Example, ${kind}` : `Limit, ${kind}`,
            value: beside.limit.transmittance,
            kind: 'drawn',
          } as const,
        ]),
  ];
  const stated = elementAt(editor.house, element).limitKind;
  const proposed =
    kind === null ? 'Choose one' : stated === undefined ? `As it looks: ${kind}` : 'As it looks';
  return (
    <>
      <p class="buildup-figure" aria-live="polite">
        U-value <strong class="figure">{tied(figures.transmittance(transmittance))}</strong> (
        <span class="figure">{figures.decimal(transmittance, 4)}</span>)
        {heatLoss === null ? '' : tied(`, so it loses ${figures.heatLoss(heatLoss)}.`)}
      </p>
      <Rule title={`U-value of ${design.name}`} unit="W/(m²K)" marks={marks} />
      <p class="small lesser">
        {table.name}, {figures.dayOfYear(table.dated)}. {table.note}
      </p>
      <details class="screen-only">
        <summary>Set it beside another limit</summary>
        <div class="buildup-fields">
          <Choice<string>
            label="Beside the limit for a"
            hint="What it is: a door or a rooflight cannot be told from its layers."
            value={stated ?? 'proposed'}
            options={{ proposed, ...kinds }}
            onValue={(wanted) =>
              editor.act((house) =>
                changeElement(house, element, { limitKind: limitKinds.find((it) => it === wanted) }),
              )
            }
          />
        </div>
      </details>
    </>
  );
}
