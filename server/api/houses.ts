/** The houses: listed, looked at, put away and brought back, deleted. */
import { Hono } from 'hono';
import { z } from 'zod';
import type { Assessment } from '../../src/assessment.ts';
import type { House } from '../../src/house.ts';
import { isoWithOffset } from '../../src/sky/zone.ts';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { HouseDetail, HousesAnswer, KeptImport } from './shapes.ts';
import { summaryOf } from './summaryOf.ts';
import { checkedJson } from './validate.ts';

const away = z.strictObject({ away: z.boolean() });

export const housesApi = (services: Services) => {
  const { reading, writer, assessments, bringings, demonstration } = services;
  const find = (id: string) => {
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return house;
  };
  return new Hono()
    .get('/', (c) => {
      const answer: HousesAnswer = {
        houses: reading.houses().map((house) => summaryOf(house, services)),
        demonstrationComing: demonstration.isComing(),
      };
      return c.json(answer);
    })
    .get('/:id', (c) => {
      const id = c.req.param('id');
      const summary = summaryOf(find(id), services);
      const assessment = reading.assessment(id);
      const detail: HouseDetail = {
        ...summary,
        house: houseOf(reading.json(id)),
        assessment: assessment === null ? null : (JSON.parse(assessment) as Assessment),
        files: reading.files(id),
        imports: importsOf(reading.versions(id), find(id).timeZone),
      };
      return c.json(detail);
    })
    .put('/:id/away', checkedJson(away), async (c) => {
      const { id } = find(c.req.param('id'));
      await writer.putAway(id, c.req.valid('json').away);
      return c.json(summaryOf(find(id), services));
    })
    .post('/:id/undo', async (c) => {
      const { id } = find(c.req.param('id'));
      await services.undo(id);
      return c.json(summaryOf(find(id), services));
    })
    .delete('/:id', async (c) => {
      const { id } = find(c.req.param('id'));
      await writer.deleteHouse(id);
      await assessments.cancel(id);
      await bringings.dropOnto(id);
      assessments.changed(id);
      return c.body(null, 204);
    });
};

/** Of each version what is new in it. */
const importsOf = (versions: ReturnType<Services['reading']['versions']>, timeZone: string): KeptImport[] =>
  versions.map(({ kept, files }, i) => {
    const before = new Map(versions[i - 1]?.files.map(({ file, sha256 }) => [file, sha256]));
    return {
      at: kept === null ? null : isoWithOffset(kept, timeZone),
      files: files.flatMap(({ file, sha256 }) => (before.get(file) === sha256 ? [] : [file])),
    };
  });

/** It was checked when it was brought: only its text is read here. */
function houseOf(json: Uint8Array | null): House {
  if (json === null) throw noSuchHouse();
  return JSON.parse(new TextDecoder().decode(json));
}
