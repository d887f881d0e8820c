/**
 * All that a link reaches, and the scope that it needs. What does not stand here is closed for links, so that a new
 * route is closed until someone writes it down.
 */
import type { LinkScope } from './links.ts';

export const linkRoutes: ReadonlyMap<string, LinkScope> = new Map([
  ['GET /api/shared', 'see'],
  ['GET /api/shared/nights', 'see'],
  ['GET /api/shared/readings', 'see'],
  ['GET /api/shared/progress', 'see'],
  ['GET /api/shared/first-page.html', 'see'],
  ['POST /api/shared/bringings', 'add'],
  ['PUT /api/shared/bringings/:bringing/files/:name', 'add'],
  ['GET /api/shared/bringings/:bringing', 'add'],
  ['POST /api/shared/bringings/:bringing/keep', 'add'],
  ['DELETE /api/shared/bringings/:bringing', 'add'],
]);

/** For everybody: who one is, signing in. */
export const openRoutes: ReadonlySet<string> = new Set([
  'GET /api/access',
  'POST /api/access/sign-in',
  'POST /api/access/sign-out',
]);
