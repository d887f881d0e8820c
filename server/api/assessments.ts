/** The assessment of a house: asked for again, cancelled, followed as it goes. */
import { Hono } from 'hono';
import { streamSSE } from 'hono/streaming';
import { noSuchHouse } from '../refused.ts';
import type { Services } from '../services.ts';
import type { Progress } from './shapes.ts';

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
      return streamSSE(c, async (stream) => {
        let told = '';
        let wake = () => {};
        const ended = () => stream.aborted || stream.closed || closing.aborted || reading.house(id) === null;
        const stopWatching = assessments.watch(id, () => wake());
        stream.onAbort(() => wake());
        const wakeUp = () => wake();
        closing.addEventListener('abort', wakeUp);
        while (!ended()) {
          const changed = new Promise<void>((resolve) => {
            wake = resolve;
          });
          const data = JSON.stringify(progressOf(id));
          if (data !== told) await stream.writeSSE({ data });
          told = data;
          if (!ended()) await changed;
        }
        stopWatching();
        closing.removeEventListener('abort', wakeUp);
      });
    });
};
