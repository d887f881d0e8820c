/** What the calculation noticed of an element, each at the layer that it is about. */
import type { ElementDesign } from '../../src/fabric/index.ts';
import type { DesignElement } from '../../src/house.ts';
import { say } from '../../src/words/index.ts';
import { ProblemList } from '../parts/ProblemList.tsx';
import { labelled } from './labels.ts';

export function ElementFindings({ design, entry }: { design: ElementDesign; entry: DesignElement }) {
  const messages = design.findings.map(say).map(({ code, text, remedy, where }) => ({
    code,
    text: `${aboutLayer(where?.key, entry)}${labelled(text)}`,
    ...(remedy === undefined ? {} : { remedy: labelled(remedy) }),
  }));
  return <ProblemList problems={messages} />;
}

/** "elements[1].buildUp.layers[2].bridge" -> the name of that layer. */
function aboutLayer(key: string | undefined, { buildUp }: DesignElement): string {
  const layer = /layers\[(\d+)\]/.exec(key ?? '');
  const name = layer === null ? undefined : buildUp?.layers[Number(layer[1])]?.name;
  return name === undefined ? '' : `${name}: `;
}
