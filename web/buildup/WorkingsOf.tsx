/** How a U-value comes about: each resistance, both limits, the method's own error, each correction. */
import type { ElementDesign, LayerWorking, Workings } from '../../src/fabric/index.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { figures } from '../../src/words/index.ts';
import { Table } from '../parts/Table.tsx';

interface Line {
  readonly name: string;
  readonly clear: number | null;
  readonly bridge: LayerWorking['bridge'];
  readonly note: string;
}

export function WorkingsOf({ workings, ground }: { workings: Workings; ground: ElementDesign['ground'] }) {
  const { cases, layers } = workings;
  const { inside, outside } = cases[0].surfaces;
  const surface = (name: string, clear: number): Line => ({ name, clear, bridge: null, note: '' });
  return (
    <details class="buildup-more">
      <summary>How the U-value comes about</summary>
      <Table
        caption="Resistances by ISO 6946, m²K/W, from inside"
        keyOf={({ name }) => name}
        columns={[
          { head: 'Layer', cell: ({ name }) => name.replace(/^\d+: /, '') },
          { head: 'Beside timber', cell: ({ clear }) => resistances(clear), numeric: true },
          {
            head: 'Through it',
            cell: ({ bridge }) => (bridge === null ? '' : resistances(bridge.resistance)),
            numeric: true,
          },
          {
            head: 'Its share',
            cell: ({ bridge }) => (bridge === null ? '' : figures.percent(bridge.fraction)),
            numeric: true,
          },
          ...(layers.some(({ counts }) => counts < 1)
            ? [{ head: 'Counts', cell: ({ note }: Line) => note, numeric: true }]
            : []),
        ]}
        rows={[
          surface('Inside surface', inside),
          ...layers.map(({ name, clear, bridge, counts }, i) => ({
            name: `${i}: ${name}`,
            clear,
            bridge,
            note:
              counts === 1
                ? ''
                : counts === 0
                  ? 'not, being ventilated'
                  : `counts ${figures.percent(counts)}`,
          })),
          surface('Outside surface', outside),
        ]}
      />
      <ul class="buildup-workings">
        {sentencesOf(workings, ground).map((sentence) => (
          <li key={sentence}>{tied(sentence)}</li>
        ))}
      </ul>
    </details>
  );
}

function sentencesOf(workings: Workings, ground: ElementDesign['ground']): string[] {
  const { upper, lower, resistance, error, relativeError, corrections } = workings;
  const { airGaps, fasteners, applied } = corrections;
  const gaps = `Gaps in the insulation add ${decimals(airGaps)}, fasteners ${decimals(fasteners)} W/(m²K)`;
  return [
    `Upper limit ${resistances(upper)}, as if heat went straight through; lower limit ${resistances(lower)}, as if it spread freely in every layer.`,
    `The resistance is their mean, ${resistances(resistance)} m²K/W; the method itself may be wrong by ${resistances(error)} (${figures.decimal(relativeError * 100, 1)} %).`,
    `1 / ${resistances(resistance)} = ${decimals(1 / resistance)} W/(m²K).`,
    airGaps + fasteners === 0
      ? 'No corrections for gaps or fasteners.'
      : applied
        ? `${gaps}.`
        : `${gaps}; together under 3 %, so ISO 6946 leaves them out.`,
    ...(ground === null ? [] : [`With the ground by ISO 13370: ${decimals(ground.transmittance)} W/(m²K).`]),
  ];
}

const resistances = (value: number | null) => (value === null ? '' : figures.decimal(value, 3));
const decimals = (value: number) => figures.decimal(value, 4);
