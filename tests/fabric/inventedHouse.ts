/** An invented house; only what a test is about is given. */
import { type Design, designOf } from '../../src/fabric/design.ts';
import { type House, houseSchema } from '../../src/house.ts';

export const invented = (parts: object): House =>
  houseSchema.parse({
    name: 'Invented house',
    location: { latitude: 52, longitude: -1, timeZone: 'Europe/London' },
    loggers: [{ file: 'inside.csv', place: 'inside' }],
    ...parts,
  });

/** Its design; it must have elements. */
export function inventedDesign(parts: object): Design {
  const design = designOf(invented(parts));
  if (design === null) throw new Error('the house has elements');
  return design;
}

export const codesOf = (findings: readonly { code: string }[]) => findings.map((it) => it.code);
