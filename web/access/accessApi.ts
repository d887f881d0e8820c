/** What is asked of the server about who may look, and by whom a link was given. */
import type {
  AccessAnswer,
  LinksAnswer,
  MadeLink,
  SharedBringing,
  SharedHouse,
} from '../../server/api/accessShapes.ts';
import type { NightsAnswer, Progress, ReadingsAnswer } from '../../server/api/shapes.ts';
import { type AskedSpan, ask, follow, queryOf } from '../api.ts';

export const getAccess = (signal?: AbortSignal) => ask<AccessAnswer>('GET', '/access', { signal });
export const signIn = (passphrase: string) =>
  ask<AccessAnswer>('POST', '/access/sign-in', { json: { passphrase } });
export const signOut = () => ask<AccessAnswer>('POST', '/access/sign-out');

const house = (id: string) => `/houses/${encodeURIComponent(id)}`;
export const getLinks = (id: string, signal?: AbortSignal) =>
  ask<LinksAnswer>('GET', `${house(id)}/links`, { signal });
export type WantedLink = Pick<LinksAnswer['links'][number], 'scope' | 'whose'> & { readonly days: number };
export const makeLink = (id: string, wanted: WantedLink) =>
  ask<MadeLink>('POST', `${house(id)}/links`, { json: wanted });
export const takeBackLink = (id: string, number: number) =>
  ask<LinksAnswer>('DELETE', `${house(id)}/links/${number}`);
/** @param until a date; null when nothing is agreed any more */
export const keepUntil = (id: string, until: string | null) =>
  ask<LinksAnswer>('PUT', `${house(id)}/keep-until`, { json: { until } });
export const namelessAddress = (id: string) => `/api${house(id)}/nameless.zip`;

export const getShared = (signal?: AbortSignal) => ask<SharedHouse>('GET', '/shared', { signal });
export const getSharedNights = (signal?: AbortSignal) =>
  ask<NightsAnswer>('GET', '/shared/nights', { signal });
export const getSharedReadings = (span: AskedSpan, signal?: AbortSignal) =>
  ask<ReadingsAnswer>('GET', `/shared/readings?${queryOf(span)}`, { signal });
export const followShared = (tell: (progress: Progress) => void) => follow('/shared/progress', tell);
export const FIRST_PAGE = '/api/shared/first-page.html';

const bringing = (id: string) => `/shared/bringings/${encodeURIComponent(id)}`;
export const startAdding = () => ask<{ id: string }>('POST', '/shared/bringings');
export const sendShared = (id: string, file: File) =>
  ask<unknown>('PUT', `${bringing(id)}/files/${encodeURIComponent(file.name)}`, { file });
export const getAdded = (id: string) => ask<SharedBringing>('GET', bringing(id));
export const keepAdded = (id: string) => ask<void>('POST', `${bringing(id)}/keep`);
export const dropAdded = (id: string) => ask<void>('DELETE', bringing(id));
