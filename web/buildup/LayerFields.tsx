/** The fields of one layer, right beneath the drawing, and what can be done with it. */
import { materials } from '../../src/fabric/index.ts';
import type { Layer } from '../../src/house.ts';
import { BridgeFields } from './BridgeFields.tsx';
import { Choice } from './Choice.tsx';
import { labels } from './labels.ts';
import {
  changeLayer,
  duplicateLayer,
  insertLayer,
  type LayerPlace,
  layerAt,
  moveLayer,
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
  const figure = (key: FigureKey, hint?: string) => (
    <NumberField
      label={labels[key]}
      hint={hint}
      value={layer[key]}
      onValue={(value) =>
        editor.type(`layer ${at.element} ${at.layer} ${key}`, (house) =>
          changeLayer(house, at, { [key]: value }),
        )
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
            editor.type(`layer ${at.element} ${at.layer} name`, (house) => changeLayer(house, at, { name }))
          }
        />
        <Choice
          label="How it resists"
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
        {way === 'slightly' ? figure('openingMm2PerM', '1000 is taken when left out.') : null}
        {air && way !== 'ventilated'
          ? figure('emissivity', '0.9 when left out; a bright foil has about 0.05.')
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

function LayerButtons({ editor, at, onLayer }: LayerFieldsProps) {
  const last = (editor.house.elements?.[at.element]?.buildUp?.layers.length ?? 1) - 1;
  const move = (by: 1 | -1) => () => {
    if (editor.act((house) => moveLayer(house, at, by))) onLayer(at.layer + by);
  };
  return (
    <p class="buildup-buttons">
      <button type="button" disabled={at.layer === 0} onClick={move(-1)}>
        Further in
      </button>
      <button type="button" disabled={at.layer === last} onClick={move(1)}>
        Further out
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
        Add outside of it
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
