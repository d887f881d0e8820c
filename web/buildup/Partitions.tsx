/** The walls and floors inside: they lose nothing, but store heat, and so slow the house's cooling down. */
import { useEffect, useRef, useState } from 'preact/hooks';
import {
  buildUpFrom,
  type Design,
  periodicResponse,
  surfacesOf,
  transmittanceOf,
} from '../../src/fabric/index.ts';
import type { Partition } from '../../src/house.ts';
import { figures } from '../../src/words/index.ts';
import { FormField } from '../parts/FormField.tsx';
import { Table } from '../parts/Table.tsx';
import { HouseFindings } from './HouseFindings.tsx';
import { LayerFields } from './LayerFields.tsx';
import { Layers } from './Layers.tsx';
import type { LayerPlace } from './layerEdits.ts';
import {
  addPartition,
  beginLayers,
  changePartition,
  partitionPoints,
  removePartition,
} from './partitionEdits.ts';
import { NumberField, TextField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

export function Partitions({ editor, design }: { editor: Editor; design: Design | null }) {
  const partitions = editor.house.partitions ?? [];
  const [picked, setPicked] = useState<number | null>(null);
  const at = picked === null || partitions[picked] === undefined ? null : picked;
  return (
    <section>
      <h2>Walls and floors inside</h2>
      <p>
        They lose nothing to outdoors. But they store heat, and the more a house stores, the slower it cools.
      </p>
      {partitions.length === 0 ? null : (
        <Table
          caption="What they store for each degree. Pick one to change it."
          keyOf={({ i }) => i}
          columns={[
            {
              head: 'Inside',
              cell: ({ partition, i }) => (
                <button
                  type="button"
                  class="quiet buildup-pick"
                  aria-current={i === at ? 'true' : undefined}
                  onClick={() => setPicked(i)}
                >
                  {partition.name}
                </button>
              ),
            },
            { head: 'Stores', cell: ({ partition }) => storedIn(partition), numeric: true },
            { head: 'One face', cell: ({ partition }) => figures.area(partition.areaM2), numeric: true },
          ]}
          rows={partitions.map((partition, i) => ({ partition, i }))}
        />
      )}
      <HouseFindings design={design} about={['partitions']} />
      {at === null ? null : (
        <PartitionEditor key={at} editor={editor} at={at} onRemove={() => setPicked(null)} />
      )}
      <AddPartition editor={editor} onAdded={() => setPicked(partitions.length)} />
    </section>
  );
}

interface PartitionEditorProps {
  readonly editor: Editor;
  readonly at: number;
  readonly onRemove: () => void;
}

function PartitionEditor({ editor, at, onRemove }: PartitionEditorProps) {
  const partition = editor.house.partitions?.[at];
  const [picked, setPicked] = useState(0);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  if (partition === undefined) return null;
  const { name, areaM2, buildUp } = partition;
  const layer = Math.min(picked, buildUp.layers.length - 1);
  const place: LayerPlace = { of: 'partitions', part: at, layer };
  return (
    <>
      <h3 ref={heading} tabIndex={-1}>
        {name}
      </h3>
      <div class="buildup-fields screen-only">
        <TextField
          label="What it is called"
          value={name}
          onValue={(text = '') =>
            editor.type(`partition ${at} name`, (house) => changePartition(house, at, { name: text }))
          }
        />
        <NumberField
          label="One face, m²"
          hint="The area of one side; the other counts by itself."
          value={areaM2}
          onValue={(value) =>
            editor.type(`partition ${at} area`, (house) => changePartition(house, at, { areaM2: value }))
          }
        />
      </div>
      {buildUp.layers.length === 0 ? (
        <p class="screen-only">
          <button type="button" class="quiet" onClick={() => editor.act((house) => beginLayers(house, at))}>
            Give it layers
          </button>
        </p>
      ) : (
        <Layers
          editor={editor}
          entry={buildUp}
          workings={workingsOf(partition)}
          at={place}
          onLayer={setPicked}
          lies="inside"
        >
          <LayerFields key={layer} editor={editor} at={place} onLayer={setPicked} />
        </Layers>
      )}
      <p class="screen-only">
        <button
          type="button"
          onClick={() => {
            if (editor.act((house) => removePartition(house, at))) onRemove();
          }}
        >
          Remove “{name}”
        </button>
      </p>
    </>
  );
}

function AddPartition({ editor, onAdded }: { editor: Editor; onAdded: () => void }) {
  const [chosen, setChosen] = useState(0);
  return (
    <details class="screen-only">
      <summary>Add a wall or a floor inside</summary>
      <div class="buildup-fields buildup-wide">
        <FormField label="One to begin from" hint="It begins with 10 m² until you type its own area.">
          {(ties) => (
            <select
              {...ties}
              value={chosen}
              onChange={({ currentTarget }) => setChosen(Number(currentTarget.value))}
            >
              {partitionPoints.map(({ name }, i) => (
                <option key={name} value={i}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </FormField>
      </div>
      <p>
        <button
          type="button"
          onClick={() => {
            if (editor.act((house) => addPartition(house, partitionPoints[chosen]))) onAdded();
          }}
        >
          Add it inside
        </button>
      </p>
    </details>
  );
}

const bothWarm = 'adjacent';

function workingsOf({ buildUp }: Partition) {
  const built = buildUpFrom(buildUp);
  return transmittanceOf(built, surfacesOf(built.facing, bothWarm));
}

/** From both its faces over 24 hours, ISO 13786. */
function storedIn({ areaM2, buildUp }: Partition): string {
  const built = buildUpFrom(buildUp);
  const { insideHeatCapacity, outsideHeatCapacity } = periodicResponse(
    built,
    surfacesOf(built.facing, bothWarm),
  );
  const joules = (insideHeatCapacity + outsideHeatCapacity) * areaM2;
  return `${figures.decimal(joules / 1000, 0)} kJ/K`;
}
