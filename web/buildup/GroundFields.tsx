/** What lies under a floor on the ground: the soil, insulation along the edge of a slab, or an aired space. */
import type { DesignElement } from '../../src/house.ts';
import { Choice } from './Choice.tsx';
import { changeElement, elementAt } from './elementEdits.ts';
import { hints } from './hints.ts';
import { labels } from './labels.ts';
import { shelters } from './shelters.ts';
import { NumberField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

const soils = { clay: 'Clay or silt', sand: 'Sand or gravel', rock: 'Rock' } as const;

const ways = {
  slab: 'It lies on the ground',
  edge: 'It does, insulated along its edge',
  underfloor: 'It hangs over an aired space',
} as const;

const lying = { flat: 'Flat, under or on the slab', upright: 'Upright, along its edge' } as const;

type Edge = NonNullable<DesignElement['edgeInsulation']>;
type Underfloor = NonNullable<DesignElement['underfloor']>;

/** Until its own figures are typed. PRACTICE */
const usualEdge: Edge = { lies: 'upright', reachMm: 600, thicknessMm: 50, conductivityWmK: 0.035 };

export function GroundFields({ editor, element }: { editor: Editor; element: number }) {
  const { soil = 'clay', edgeInsulation, underfloor } = elementAt(editor.house, element);
  const alter = (change: Partial<DesignElement>) =>
    editor.act((house) => changeElement(house, element, change));
  const put = {
    slab: { edgeInsulation: undefined, underfloor: undefined },
    edge: { edgeInsulation: usualEdge, underfloor: undefined },
    underfloor: { edgeInsulation: undefined, underfloor: {} },
  };
  const way = underfloor !== undefined ? 'underfloor' : edgeInsulation !== undefined ? 'edge' : 'slab';
  return (
    <>
      <Choice
        label={labels.soil}
        hint="Clay when nobody knows."
        value={soil}
        options={soils}
        onValue={(wanted) => alter({ soil: wanted })}
      />
      <Choice
        label="How the floor meets it"
        hint="Edge insulation is a strip around the slab only."
        value={way}
        options={ways}
        onValue={(wanted) => alter(put[wanted])}
      />
      {edgeInsulation === undefined ? null : (
        <EdgeFields editor={editor} element={element} edge={edgeInsulation} />
      )}
      {underfloor === undefined ? null : (
        <UnderfloorFields editor={editor} element={element} space={underfloor} />
      )}
    </>
  );
}

interface OfElement {
  readonly editor: Editor;
  readonly element: number;
}

function EdgeFields({ editor, element, edge }: OfElement & { edge: Edge }) {
  const changed = (change: Partial<Edge>): Partial<DesignElement> => ({
    edgeInsulation: { ...edge, ...change },
  });
  const figure = (key: 'reachMm' | 'thicknessMm' | 'conductivityWmK', label: string, hint?: string) => (
    <NumberField
      label={label}
      hint={hint}
      value={edge[key]}
      onValue={(value) =>
        editor.type(`edge ${element} ${key}`, (house) =>
          changeElement(house, element, changed({ [key]: value })),
        )
      }
    />
  );
  return (
    <>
      <h3>Along the edge of the slab</h3>
      <Choice
        label="The strip lies"
        hint="See the drawing of the footing."
        value={edge.lies}
        options={lying}
        onValue={(lies) => editor.act((house) => changeElement(house, element, changed({ lies })))}
      />
      {figure('reachMm', labels.reachMm, hints.reachMm)}
      {figure('thicknessMm', 'Strip’s thickness, mm', 'Of the insulation alone.')}
      {figure('conductivityWmK', 'Strip’s conductivity, W/(mK)', 'From its data sheet (λ).')}
    </>
  );
}

function UnderfloorFields({ editor, element, space }: OfElement & { space: Underfloor }) {
  const put = (change: Partial<Underfloor>) => (house: Editor['house']) =>
    changeElement(house, element, { underfloor: { ...space, ...change } });
  const figure = (key: Exclude<keyof Underfloor, 'shelter'>, hint = hints[key]) => (
    <NumberField
      label={labels[key]}
      hint={hint}
      value={space[key]}
      onValue={(value) => editor.type(`underfloor ${element} ${key}`, put({ [key]: value }))}
    />
  );
  return (
    <>
      <h3>{labels.underfloor}</h3>
      {figure('heightMm')}
      {figure('wallUValue')}
      {figure('openingMm2PerM', 'Of its vents, along outside walls. 1500 when left out.')}
      {figure('groundResistanceM2KW')}
      {figure('windSpeedMS')}
      <Choice
        label={labels.shelter}
        hint="Wind airs the space."
        value={space.shelter ?? 'average'}
        options={shelters}
        onValue={(shelter) => editor.act(put({ shelter }))}
      />
    </>
  );
}
