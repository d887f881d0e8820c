/** The element that is picked: its layers drawn to scale, the fields of the layer, what comes of them, and its own fields. */
import type { RefObject } from 'preact';
import { type ElementDesign, surfacesOf } from '../../src/fabric/index.ts';
import { ElementFields } from './ElementFields.tsx';
import { ElementFindings } from './ElementFindings.tsx';
import { duplicateElement, elementAt, removeElement } from './elementEdits.ts';
import { FastenerFields } from './FastenerFields.tsx';
import { FittingWorth } from './FittingWorth.tsx';
import { HeatStored } from './HeatStored.tsx';
import { LayerFields } from './LayerFields.tsx';
import { Layers } from './Layers.tsx';
import { giveLayers, type LayerPlace } from './layerEdits.ts';
import { MoistureThrough } from './MoistureThrough.tsx';
import { UValue } from './UValue.tsx';
import type { Editor } from './useEditor.ts';
import { WorkingsOf } from './WorkingsOf.tsx';

export interface ElementEditorProps {
  readonly editor: Editor;
  readonly element: number;
  readonly design: ElementDesign;
  readonly layer: number;
  readonly onLayer: (layer: number) => void;
  readonly onElement: (element: number) => void;
  /** Where the page goes when another element is picked. */
  readonly heading: RefObject<HTMLHeadingElement | null>;
}

export function ElementEditor(props: ElementEditorProps) {
  const { editor, element, design, layer, onLayer, onElement, heading } = props;
  const entry = elementAt(editor.house, element);
  const { buildUp, transmission } = design;
  const at: LayerPlace = {
    of: 'elements',
    part: element,
    layer: Math.min(layer, (entry.buildUp?.layers.length ?? 1) - 1),
  };
  return (
    <section>
      <h2 ref={heading} tabIndex={-1}>
        {entry.name}
      </h2>
      <UValue editor={editor} element={element} design={design} />
      <ElementFindings design={design} entry={entry} />
      {entry.buildUp === undefined || transmission === null ? (
        <p class="screen-only">
          It is known by its U-value alone.{' '}
          <button
            type="button"
            class="quiet"
            onClick={() => editor.act((house) => giveLayers(house, element))}
          >
            Give it layers instead
          </button>
        </p>
      ) : (
        <Layers
          editor={editor}
          entry={entry.buildUp}
          workings={transmission}
          at={at}
          onLayer={onLayer}
          lies={design.to === 'ground' ? 'on ground' : 'to outside'}
        >
          <LayerFields key={`${element} ${at.layer}`} editor={editor} at={at} onLayer={onLayer} />
        </Layers>
      )}
      <ElementFields key={element} editor={editor} element={element} design={design} />
      {entry.buildUp === undefined ? null : <FastenerFields editor={editor} element={element} />}
      <p class="buildup-buttons screen-only">
        <button
          type="button"
          onClick={() => {
            if (editor.act((house) => duplicateElement(house, element))) onElement(element + 1);
          }}
        >
          Duplicate “{entry.name}”
        </button>
        <button
          type="button"
          onClick={() => {
            if (editor.act((house) => removeElement(house, element))) onElement(Math.max(0, element - 1));
          }}
        >
          Remove “{entry.name}”
        </button>
      </p>
      {transmission === null ? null : <WorkingsOf workings={transmission} ground={design.ground} />}
      {design.periodic === null ? null : <HeatStored periodic={design.periodic} />}
      {buildUp === null || entry.buildUp === undefined ? null : (
        <>
          <FittingWorth
            key={element}
            buildUp={buildUp}
            entry={entry.buildUp}
            surfaces={surfacesOf(buildUp.facing, entry.underfloor === undefined ? design.to : 'void')}
          />
          <MoistureThrough
            entry={entry.buildUp}
            beyond={entry.underfloor === undefined ? design.to : 'void'}
          />
        </>
      )}
    </section>
  );
}
