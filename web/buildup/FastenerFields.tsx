/** Fasteners through the insulation of an element: wall ties, fixings of boards. */
import type { DesignElement } from '../../src/house.ts';
import { changeElement, elementAt } from './elementEdits.ts';
import { labels } from './labels.ts';
import { NumberField } from './TypedField.tsx';
import type { Editor } from './useEditor.ts';

type Fasteners = NonNullable<DesignElement['fasteners']>;

/** Stainless wall ties as they are usually set. PRACTICE */
const usual: Fasteners = { perM2: 2.5, areaMm2: 12.5, conductivityWmK: 17 };

export function FastenerFields({ editor, element }: { editor: Editor; element: number }) {
  const { fasteners } = elementAt(editor.house, element);
  const put = (wanted: Fasteners | undefined) =>
    editor.act((house) => changeElement(house, element, { fasteners: wanted }));
  if (fasteners === undefined)
    return (
      <button type="button" class="quiet screen-only" onClick={() => put(usual)}>
        Put wall ties or fixings through its insulation
      </button>
    );
  const figure = (key: keyof Fasteners, label: string, hint?: string) => (
    <NumberField
      label={label}
      hint={hint}
      value={fasteners[key]}
      onValue={(value) =>
        editor.type(`fasteners ${element} ${key}`, (house) =>
          changeElement(house, element, { fasteners: { ...fasteners, [key]: value } }),
        )
      }
    />
  );
  return (
    <>
      <div class="buildup-fields screen-only">
        <h3>{labels.fasteners}</h3>
        {figure('perM2', 'To each m²')}
        {figure('areaMm2', 'Cross-section, mm²')}
        {figure('conductivityWmK', labels.conductivityWmK, 'Stainless steel 17, steel 50.')}
        {figure('depthMm', 'Depth in it, mm', 'All of it when left out.')}
      </div>
      <button type="button" class="quiet screen-only" onClick={() => put(undefined)}>
        Take the fasteners out
      </button>
    </>
  );
}
