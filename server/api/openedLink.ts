/** A link as it is opened: it becomes a cookie, and leaves the address. */
import { Hono } from 'hono';
import { setCookie } from 'hono/cookie';
import type { Access } from '../access/access.ts';
import { LINK_COOKIE_PATH, linkCookieName, linkOf } from '../access/links.ts';
import type { Services } from '../services.ts';

export const openedLink = ({ reading }: Services, access: Access) =>
  new Hono().get('/:token', (c) => {
    const token = c.req.param('token');
    const link = linkOf(token, reading);
    c.header('Cache-Control', 'no-store');
    // Strict is enough although one comes from elsewhere, from a mail perhaps: only the page that follows, which is
    // our own, brings it. A link that has ended says so on that page.
    if (link !== null)
      setCookie(c, linkCookieName(access), token, {
        path: LINK_COOKIE_PATH,
        httpOnly: true,
        sameSite: 'Strict',
        secure: access.secure,
        expires: new Date(link.until * 1000),
      });
    return c.redirect(link === null ? '/shared?ended' : '/shared', 303);
  });
