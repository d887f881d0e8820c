/** All build-ups of a house: what it loses as they are changed, the element that is picked, and keeping the changes. */
import type { RefObject } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { type Design, designOf } from '../../src/fabric/index.ts';
import type { House } from '../../src/house.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { Rule, type RuleMark } from '../parts/Rule.tsx';
import { AddElement } from './AddElement.tsx';
import { AirOfHouse } from './AirOfHouse.tsx';
import { BridgesOfHouse } from './BridgesOfHouse.tsx';
import { ElementEditor } from './ElementEditor.tsx';
import { HeatingOfHouse } from './HeatingOfHouse.tsx';
import { HouseFindings } from './HouseFindings.tsx';
import { KeepChanges } from './KeepChanges.tsx';
import { LimitsOfHouse } from './LimitsOfHouse.tsx';
import { Partitions } from './Partitions.tsx';
import { useEditor } from './useEditor.ts';
import { useKeeping } from './useKeeping.ts';
import { useLeaving } from './useLeaving.ts';
import { WholeHouse } from './WholeHouse.tsx';
import './buildup.css';

export function BuildUps({ id, first }: { id: string; first: House }) {
  const editor = useEditor(first);
  const keeping = useKeeping(id, first);
  const changed = JSON.stringify(editor.house) !== JSON.stringify(keeping.stored);
  useLeaving(changed);
  const [picked, setPicked] = useState(0);
  const [layer, setLayer] = useState(0);
  const heading = useRef<HTMLHeadingElement>(null);
  const bridges = useRef<HTMLHeadingElement>(null);
  const air = useRef<HTMLHeadingElement>(null);
  const design = designOf(editor.house);
  const before = designOf(keeping.stored);
  const last = (editor.house.elements?.length ?? 0) - 1;
  const at = Math.min(picked, last);
  const pick = (element: number) => {
    setPicked(element);
    setLayer(0);
    goTo(heading);
  };
  return (
    <>
      <p class="answer">{tied(answerOf(design, changed ? before : null))}</p>
      {design?.heatLoss ? (
        <Rule title="Heat loss as drawn" unit="W/K" marks={marksOf(design, changed ? before : null)} />
      ) : null}
      <section>
        <h2>The house, cut through</h2>
        {design === null ? null : (
          <WholeHouse
            design={design}
            before={before}
            house={editor.house}
            picked={at}
            onPick={pick}
            onBridges={() => goTo(bridges)}
            onAir={() => goTo(air)}
          />
        )}
        {design === null ? null : <HeatingOfHouse design={design} house={editor.house} />}
        <HouseFindings design={design} about={['elements', 'volumeM3', 'conditions', 'heatCapacity']} />
        <AddElement
          onAdd={(add) => {
            if (editor.act(add)) pick(last + 1);
          }}
        />
      </section>
      {design === null || at < 0 ? null : (
        <ElementEditor
          editor={editor}
          element={at}
          design={design.elements[at]}
          layer={layer}
          onLayer={setLayer}
          onElement={pick}
          heading={heading}
        />
      )}
      <BridgesOfHouse editor={editor} design={design} before={before} heading={bridges} />
      <AirOfHouse editor={editor} design={design} before={before} heading={air} />
      <Partitions editor={editor} design={design} />
      <LimitsOfHouse editor={editor} />
      <KeepChanges id={id} editor={editor} keeping={keeping} changed={changed} />
    </>
  );
}

function goTo({ current }: RefObject<HTMLHeadingElement | null>): void {
  current?.focus();
  current?.scrollIntoView({ block: 'start' });
}

function answerOf(design: Design | null, before: Design | null): string {
  if (design === null) return 'No element is drawn yet. Add the first one below.';
  if (design.heatLoss === null)
    return 'The house has no heat loss as drawn: one of its elements has no U-value. The reason stands with it.';
  const now = `As drawn, this house loses ${figures.heatLoss(design.heatLoss)}`;
  return before === null || before.heatLoss === null || before.heatLoss === design.heatLoss
    ? `${now}.`
    : `${now}; what is kept says ${figures.heatLoss(before.heatLoss)}.`;
}

function marksOf({ heatLoss, ranges }: Design, before: Design | null): RuleMark[] {
  if (heatLoss === null) return [];
  const range = ranges.heatLoss;
  return [
    {
      label: 'Now',
      value: heatLoss,
      kind: 'other',
      ...(range ? { low: range.low, high: range.high } : {}),
    },
    ...(before?.heatLoss ? [{ label: 'As kept', value: before.heatLoss, kind: 'drawn' } as const] : []),
  ];
}
