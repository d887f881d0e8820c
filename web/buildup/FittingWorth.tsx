/** What careful fitting of the insulation is worth, and what a board between the timbers is cut to. */
import { useState } from 'preact/hooks';
import { type BuildUp, clearWidth, fittingOf, jointLoss, type Surfaces } from '../../src/fabric/index.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { cutTo, sayFitting, sayJoints } from '../../src/words/index.ts';
import type { BuildUpEntry } from './layerEdits.ts';
import { NumberField } from './TypedField.tsx';

export interface FittingWorthProps {
  readonly buildUp: BuildUp;
  readonly entry: BuildUpEntry;
  readonly surfaces: Surfaces;
}

export function FittingWorth({ buildUp, entry, surfaces }: FittingWorthProps) {
  const centres = entry.layers.find(({ bridge }) => bridge?.spacingMm !== undefined)?.bridge?.spacingMm;
  const [joint, setJoint] = useState(5);
  const [typedEvery, setEvery] = useState<number | null>(null);
  const fitting = fittingOf(buildUp, surfaces);
  if (fitting === null) return null;
  const every = typedEvery ?? centres ?? 600;
  const joints = { width: joint / 1000, spacing: every / 1000 };
  const loss = joint <= every ? jointLoss(buildUp, surfaces, joints) : null;
  return (
    <details class="buildup-more">
      <summary>What careful fitting is worth</summary>
      <ul class="buildup-workings">
        {[...cutsOf(entry), ...sayFitting(fitting)].map((sentence) => (
          <li key={sentence}>{tied(sentence)}</li>
        ))}
      </ul>
      <div class="buildup-fields screen-only">
        <NumberField
          label="Open joints of, mm"
          value={joint}
          onValue={(width) => taken(width, 0, every, setJoint)}
        />
        <NumberField
          label="One every, mm"
          value={every}
          onValue={(step) => taken(step, joint, 10_000, setEvery)}
        />
      </div>
      {loss === null ? null : <p>{tied(sayJoints(joints, loss, fitting))}</p>}
    </details>
  );
}

/** One sentence for each kind of spacing. */
const cutsOf = ({ layers }: BuildUpEntry) => [
  ...new Set(
    layers.flatMap(({ bridge }) => {
      if (bridge?.widthMm === undefined || bridge.spacingMm === undefined) return [];
      const [width, spacing] = [bridge.widthMm / 1000, bridge.spacingMm / 1000];
      return [cutTo(clearWidth(width, spacing), width, spacing)];
    }),
  ),
];

function taken(value: number | undefined, least: number, most: number, set: (value: number) => void) {
  if (value === undefined || !(value >= least && value <= most) || (value === 0 && least > 0))
    return [`Give a number from ${least} to ${most}.`];
  set(value);
  return [];
}
