/** Thermal bridges: the lines where parts of the house meet, one by one or all together. */
import type { RefObject } from 'preact';
import { type Design, junctionDefaults, junctionSource } from '../../src/fabric/index.ts';
import { junctionKinds } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';
import { Term } from '../parts/Term.tsx';
import { addJunction, type BridgesBy, bridgesBy, knowBridgesBy } from './bridgeEdits.ts';
import { Choice } from './Choice.tsx';
import { HouseFindings } from './HouseFindings.tsx';
import { hints } from './hints.ts';
import { JunctionFields } from './JunctionFields.tsx';
import { LossWithRange } from './LossWithRange.tsx';
import { labels } from './labels.ts';
import { sourceOf } from './sourceWords.ts';
import { NumberField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

const ways: Readonly<Record<BridgesBy, string>> = {
  nothing: 'Not at all: none are counted',
  junctions: 'Line by line',
  sum: 'As one figure, from a calculation',
  share: 'As a share on every m²',
};

const aboutWays: Readonly<Record<BridgesBy, string>> = {
  nothing: 'Every house has some, so the loss as drawn is too low without them.',
  junctions: 'Each kind of line with its length; a default stands for what nobody worked out.',
  sum: 'Where somebody has added them up already.',
  share: 'The roughest way: the same on every m² of the shell.',
};

export interface OfHouseProps {
  readonly editor: Editor;
  readonly design: Design | null;
  /** As it is kept; null where no element is. */
  readonly before: Design | null;
  readonly heading: RefObject<HTMLHeadingElement | null>;
}

export function BridgesOfHouse({ editor, design, before, heading }: OfHouseProps) {
  const { thermalBridges } = editor.house;
  const way = bridgesBy(editor.house);
  const figure = (key: 'psiLengthWK' | 'yValue') => (
    <NumberField
      signed={key === 'psiLengthWK'}
      label={labels[key]}
      hint={hints[key]}
      value={thermalBridges?.[key]}
      onValue={(value) =>
        editor.type(`bridges ${key}`, (house) => {
          house.thermalBridges = value === undefined ? {} : { [key]: value };
        })
      }
    />
  );
  return (
    <section>
      <h2 ref={heading} tabIndex={-1}>
        Where parts meet
      </h2>
      <p>
        Along corners, edges and around windows more heat passes than through the plain wall: the{' '}
        <Term of="thermal bridges" />.
      </p>
      {design === null || thermalBridges === undefined ? null : (
        <LossWithRange
          lead="Along them goes"
          title="Lost where parts meet"
          range={design.ranges.bridges}
          whole={design.heatLoss}
          kept={before?.bridges ?? null}
        />
      )}
      <div class="buildup-fields screen-only">
        <Choice
          label={labels.thermalBridges}
          hint={aboutWays[way]}
          value={way}
          options={ways}
          onValue={(wanted) => editor.act((house) => knowBridgesBy(house, wanted))}
        />
        {way === 'sum' ? figure('psiLengthWK') : null}
        {way === 'share' ? figure('yValue') : null}
      </div>
      {way === 'junctions' ? <Junctions editor={editor} losses={design?.junctions ?? []} /> : null}
      <HouseFindings design={design} about={['thermalBridges']} />
    </section>
  );
}

function Junctions({ editor, losses }: { editor: Editor; losses: readonly number[] }) {
  const junctions = editor.house.thermalBridges?.junctions ?? [];
  const unused = junctionKinds.find((kind) => !junctions.some((it) => it.kind === kind));
  return (
    <>
      <ol class="buildup-list">
        {junctions.map((junction, i) => (
          <li key={i}>
            <JunctionFields
              editor={editor}
              at={i}
              junction={junction}
              loss={losses[i] === undefined ? '' : figures.heatLoss(losses[i])}
            />
          </li>
        ))}
      </ol>
      <p class="screen-only">
        <button
          type="button"
          onClick={() => editor.act((house) => addJunction(house, unused ?? junctionKinds[0]))}
        >
          Add a line
        </button>
      </p>
      <p class="small lesser">
        Defaults from {sourceOf(junctionSource)}. “Corner that points inward” has{' '}
        {junctionDefaults['inner-corner'].usual}: with care it gives some back.
      </p>
    </>
  );
}
