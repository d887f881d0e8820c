/** The cut through the house and the table of what each element loses, beside what is kept; both to pick from. */
import type { Design, ElementDesign } from '../../src/fabric/index.ts';
import type { House } from '../../src/house.ts';
import type { DrawnElement } from '../../src/sheet/drawing/elementKind.ts';
import { figures } from '../../src/words/index.ts';
import { Section } from '../parts/Section.tsx';
import { type Column, Table } from '../parts/Table.tsx';
import { Term } from '../parts/Term.tsx';

export interface WholeHouseProps {
  readonly design: Design;
  /** As it is kept; null where no element is. */
  readonly before: Design | null;
  readonly house: House;
  readonly picked: number;
  readonly onPick: (element: number) => void;
  readonly onBridges: () => void;
  readonly onAir: () => void;
}

export function WholeHouse(props: WholeHouseProps) {
  const { design, before, house, picked, onPick } = props;
  return (
    <>
      <Section
        elements={design.elements.map(drawn)}
        designed={house.elements ?? []}
        loss={wholeOf(design)}
        loggers={[]}
        chosen={design.elements[picked].name}
        onPick={(name) => onPick(design.elements.findIndex((it) => it.name === name))}
      />
      <Table
        caption="The whole house. Pick a line to change it."
        keyOf={({ name }) => name}
        columns={columns(picked)}
        rows={linesOf(props)}
        foot={[
          {
            name: 'The whole house',
            loss: design.heatLoss,
            share: null,
            before: before?.heatLoss,
          },
        ]}
      />
    </>
  );
}

/** What shares are of: all that is known, where an element has no U-value. */
const wholeOf = ({ heatLoss, elements, bridges, ventilation }: Design) =>
  heatLoss ?? elements.reduce((sum, it) => sum + (it.heatLoss ?? 0), bridges + ventilation);

const drawn = ({ name, area, transmittance, heatLoss, to }: ElementDesign): DrawnElement => ({
  name,
  areaM2: area,
  uValue: transmittance,
  heatLossWK: heatLoss,
  to,
  notes: [],
});

interface Line {
  readonly name: string;
  /** Its place among the elements. */
  readonly element?: number;
  /** Not there for what cannot be picked. */
  readonly pick?: () => void;
  readonly area?: number;
  readonly transmittance?: number | null;
  /** [W/K]; null where it is not known. */
  readonly loss: number | null;
  readonly share: number | null;
  /** As it is kept [W/K]; undefined for what is not there yet. */
  readonly before: number | null | undefined;
}

function linesOf({ design, before, onPick, onBridges, onAir }: WholeHouseProps): Line[] {
  const whole = wholeOf(design);
  const share = (loss: number | null) => (loss === null || whole <= 0 ? null : loss / whole);
  return [
    ...design.elements.map(
      ({ name, area, transmittance, heatLoss, to }, element): Line => ({
        name: to === 'adjacent' ? `${name} (to a heated neighbour, not counted)` : name,
        element,
        pick: () => onPick(element),
        area,
        transmittance,
        loss: heatLoss,
        share: to === 'adjacent' ? null : share(heatLoss),
        before: before?.elements.find((it) => it.name === name)?.heatLoss,
      }),
    ),
    {
      name: 'Thermal bridges',
      pick: onBridges,
      loss: design.bridges,
      share: share(design.bridges),
      before: before?.bridges,
    },
    {
      name: 'Ventilation',
      pick: onAir,
      loss: design.ventilation,
      share: share(design.ventilation),
      before: before?.ventilation,
    },
  ];
}

const columns = (picked: number): Column<Line>[] => [
  {
    head: 'Element',
    cell: ({ name, element, pick }) =>
      pick === undefined ? (
        name
      ) : (
        <button
          type="button"
          class="quiet buildup-pick"
          aria-current={element === picked ? 'true' : undefined}
          onClick={pick}
        >
          {name}
        </button>
      ),
  },
  { head: <Term of="heat loss">Heat loss</Term>, cell: ({ loss }) => lossOf(loss), numeric: true },
  { head: 'As kept', cell: ({ before }) => lossOf(before), numeric: true },
  {
    head: 'Share',
    cell: ({ loss, share }) => (loss === null ? '—' : share === null ? '' : figures.percent(share)),
    numeric: true,
  },
  {
    head: <Term of="U-value" />,
    cell: ({ transmittance }) =>
      transmittance === undefined
        ? ''
        : transmittance === null
          ? 'none'
          : figures.transmittance(transmittance),
    numeric: true,
  },
  { head: 'Area', cell: ({ area }) => (area === undefined ? '' : figures.area(area)), numeric: true },
];

const lossOf = (loss: number | null | undefined) =>
  loss === undefined ? 'not there' : loss === null ? 'not known' : figures.heatLoss(loss);
