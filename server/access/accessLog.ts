/** A line for each request when others are served: nothing in it that opens anything. */
import type { HttpBindings } from '@hono/node-server';
import type { Context, MiddlewareHandler } from 'hono';
import { createMiddleware } from 'hono/factory';
import { matchedRoutes } from 'hono/route';

/** Time, method, the route's pattern instead of the address, status, bytes on the wire, milliseconds. */
export const accessLog = (tell: (line: string) => void): MiddlewareHandler =>
  createMiddleware(async (c, next) => {
    const begun = performance.now();
    const at = new Date().toISOString();
    await next();
    const { outgoing } = (c.env ?? {}) as Partial<HttpBindings>;
    const socket = outgoing?.socket;
    const before = socket?.bytesWritten ?? 0;
    const line = (bytes: string) => {
      const took = Math.round(performance.now() - begun);
      tell(`${at} ${c.req.method} ${patternOf(c)} ${c.res.status} ${bytes} ${took} ms`);
    };
    // Under a real server the answer is on its way only now.
    if (outgoing === undefined) line('- B');
    else outgoing.once('close', () => line(`${(socket?.bytesWritten ?? 0) - before} B`));
  });

/** Never the address itself: it may hold the token of a link, names of files, or anything at all. */
const patternOf = (c: Context) => matchedRoutes(c).find(({ method }) => method !== 'ALL')?.path ?? '-';
