/** What the loss comes to: for each m², over a cold day, and over a year. Nothing of it is part of the house. */
import { useState } from 'preact/hooks';
import type { Design } from '../../src/fabric/index.ts';
import type { House } from '../../src/house.ts';
import { tied } from '../../src/sheet/drawing/tied.ts';
import { heatingOf } from './heatingWords.ts';
import { taken } from './Layers.tsx';
import { NumberField } from './TypedField.tsx';

export function HeatingOfHouse({ design, house }: { design: Design; house: House }) {
  const [inside, setInside] = useState(20);
  const [outside, setOutside] = useState(-3);
  if (design.heatLoss === null) return null;
  return (
    <details class="buildup-more">
      <summary>What that means for its heating</summary>
      <div class="buildup-fields screen-only">
        <NumberField
          label="Inside on the cold day, °C"
          hint="Of the air."
          value={inside}
          onValue={(it) => taken(it, setInside)}
        />
        <NumberField
          signed
          label="Outside on the cold day, °C"
          hint="What is usual where it stands."
          value={outside}
          onValue={(it) => taken(it, setOutside)}
        />
      </div>
      <ul class="buildup-workings">
        {heatingOf(design, house, inside, outside).map((sentence) => (
          <li key={sentence}>{tied(sentence)}</li>
        ))}
      </ul>
    </details>
  );
}
