/** Readings from a script or a gateway: a log as the logger writes it, or the same as JSON. */
import { type Context, Hono } from 'hono';
import { z } from 'zod';
import { houseIn } from '../jobs/storedFolder.ts';
import { noSuchHouse, refused } from '../refused.ts';
import type { Services } from '../services.ts';
import { insidePath } from './insidePath.ts';
import { asCsv } from './readingsAsCsv.ts';
import { checkedQuery, parse, textOrJson } from './validate.ts';

const MOST_COLUMNS = 50;
const MOST_READINGS = 100_000;
const text = z
  .string()
  .trim()
  .min(1)
  .max(200)
  .regex(/^[^\r\n]*$/, 'one line');

/** Which logger, when the body is a log as it is: the name of its file. */
const named = z.strictObject({
  file: text.optional().describe("the logger's file, when the body is text/csv"),
});

const instant = z
  .union([z.iso.datetime({ offset: true }), z.number().min(-8.64e12).max(8.64e12)])
  .describe('ISO 8601 with an offset or Z, or seconds since 1970 UTC');

export const sentReadings = z
  .strictObject({
    file: text.describe("the logger's file, as house.json names it"),
    columns: z
      .array(text)
      .min(1)
      .max(MOST_COLUMNS)
      .describe('as in the header of that file, with the unit: "Temperature (°C)"'),
    readings: z
      .array(z.tuple([instant], z.number().nullable()))
      .min(1)
      .max(MOST_READINGS)
      .describe('an instant, then a value for each column; null where there is none'),
  })
  .superRefine(({ columns, readings }, context) => {
    readings.forEach((row, i) => {
      if (row.length !== columns.length + 1)
        context.addIssue({
          code: 'custom',
          path: ['readings', i],
          message: `an instant and ${columns.length} values, not ${row.length - 1}`,
        });
    });
  });
export type SentReadings = z.output<typeof sentReadings>;

export const sentReadingsApi = ({ reading, addLaterExport }: Services) => {
  async function fromJson(c: Context, id: string) {
    const body: unknown = await c.req.json().catch(() => {
      throw noJson();
    });
    const sent = parse(sentReadings, body, 'Body');
    const json = reading.json(id);
    const house = json === null ? null : houseIn(json);
    if (house?.kind !== 'house') throw noSuchHouse();
    const csv = asCsv(sent, house.house);
    return addLaterExport(id, insidePath(sent.file), new Blob([csv]).stream(), 'posted');
  }
  return new Hono().post(
    '/:id/readings',
    checkedQuery(named),
    textOrJson('text/csv', sentReadings),
    async (c) => {
      const id = c.req.param('id');
      if (reading.house(id) === null) throw noSuchHouse();
      if (/^application\/json\b/i.test(c.req.header('content-type') ?? ''))
        return c.json(await fromJson(c, id));
      const { file } = c.req.valid('query');
      if (file === undefined) throw noFile();
      return c.json(await addLaterExport(id, insidePath(file), c.req.raw.body, 'posted'));
    },
  );
};

const noJson = () => refused(400, 'request-not-understood', 'Malformed JSON in request body.');

const noFile = () =>
  refused(
    400,
    'file-not-named',
    'It is not said which logger these readings are of.',
    "Name the logger's file in the address: ?file=living.csv",
  );
