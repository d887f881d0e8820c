/** The assessment of a house: asked for again, cancelled, followed as it goes. */
import { Hono } from 'hono';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Progress } from './shapes.ts';
import { tellAsItGoes } from './tellAsItGoes.ts';

export const assessmentsApi = ({ reading, assessments, closing }: Services) => {
  const find = (id: string) => {
    const house = reading.house(id);
    if (house === null) throw noSuchHouse();
    return house;
  };
  const progressOf = (id: string): Progress => ({ state: assessments.stateOf(find(id)) });
  return new Hono()
    .post('/:id/assessment', (c) => {
      const { id } = find(c.req.param('id'));
      assessments.start(id);
      return c.json(progressOf(id), 202);
    })
    .delete('/:id/assessment', async (c) => {
      const { id } = find(c.req.param('id'));
      await assessments.cancel(id);
      return c.json(progressOf(id));
    })
    .get('/:id/progress', (c) => {
      const { id } = find(c.req.param('id'));
      return tellAsItGoes(c, {
        now: () => (reading.house(id) === null ? null : progressOf(id)),
        watch: (changed) => assessments.watch(id, changed),
        closing,
      });
    });
};
