/** Before every route of the API: the builder who has signed in, the holder of a link, or nobody. */
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import { matchedRoutes } from 'hono/route';
import { refused } from '../refused.ts';
import type { Reading } from '../store/reading.ts';
import type { Access } from './access.ts';
import { linkRoutes, openRoutes } from './linkRoutes.ts';
import { linkIn } from './links.ts';

/** The prefix binds it to this host and to TLS, where there is TLS. */
export const sessionCookieName = ({ secure }: Access) => (secure ? '__Host-stillwarm' : 'stillwarm');

export const isSignedIn = (c: Context, access: Access) =>
  access.door === null ||
  access.door.sessions.holds(getCookie(c, sessionCookieName(access)), access.door.passphrase());

/** Closed unless it is written down as open (`linkRoutes.ts`), or the builder asks. */
export const guard = (access: Access, reading: Reading): MiddlewareHandler =>
  createMiddleware(async (c, next) => {
    const routes = new Set(handlersOf(c));
    const all = (known: { has(route: string): boolean }) =>
      routes.size > 0 && [...routes].every((it) => known.has(it));
    if (all(openRoutes)) return next();
    if (all(linkRoutes)) {
      const { scope } = linkIn(c, access, reading);
      if (scope !== 'add' && [...routes].some((it) => linkRoutes.get(it) === 'add')) throw seeOnly();
      return next();
    }
    if (!isSignedIn(c, access)) throw signInFirst();
    return next();
  });

/** "GET /api/houses/:id" of whatever of the API would answer: not what stands before every route, nor the pages behind. */
const handlersOf = (c: Context) =>
  matchedRoutes(c).flatMap(({ method, path }) =>
    method === 'ALL' || !path.startsWith('/api') ? [] : [`${method} ${path}`],
  );

const signInFirst = () =>
  refused(401, 'sign-in-first', 'This is for those who have signed in.', 'Sign in with the passphrase.');

const seeOnly = () =>
  refused(
    403,
    'link-sees-only',
    'This link shows results and adds nothing.',
    'Ask whoever sent it for one that may add readings.',
  );
