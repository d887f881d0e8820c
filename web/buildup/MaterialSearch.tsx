/** Another material for the layer, found by what it is called on site. */
import { useState } from 'preact/hooks';
import { findMaterials, type Material } from '../../src/fabric/index.ts';
import { FormField } from '../parts/FormField.tsx';
import { sourceWords } from './sourceWords.ts';

const MOST = 8;

export function MaterialSearch({ onPick }: { onPick: (material: Material) => void }) {
  const [text, setText] = useState('');
  const wanted = text.trim() !== '';
  const found = wanted ? findMaterials(text) : [];
  return (
    <div class="buildup-materials">
      <FormField label="Another material, by what it is called on site">
        {(ties) => (
          <input
            {...ties}
            type="text"
            autocomplete="off"
            value={text}
            onInput={({ currentTarget }) => setText(currentTarget.value)}
          />
        )}
      </FormField>
      <p class="spoken" role="status">
        {wanted ? `${found.length} materials found` : ''}
      </p>
      {wanted && found.length === 0 ? (
        <p class="small">
          The library has nothing of that name. Type the figures of its data sheet into the fields above.
        </p>
      ) : null}
      <ul>
        {found.slice(0, MOST).map((material) => (
          <li key={material.name}>
            <button
              type="button"
              class="quiet"
              onClick={() => {
                onPick(material);
                setText('');
              }}
            >
              {material.name}
            </button>
            <p class="small lesser">{figuresOf(material)}</p>
          </li>
        ))}
      </ul>
      {found.length > MOST ? (
        <p class="small lesser">And {found.length - MOST} more: type another word to narrow them down.</p>
      ) : null}
    </div>
  );
}

const figuresOf = (material: Material): string =>
  material.kind === 'air'
    ? 'Resists by its thickness and the flow of heat, ISO 6946.'
    : sourceWords(material).join(' ');
