/** The published JSON Schemas, made from the schemas in `src/`. */
import { z } from 'zod';
import { assessmentSchema } from '../../src/assessment.ts';
import { houseSchema } from '../../src/house.ts';

const text = (title: string, schema: z.ZodType) =>
  `${JSON.stringify({ title, ...z.toJSONSchema(schema, { io: 'input' }) }, null, 2)}\n`;

export const published: Readonly<Record<string, string>> = {
  'house.schema.json': text('house.json', houseSchema),
  'assessment.schema.json': text('The assessment that `assess --json` prints', assessmentSchema),
};
