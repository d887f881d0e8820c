/** Timbers, or other members, through a layer. */
import { proposedExtraFraction, timberConventions } from '../../src/fabric/index.ts';
import type { Bridge } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';
import { framingOf } from './framing.ts';
import { hints } from './hints.ts';
import { labels } from './labels.ts';
import {
  buildUpAt,
  changeBridge,
  type LayerPlace,
  layerAt,
  measureTimbers,
  nameOf,
  putTimbers,
  takeTimbersOut,
} from './layerEdits.ts';
import { NumberField, TextField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

export interface BridgeFieldsProps {
  readonly editor: Editor;
  readonly at: LayerPlace;
}

export function BridgeFields({ editor, at }: BridgeFieldsProps) {
  const { bridge } = layerAt(editor.house, at);
  if (bridge === undefined)
    return (
      <p>
        <button type="button" class="quiet" onClick={() => editor.act((house) => putTimbers(house, at))}>
          Put timbers through this layer
        </button>
      </p>
    );
  const type = (key: keyof Bridge) => (value: number | string | undefined) =>
    editor.type(`${nameOf(at)} bridge ${key}`, (house) => changeBridge(house, at, { [key]: value }));
  return (
    <>
      <h3>Through it: {bridge.name}</h3>
      <div class="buildup-fields">
        <TextField label="Name" value={bridge.name} onValue={(name = '') => type('name')(name)} />
        {bridge.fraction === undefined ? (
          <>
            <NumberField
              label={labels.widthMm}
              hint={hints.widthMm}
              value={bridge.widthMm}
              onValue={type('widthMm')}
            />
            <NumberField
              label={labels.spacingMm}
              hint={hints.spacingMm}
              value={bridge.spacingMm}
              onValue={type('spacingMm')}
            />
            <NumberField
              label={labels.extraFraction}
              value={bridge.extraFraction}
              onValue={type('extraFraction')}
              hint={hints.extraFraction}
            />
          </>
        ) : (
          <NumberField
            label="Share of the face, 0 to 1"
            hint="Of all timber in it together."
            value={bridge.fraction}
            onValue={type('fraction')}
          />
        )}
        <NumberField
          label={labels.conductivityWmK}
          hint="Softwood has 0.13."
          value={bridge.conductivityWmK}
          onValue={type('conductivityWmK')}
        />
        <NumberField
          label={labels.densityKgM3}
          hint={hints.densityKgM3}
          value={bridge.densityKgM3}
          onValue={type('densityKgM3')}
        />
        <NumberField
          label={labels.specificHeatJkgK}
          hint={hints.specificHeatJkgK}
          value={bridge.specificHeatJkgK}
          onValue={type('specificHeatJkgK')}
        />
      </div>
      <Convention editor={editor} at={at} bridge={bridge} />
      <Continues editor={editor} at={at} bridge={bridge} />
      <p class="buildup-buttons">
        <button
          type="button"
          class="quiet"
          onClick={() =>
            editor.act((house) =>
              measureTimbers(house, at, bridge.fraction === undefined ? 'share' : 'centres'),
            )
          }
        >
          {bridge.fraction === undefined ? 'Give their share outright' : 'Give their width and centres'}
        </button>
        <button type="button" class="quiet" onClick={() => editor.act((house) => takeTimbersOut(house, at))}>
          Take them out
        </button>
      </p>
    </>
  );
}

/** What the convention says of all timber in such an element, and what that leaves for plates and noggins. */
function Convention({ editor, at, bridge }: BridgeFieldsProps & { bridge: Bridge }) {
  const { widthMm, spacingMm, extraFraction = 0 } = bridge;
  if (widthMm === undefined || spacingMm === undefined) return null;
  const framing = framingOf(editor.house[at.of]?.[at.part] ?? {}, bridge);
  const proposed = Number(proposedExtraFraction(framing, widthMm, spacingMm).toFixed(3));
  return (
    <>
      <p class="small">
        By convention the timber of {framing === 'timber-frame wall' ? 'a timber-frame wall' : framing} comes
        to {figures.percent(timberConventions[framing])} of the face in all (BR 443, from memory, to be
        confirmed);{' '}
        {proposed === 0
          ? `these members alone come to ${figures.percent(widthMm / spacingMm)}.`
          : `these members come to ${figures.percent(widthMm / spacingMm)}, which leaves ${proposed} for plates and noggins.`}
      </p>
      {proposed === extraFraction ? null : (
        <button
          type="button"
          class="quiet"
          onClick={() => editor.act((house) => changeBridge(house, at, { extraFraction: proposed }))}
        >
          Take {proposed} for plates and noggins
        </button>
      )}
    </>
  );
}

/** Whether these are the members of the bridged layer further in. */
function Continues({ editor, at, bridge }: BridgeFieldsProps & { bridge: Bridge }) {
  const { layers } = buildUpAt(editor.house, at);
  const before = layers.slice(0, at.layer).findLast((layer) => layer.bridge !== undefined)?.bridge;
  if (before === undefined) return null;
  return (
    <label class="buildup-tick">
      <input
        type="checkbox"
        checked={bridge.continues ?? false}
        onChange={({ currentTarget }) =>
          editor.act((house) => changeBridge(house, at, { continues: currentTarget.checked || undefined }))
        }
      />
      The same members as “{before.name}” further in; else they cross them.
    </label>
  );
}
