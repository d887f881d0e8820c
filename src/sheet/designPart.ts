/** The house as it was drawn: the cut through it, and its heat loss element by element. */
import type { Assessment } from '../assessment.ts';
import type { House } from '../house.ts';
import { figures } from '../words/index.ts';
import { section } from './drawing/section.ts';
import { tied } from './drawing/tied.ts';
import { type Content, html, type Markup, named } from './html.ts';
import { paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { table } from './table.ts';

type Design = NonNullable<Assessment['design']>;

export const designPart = ({ elements = [], loggers }: House, design: Design): Markup | null =>
  part(
    words.titles.section,
    section({ elements: design.elements, designed: elements, loss: design.heatLossWK, loggers }),
    paragraph(words.diagram, 'small lesser'),
    elementTable(design),
  );

interface Line {
  readonly name: Content;
  readonly area: number | null;
  /** Undefined where a U-value means nothing, null where it is not known. */
  readonly transmittance: number | null | undefined;
  /** Null where it is not known. */
  readonly loss: number | null;
  readonly share: number | null;
}

function elementTable(design: Design): Markup | null {
  const { heatLossWK: whole, heatLossAsTestedWK: tested } = design;
  const line = (name: string, loss: number, share: number | null = loss / whole): Line => ({
    name,
    area: null,
    transmittance: undefined,
    loss,
    share,
  });
  return table<Line>({
    caption: 'The designed heat loss',
    columns: [
      { head: 'Element', cell: ({ name }) => name },
      { head: 'Area', cell: ({ area }) => (area === null ? '' : tied(figures.area(area))), numeric: true },
      {
        head: 'U-value',
        cell: ({ transmittance: it }) =>
          it === undefined ? '' : it === null ? 'not known' : tied(figures.transmittance(it)),
        numeric: true,
      },
      {
        head: 'Heat loss',
        cell: ({ loss }) => (loss === null ? 'not known' : tied(figures.heatLoss(loss))),
        numeric: true,
      },
      {
        head: 'Share',
        cell: ({ share }) => (share === null ? '' : tied(figures.percent(share))),
        numeric: true,
      },
    ],
    rows: [
      ...design.elements.map(
        ({ name, areaM2, uValue, heatLossWK, to }): Line => ({
          name: to === 'outside' ? named(name) : html`${named(name)} (to ${whereTo[to]})`,
          area: areaM2,
          transmittance: uValue,
          loss: heatLossWK,
          share: to === 'adjacent' || heatLossWK === null ? null : heatLossWK / whole,
        }),
      ),
      line('Thermal bridges', design.bridgesWK),
      line('Ventilation', design.ventilationWK),
    ],
    foot: [
      ...(tested === null ? [] : [line('As tested, vents shut', tested, null)]),
      line('The whole house as drawn', whole),
    ],
  });
}

const whereTo = {
  ground: 'ground',
  adjacent: 'a heated neighbour, not counted',
  void: 'an unheated space',
} as const;
