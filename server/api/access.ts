/** Signing in and out. */
import { getConnInfo } from '@hono/node-server/conninfo';
import { type Context, Hono } from 'hono';
import { deleteCookie, getCookie, setCookie } from 'hono/cookie';
import type { CookieOptions } from 'hono/utils/cookie';
import { z } from 'zod';
import type { Access } from '../access/access.ts';
import { isSignedIn, sessionCookieName } from '../access/guard.ts';
import { matches } from '../access/passphrase.ts';
import { LONGEST_SESSION } from '../access/sessions.ts';
import { Refused, refused } from '../refused.ts';
import type { AccessAnswer } from './accessShapes.ts';
import { checkedJson } from './validate.ts';

const signIn = z.strictObject({ passphrase: z.string() });

export const accessApi = (access: Access) => {
  const { door, secure } = access;
  const cookie = sessionCookieName(access);
  // Strict: only our own pages ask the API, and they are of the same site however one came to them.
  const options: CookieOptions = { path: '/', httpOnly: true, sameSite: 'Strict', secure };
  const kindOf = (c: Context): AccessAnswer['kind'] =>
    door === null ? 'this machine' : isSignedIn(c, access) ? 'signed in' : 'not signed in';
  return new Hono()
    .get('/', (c) => c.json({ kind: kindOf(c) } satisfies AccessAnswer))
    .post('/sign-in', checkedJson(signIn), async (c) => {
      const hash = door?.passphrase() ?? null;
      if (door === null || hash === null) throw noPassphrase();
      if (secure && c.req.header('origin') !== access.reach.origin) throw onlyByTls(access.reach.origin);
      const from = addressOf(c);
      const wait = door.throttle.wait(from);
      if (wait > 0) throw tooOften(wait);
      door.throttle.guess(from);
      if (!(await matches(c.req.valid('json').passphrase, hash))) throw wrong(door.throttle.wait(from));
      door.throttle.right(from);
      door.sessions.end(getCookie(c, cookie));
      setCookie(c, cookie, door.sessions.begin(hash), { ...options, maxAge: LONGEST_SESSION });
      return c.json({ kind: 'signed in' } satisfies AccessAnswer);
    })
    .post('/sign-out', (c) => {
      door?.sessions.end(getCookie(c, cookie));
      deleteCookie(c, cookie, options);
      return c.json({ kind: kindOf(c) } satisfies AccessAnswer);
    });
};

/** Of the other end of the line; what a header says of it is not believed. */
function addressOf(c: Context): string {
  return c.env === undefined || !('incoming' in c.env)
    ? 'unknown'
    : (getConnInfo(c).remote.address ?? 'unknown');
}

const noPassphrase = () =>
  refused(
    409,
    'no-passphrase',
    'No passphrase is set here.',
    'Set one where the program runs: stillwarm passphrase.',
  );

const onlyByTls = (origin: string | null) =>
  refused(403, 'only-by-tls', 'Signing in is possible by TLS only.', `Open ${origin} instead.`);

const wrong = (wait: number) =>
  new Refused(401, [
    {
      code: 'wrong-passphrase',
      text: 'This is not the passphrase.',
      remedy: wait > 0 ? `Wait ${durationOf(wait)}, then try again.` : 'Try again.',
    },
  ]);

const tooOften = (wait: number) =>
  refused(
    429,
    'too-many-guesses',
    'There were too many wrong ones.',
    `Wait ${durationOf(wait)}, then try again.`,
  );

const durationOf = (seconds: number) =>
  seconds < 120 ? `${seconds} s` : `${Math.ceil(seconds / 60)} minutes`;
