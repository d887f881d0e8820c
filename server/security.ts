/** Who is answered at all, and what a browser may do with the answer. */
import type { MiddlewareHandler } from 'hono';
import { createMiddleware } from 'hono/factory';
import { secureHeaders } from 'hono/secure-headers';
import type { Access } from './access/access.ts';
import { refused } from './refused.ts';

/**
 * Only by a name of its own: a foreign name that leads here (DNS rebinding) is refused, and so is a request that
 * another site's page sends. Where others are served, what changes something must come from our own page.
 */
export const ownHostOnly = ({ reach, door }: Access): MiddlewareHandler =>
  createMiddleware(async (c, next) => {
    const host = c.req.header('host') ?? '';
    if (!reach.answers(host))
      throw refused(
        403,
        'foreign-host',
        'This address is not answered here.',
        'Open the dashboard by the address that it printed when it started.',
      );
    const origin = c.req.header('origin');
    const site = c.req.header('sec-fetch-site') ?? 'none';
    const fromElsewhere = c.req.path.startsWith('/api') && site !== 'none' && site !== 'same-origin';
    const unstated = door !== null && origin === undefined && !READS.includes(c.req.method);
    if (fromElsewhere || unstated || (origin !== undefined && !reach.mayAsk(origin, host)))
      throw refused(403, 'foreign-origin', 'Another site may not ask this dashboard for anything.');
    await next();
  });

const READS = ['GET', 'HEAD'];

/**
 * No script, style, picture or connection but our own; never framed; no HSTS, because this is plain http. A page that
 * states a policy of its own keeps it: the handover sheet, which has its style in itself and allows nothing else.
 */
export const closedHeaders = secureHeaders({
  contentSecurityPolicy: {
    defaultSrc: ["'self'"],
    scriptSrc: ["'self'"],
    styleSrc: ["'self'"],
    imgSrc: ["'self'"],
    connectSrc: ["'self'"],
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: ["'self'"],
    frameAncestors: ["'none'"],
  },
  crossOriginOpenerPolicy: 'same-origin',
  crossOriginResourcePolicy: 'same-origin',
  referrerPolicy: 'no-referrer',
  strictTransportSecurity: false,
  xContentTypeOptions: 'nosniff',
  xFrameOptions: 'DENY',
  overwrite: false,
});
