/**
 * What a link reaches of its one house. No address here names a house: it follows from the link. `linkRoutes.ts` has
 * the list without which nothing of this is open.
 */
import { type Context, Hono } from 'hono';
import type { Assessment } from '../../src/assessment.ts';
import type { Access } from '../access/access.ts';
import { type LinkInUse, linkIn } from '../access/links.ts';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { SharedHouse } from './accessShapes.ts';
import { nightsApi } from './nights.ts';
import { readingsApi } from './readings.ts';
import type { Progress, ReadingsAnswer } from './shapes.ts';
import { sharedBringingsApi } from './sharedBringings.ts';
import { sheetApi } from './sheet.ts';
import { summaryOf } from './summaryOf.ts';
import { tellAsItGoes } from './tellAsItGoes.ts';

export const sharedApi = (services: Services, access: Access) => {
  const { reading, assessments, closing } = services;
  const linkFor = (c: Context) => linkIn(c, access, reading);
  const find = ({ house: id }: LinkInUse) => {
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return house;
  };
  // Answered by the very routes that the builder asks.
  const nights = nightsApi(services).onError(passOn);
  const readings = readingsApi(services).onError(passOn);
  const sheet = sheetApi(services).onError(passOn);
  return new Hono()
    .get('/', (c) => {
      const link = linkFor(c);
      const house = find(link);
      const { name, invented, lastReading, state } = summaryOf(house, services);
      const answer: SharedHouse = {
        name,
        timeZone: house.timeZone,
        invented,
        lastReading,
        state,
        assessment: resultOnly(reading.assessment(house.id)),
        mayAdd: link.scope === 'add',
        until: link.until,
      };
      return c.json(answer);
    })
    .get('/nights', (c) => nights.request(`/${linkFor(c).house}/nights`))
    .get('/readings', async (c) => {
      const response = await readings.request(`/${linkFor(c).house}/readings${new URL(c.req.url).search}`);
      const { notes: _, leftOut, ...rest } = (await response.json()) as ReadingsAnswer;
      // What the builder noted is for the builder.
      return c.json({ ...rest, notes: [], leftOut: leftOut.map((it) => ({ ...it, why: null })) });
    })
    .get('/progress', (c) => {
      const link = linkFor(c);
      const stillHolds = () => reading.links(link.house).some(({ number }) => number === link.number);
      return tellAsItGoes(c, {
        now: () => (stillHolds() ? ({ state: assessments.stateOf(find(link)) } satisfies Progress) : null),
        watch: (changed) => assessments.watch(link.house, changed),
        closing,
      });
    })
    .get('/first-page.html', (c) => sheet.request(`/${linkFor(c).house}/first-page.html`))
    .route('/bringings', sharedBringingsApi(services, linkFor));
};

/** A refusal is told where all are. */
function passOn(error: Error): never {
  throw error;
}

/** Without the files, what was understood of them, and what the builder is to check. */
function resultOnly(json: string | null): Assessment | null {
  if (json === null) return null;
  return { ...(JSON.parse(json) as Assessment), imports: [], warnings: [] };
}
