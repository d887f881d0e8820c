/** The links of a house for those who live in it: what stands in one, and the cookie that it becomes. */
import { randomBytes } from 'node:crypto';
import type { Context } from 'hono';
import { getCookie } from 'hono/cookie';
import { refused } from '../refused.ts';
import type { Reading } from '../store/reading.ts';
import { sha256 } from '../store/sha256.ts';
import type { Access } from './access.ts';

/** Seeing the results of a house; adding later exports of its loggers as well. */
export const linkScopes = ['see', 'add'] as const;
export type LinkScope = (typeof linkScopes)[number];

/** A link that is in use. */
export interface LinkInUse {
  readonly number: number;
  readonly house: string;
  readonly scope: LinkScope;
  /** [s] */
  readonly until: number;
}

/** 192 random bits. Only the hash is stored: whoever reads the database can open no link. */
export function newLink(): { readonly token: string; readonly hash: string } {
  const token = randomBytes(24).toString('base64url');
  return { token, hash: sha256(token) };
}

/** It goes to the addresses of the link's own API only. */
export const LINK_COOKIE_PATH = '/api/shared';
export const linkCookieName = ({ secure }: Access) => (secure ? '__Secure-stillwarm-link' : 'stillwarm-link');

/** The link of a token while it holds: not revoked, not expired, its house still there; null else. */
export function linkOf(token: string | undefined, reading: Reading): LinkInUse | null {
  const link = token === undefined ? null : reading.link(sha256(token));
  return link === null || link.until <= Date.now() / 1000 ? null : link;
}

/** Looked up anew at each request, so that a revoked link ends at once. @throws Refused when there is none */
export function linkIn(c: Context, access: Access, reading: Reading): LinkInUse {
  const link = linkOf(getCookie(c, linkCookieName(access)), reading);
  if (link === null) throw linkEnded();
  return link;
}

export const linkEnded = () =>
  refused(
    401,
    'link-ended',
    'This link does not open anything any more: it has run out or was taken back.',
    'Open the link once more as you were sent it; if that does not help, ask for a new one.',
  );
