/** The fields of one layer, right beneath the drawing, and what can be done with it. */
import { materials } from '../../src/fabric/index.ts';
import type { Layer } from '../../src/house.ts';
import { BridgeFields } from './BridgeFields.tsx';
import { Choice } from './Choice.tsx';
import { hints } from './hints.ts';
import { labels } from './labels.ts';
import {
  buildUpAt,
  changeLayer,
  duplicateLayer,
  insertLayer,
  type LayerPlace,
  layerAt,
  moveLayer,
  nameOf,
  putMaterial,
  type Resisting,
  removeLayer,
  resistBy,
  resistingOf,
} from './layerEdits.ts';
import { MaterialSearch } from './MaterialSearch.tsx';
import { sourceWords } from './sourceWords.ts';
import { NumberField, TextField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

const ways: Readonly<Record<Resisting, string>> = {
  conductivity: 'By its conductivity',
  resistance: 'By a stated resistance',
  unventilated: 'Air, still',
  slightly: 'Air, slightly ventilated',
  ventilated: 'Air, well ventilated',
};

export interface LayerFieldsProps {
  readonly editor: Editor;
  readonly at: LayerPlace;
  readonly onLayer: (layer: number) => void;
}

type FigureKey = {
  [K in keyof Layer]-?: K extends keyof typeof labels ? K : never;
}[keyof Layer];

export function LayerFields({ editor, at, onLayer }: LayerFieldsProps) {
  const layer = layerAt(editor.house, at);
  const material = materials.find(({ name, kind }) => name === layer.name && kind !== 'air');
  const figure = (key: FigureKey, hint = hints[key]) => (
    <NumberField
      label={labels[key]}
      hint={hint}
      value={layer[key]}
      onValue={(value) =>
        editor.type(`${nameOf(at)} ${key}`, (house) => changeLayer(house, at, { [key]: value }))
      }
    />
  );
  const way = resistingOf(layer);
  const air = layer.air !== undefined;
  return (
    <div class="buildup-layer screen-only">
      <h3>
        Layer {at.layer + 1}: {layer.name}
      </h3>
      <LayerButtons editor={editor} at={at} onLayer={onLayer} />
      <div class="buildup-fields">
        <TextField
          label="Name"
          value={layer.name}
          onValue={(name = '') =>
            editor.type(`${nameOf(at)} name`, (house) => changeLayer(house, at, { name }))
          }
        />
        <Choice
          label="How it resists"
          hint="Which figure its data sheet gives."
          value={way}
          options={ways}
          onValue={(wanted) => editor.act((house) => resistBy(house, at, wanted))}
        />
        {figure('thicknessMm')}
        {way === 'conductivity' ? figure('conductivityWmK') : null}
        {way === 'resistance' ? figure('resistanceM2KW') : null}
        {air ? null : figure('densityKgM3')}
        {air ? null : figure('specificHeatJkgK')}
        {air || layer.sdM !== undefined ? null : figure('vapourResistance')}
        {air || layer.vapourResistance !== undefined ? null : figure('sdM')}
        {way === 'slightly' ? figure('openingMm2PerM') : null}
        {air && way !== 'ventilated' ? figure('emissivity') : null}
        {air && way !== 'ventilated'
          ? figure('widthMm', 'Of a space less wide than ten times its depth; empty for a wide one.')
          : null}
      </div>
      {material === undefined ? null : (
        <p class="small lesser">In the library: {sourceWords(material).join(' ')}</p>
      )}
      <MaterialSearch onPick={(chosen) => editor.act((house) => putMaterial(house, at, chosen))} />
      {layer.air === 'ventilated' || layer.thicknessMm === undefined ? null : (
        <BridgeFields editor={editor} at={at} />
      )}
    </div>
  );
}

const outward = { back: 'Further in', on: 'Further out', add: 'Add outside of it' };
/** Inside, no face is the outer one. */
const across = { back: 'To the left', on: 'To the right', add: 'Add to the right of it' };

function LayerButtons({ editor, at, onLayer }: LayerFieldsProps) {
  const last = buildUpAt(editor.house, at).layers.length - 1;
  const words = at.of === 'elements' ? outward : across;
  const move = (by: 1 | -1) => () => {
    if (editor.act((house) => moveLayer(house, at, by))) onLayer(at.layer + by);
  };
  return (
    <p class="buildup-buttons">
      <button type="button" disabled={at.layer === 0} onClick={move(-1)}>
        {words.back}
      </button>
      <button type="button" disabled={at.layer === last} onClick={move(1)}>
        {words.on}
      </button>
      <button
        type="button"
        onClick={() => {
          if (editor.act((house) => duplicateLayer(house, at))) onLayer(at.layer + 1);
        }}
      >
        Duplicate
      </button>
      <button
        type="button"
        onClick={() => {
          if (editor.act((house) => insertLayer(house, at))) onLayer(at.layer + 1);
        }}
      >
        {words.add}
      </button>
      <button
        type="button"
        onClick={() => {
          if (editor.act((house) => removeLayer(house, at))) onLayer(Math.max(0, at.layer - 1));
        }}
      >
        Remove
      </button>
    </p>
  );
}
