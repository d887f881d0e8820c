/** The layers of an element: drawn to scale, each named beneath, and put in another order by the keyboard. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { TransmittanceResult, Workings } from '../../src/fabric/index.ts';
import type { Layer } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';
import { boundaryTemperatures, layerResistance } from './boundaries.ts';
import { LayersPicture } from './LayersPicture.tsx';
import { type BuildUpEntry, changeLayer, type LayerPlace, moveLayer, nameOf } from './layerEdits.ts';
import { NumberField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';
import './Layers.css';

/** By which the keys make a layer thicker or thinner [mm]. */
const STEP = 5;
const MOST_COLUMNS = 6;

export interface LayersProps {
  readonly editor: Editor;
  readonly entry: BuildUpEntry;
  readonly workings: TransmittanceResult;
  readonly at: LayerPlace;
  readonly onLayer: (layer: number) => void;
  /** The ground is left out of the drawing; inside, both faces are as warm as each other. */
  readonly lies: 'to outside' | 'on ground' | 'inside';
  /** The fields of the layer, right beneath the drawing. */
  readonly children: ComponentChildren;
}

export function Layers(props: LayersProps) {
  const { editor, entry, workings, at, onLayer, lies, children } = props;
  const { layers } = entry;
  const [inside, setInside] = useState(20);
  const [outside, setOutside] = useState(0);
  const list = useRef<HTMLOListElement>(null);
  const refused = workings.refusals.length > 0;
  const within = lies === 'inside';
  const temperatures = refused || within ? null : boundaryTemperatures(workings, inside, outside);
  const focused = at.layer;
  // The keyboard stays on the layer that it picked or moved.
  useEffect(() => {
    const { current } = list;
    if (current?.contains(document.activeElement)) current.querySelectorAll('button')[focused]?.focus();
  }, [focused]);

  function onKey(event: KeyboardEvent) {
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      event.preventDefault();
      thicken(event.key === 'ArrowUp' ? STEP : -STEP);
      return;
    }
    const by = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : null;
    if (by === null || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const next = at.layer + by;
    if (layers[next] === undefined) return;
    if (!event.altKey || editor.act((house) => moveLayer(house, at, by))) onLayer(next);
  }

  /** As if it were typed; what cannot be thinner stays. */
  function thicken(by: number) {
    const { thicknessMm } = layers[at.layer];
    if (thicknessMm === undefined) return;
    editor.type(`${nameOf(at)} thicknessMm`, (house) =>
      changeLayer(house, at, { thicknessMm: thicknessMm + by }),
    );
  }

  return (
    <>
      <figure class="layers">
        <LayersPicture
          layers={layers}
          temperatures={temperatures}
          within={within}
          chosen={at.layer}
          onPick={onLayer}
          inside={inside}
          outside={outside}
        />
        <ol
          ref={list}
          class="layers-names"
          style={{ '--columns': columnsOf(layers.length) }}
          onKeyDown={onKey}
        >
          {layers.map((layer, i) => (
            <li key={i}>
              <button
                type="button"
                aria-current={i === at.layer ? 'true' : undefined}
                aria-keyshortcuts="Alt+ArrowLeft Alt+ArrowRight"
                onClick={() => onLayer(i)}
              >
                <span class="layers-number">{i + 1}</span>
                <span class="layers-name">{layer.name}</span>
                <span class="figure">{sizeOf(layer)}</span>
                <span class="figure">{resistanceOf(layer, workings, i)}</span>
                {temperatures === null ? null : (
                  <span class="figure lesser">
                    {figures.decimal(temperatures[i], 1)} to {figures.temperature(temperatures[i + 1])}
                  </span>
                )}
              </button>
            </li>
          ))}
        </ol>
        <figcaption class="small lesser">
          {within ? 'One room is left, the other right.' : 'Inside is left, the night right.'} Thickness is to
          scale, in millimetres; along the face, where timbers stand at their centres, it is drawn smaller.
          Hatched is air, a dotted strip has no thickness.{' '}
          {within
            ? ''
            : `The line is the temperature${lies === 'on ground' ? ', as if outdoors and not the ground lay beneath' : ''}; where it falls, the night comes in. `}
          <span class="screen-only">
            Left and right go from layer to layer, with Alt they move it; up and down make it {STEP} mm
            thicker or thinner.
          </span>
        </figcaption>
      </figure>
      {children}
      {within ? null : (
        <div class="buildup-fields screen-only">
          <NumberField
            label="Drawn for inside, °C"
            hint="For the drawing only."
            value={inside}
            onValue={(it) => taken(it, setInside)}
          />
          <NumberField
            signed
            label="And outside, °C"
            hint="For the drawing only."
            value={outside}
            onValue={(it) => taken(it, setOutside)}
          />
        </div>
      )}
    </>
  );
}

/** A temperature that is only tried: it is no part of the house. */
export function taken(value: number | undefined, set: (value: number) => void): readonly string[] {
  if (value === undefined || Math.abs(value) > 100) return ['Give a temperature from −100 to 100.'];
  set(value);
  return [];
}

/** A sheet is known by its hold on vapour alone. */
const isSheet = ({ resistanceM2KW, thicknessMm }: Layer) => resistanceM2KW === 0 && thicknessMm === undefined;

function sizeOf(layer: Layer): string {
  if (isSheet(layer)) return 'a sheet';
  const { thicknessMm, bridge } = layer;
  return `${thicknessMm === undefined ? 'no thickness' : `${thicknessMm} mm`}${bridge ? `, ${bridge.name}` : ''}`;
}

function resistanceOf(layer: Layer, workings: Workings, at: number): string {
  if (workings.layers[at].counts === 0) return 'does not count';
  if (isSheet(layer)) return 'for vapour only';
  const value = layerResistance(workings, at);
  return `${figures.decimal(value, value < 0.1 ? 3 : 2)} m²K/W`;
}

/** So many beside each other that the rows are of a length. */
const columnsOf = (layers: number) => Math.ceil(layers / Math.ceil(layers / MOST_COLUMNS));
