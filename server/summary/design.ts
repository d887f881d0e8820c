/** The house as drawn, on the terminal. */
import type { Assessment } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { bullet, heading } from './text.ts';

export function designText({ design }: Assessment): string[] {
  if (design === null) return [];
  return [
    heading('As drawn', '-'),
    ...design.elements.map(
      ({ name, areaM2, uValue, heatLossWK }) =>
        `  ${name.padEnd(28)} ${figures.area(areaM2).padStart(9)}  ` +
        (uValue === null || heatLossWK === null
          ? 'U-value not known'
          : `${figures.transmittance(uValue)}  ${figures.heatLoss(heatLossWK).padStart(9)}`),
    ),
    `  Thermal bridges ${figures.heatLoss(design.bridgesWK)}, ventilation ${figures.heatLoss(design.ventilationWK)}; in all ${figures.heatLoss(design.heatLossWK)}` +
      (design.heatLossAsTestedWK === null
        ? ''
        : `, as tested ${figures.heatLoss(design.heatLossAsTestedWK)}`),
    ...[...design.notes, ...design.elements.flatMap(({ notes }) => notes)].map(bullet),
    '',
  ];
}
