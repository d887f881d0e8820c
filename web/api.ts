/** The server's answers, one function per question. What is refused is thrown as `Refused`. */

import type { HumidityAnswer, HumidityProgress, LoggersAnswer } from '../server/api/loggerShapes.ts';
import type {
  BringingPreview,
  BringingProgress,
  HouseDetail,
  HouseSummary,
  HousesAnswer,
  NightsAnswer,
  Progress,
  ReadingsAnswer,
  Refusal,
  TakenFile,
} from '../server/api/shapes.ts';
import type { Message } from '../src/assessment.ts';
import type { HeatEntry, House, StageEntry } from '../src/house.ts';

/** What happened, where, and what to do, as the server says it. */
export class Refused extends Error {
  readonly problems: readonly Message[];
  constructor(problems: readonly Message[]) {
    super(problems.map(({ text }) => text).join(' '));
    this.problems = problems;
  }
}

/** The problems of anything that was thrown; an abort is none. */
export const problemsOf = (thrown: unknown): readonly Message[] =>
  thrown instanceof Refused ? thrown.problems : [notReached];

const notReached: Message = {
  code: 'server-not-reached',
  text: 'The program behind this page does not answer.',
  remedy: 'See whether it still runs where it was started (npm start), then load the page again.',
};

const house = (id: string) => `/houses/${encodeURIComponent(id)}`;
const night = (id: string, date: string) => `${house(id)}/nights/${encodeURIComponent(date)}/decision`;
const bringing = (id: string) => `/bringings/${encodeURIComponent(id)}`;

export const getHouses = (signal?: AbortSignal) => ask<HousesAnswer>('GET', '/houses', { signal });
export const getHouse = (id: string, signal?: AbortSignal) => ask<HouseDetail>('GET', house(id), { signal });
export const getNights = (id: string, signal?: AbortSignal) =>
  ask<NightsAnswer>('GET', `${house(id)}/nights`, { signal });
export const deleteHouse = (id: string) => ask<void>('DELETE', house(id));
export const putAway = (id: string, away: boolean) =>
  ask<void>('PUT', `${house(id)}/away`, { json: { away } });
export const assessAgain = (id: string) => ask<Progress>('POST', `${house(id)}/assessment`);
export const stopAssessing = (id: string) => ask<Progress>('DELETE', `${house(id)}/assessment`);
export const storeDemonstration = () => ask<{ id: string }>('POST', '/demonstration');
/** @param onto the stored house that is added to; null for a house of its own */
export const startBringing = (onto: string | null) =>
  ask<{ id: string }>('POST', '/bringings', onto === null ? {} : { json: { onto } });
export const getBringing = (id: string, signal?: AbortSignal) =>
  ask<BringingPreview>('GET', bringing(id), { signal });
export const keepBringing = (id: string) => ask<{ id: string }>('POST', `${bringing(id)}/keep`);
/** Takes back what was kept last. */
export const undoImport = (id: string) => ask<void>('POST', `${house(id)}/undo`);
/** Puts a night in or leaves it out, with the reason; the house is then assessed again. */
export const decideNight = (id: string, date: string, decision: { used: boolean; why?: string }) =>
  ask<HouseSummary>('PUT', night(id, date), { json: decision });
/** Leaves a night to the rules again. */
export const undecideNight = (id: string, date: string) => ask<HouseSummary>('DELETE', night(id, date));
/** @param note at a local time of the house */
export const addNote = (id: string, note: { at: string; text: string }) =>
  ask<HouseSummary>('POST', `${house(id)}/notes`, { json: note });
export const removeNote = (id: string, note: { at: string; text: string }) =>
  ask<HouseSummary>('DELETE', `${house(id)}/notes`, { json: note });
/** @param stages those that are moved, with local times of the house */
export const moveStages = (id: string, stages: readonly { name: string; from: string; to: string }[]) =>
  ask<HouseSummary>('PUT', `${house(id)}/stages`, { json: { stages } });
/** @param stage with every key that it has in house.json */
export const addStage = (id: string, stage: StageEntry) =>
  ask<HouseSummary>('POST', `${house(id)}/stages`, { json: stage });
export const removeStage = (id: string, name: string) =>
  ask<HouseSummary>('DELETE', `${house(id)}/stages`, { json: { name } });
/** house.json as it was written. */
export async function houseText(id: string, signal?: AbortSignal): Promise<string> {
  const response = await fetch(`/api${house(id)}/house.json`, { signal: signal ?? null });
  const text = await response.text();
  if (!response.ok) throw toSignIn(refusalIn(text));
  return text;
}
/** @param was house.json as this page knows it; it is refused when it was changed meanwhile */
export const keepHouse = (id: string, was: House, changed: House) =>
  ask<HouseSummary>('PUT', `${house(id)}/house`, { json: { was, house: changed } });
/** Heat read off a meter by eye; the house is then assessed again. */
export const addHeat = (id: string, entry: HeatEntry) =>
  ask<HouseSummary>('POST', `${house(id)}/heat`, { json: entry });
export const removeHeat = (id: string, entry: HeatEntry) =>
  ask<HouseSummary>('DELETE', `${house(id)}/heat`, { json: entry });
export const getLoggers = (id: string, signal?: AbortSignal) =>
  ask<LoggersAnswer>('GET', `${house(id)}/loggers`, { signal });
export const dropBringing = (id: string) => ask<void>('DELETE', bringing(id));
export const folderAddress = (id: string) => `/api${house(id)}/folder.zip`;

/** @param from, to instants [s]; the whole record when left out */
export const getReadings = (id: string, span: AskedSpan, signal?: AbortSignal) =>
  ask<ReadingsAnswer>('GET', `${house(id)}/readings?${queryOf(span)}`, { signal });

/** @param span as of the readings */
export const getHumidity = (id: string, span: AskedSpan, signal?: AbortSignal) =>
  ask<HumidityAnswer>('GET', `${house(id)}/humidity?${queryOf(span)}`, { signal });

export interface AskedSpan {
  readonly from?: number;
  readonly to?: number;
  readonly points: number;
}

export function queryOf({ from, to, points }: AskedSpan): URLSearchParams {
  const query = new URLSearchParams({ points: String(points) });
  if (from !== undefined) query.set('from', String(from));
  if (to !== undefined) query.set('to', String(to));
  return query;
}

/** Tells of an assessment as it goes. @returns what stops the telling */
export const followAssessment = (id: string, tell: (progress: Progress) => void) =>
  follow(`${house(id)}/progress`, tell);

/** Tells how far the humidity is worked out while it is waited for. @returns what stops the telling */
export const followHumidity = (id: string, tell: (progress: HumidityProgress) => void) =>
  follow(`${house(id)}/humidity/progress`, tell);

/** Tells of the reading of what was brought as it goes. @returns what stops the telling */
export const followReading = (id: string, tell: (progress: BringingProgress) => void) =>
  follow(`${bringing(id)}/progress`, tell);

export function follow<T>(path: string, tell: (state: T) => void): () => void {
  const events = new EventSource(`/api${path}`);
  events.onmessage = ({ data }) => tell(JSON.parse(data));
  return () => events.close();
}

/** Sends one file as it is; an `XMLHttpRequest`, because `fetch` does not tell how far an upload has come. */
export function sendFile(
  id: string,
  path: string,
  file: Blob,
  { tell, signal }: { readonly tell: (share: number) => void; readonly signal: AbortSignal },
): Promise<TakenFile> {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    const stop = () => request.abort();
    signal.addEventListener('abort', stop);
    request.upload.onprogress = ({ loaded, total }) => tell(total > 0 ? loaded / total : 1);
    request.onload = () => {
      const ok = request.status >= 200 && request.status < 300;
      if (ok) resolve(JSON.parse(request.responseText));
      else reject(toSignIn(refusalIn(request.responseText)));
    };
    request.onerror = () => reject(new Refused([notReached]));
    request.onabort = () => reject(new DOMException('Stopped.', 'AbortError'));
    request.onloadend = () => signal.removeEventListener('abort', stop);
    request.open('PUT', `/api${bringing(id)}/files/${path.split('/').map(encodeURIComponent).join('/')}`);
    request.setRequestHeader('Content-Type', 'application/octet-stream');
    if (signal.aborted) reject(new DOMException('Stopped.', 'AbortError'));
    else request.send(file);
  });
}

/** @returns the sheet or the pack with these photos in it, as the file that it is */
export async function withPhotos(
  id: string,
  file: 'sheet.html' | 'pack.zip',
  photos: readonly File[],
): Promise<Blob> {
  const body = new FormData();
  for (const photo of photos) body.append('photo', photo);
  const response = await fetch(`/api${house(id)}/${file}`, { method: 'POST', body });
  if (!response.ok) throw refusalIn(await response.text());
  return response.blob();
}

type Method = 'GET' | 'PUT' | 'POST' | 'DELETE';

interface Sent {
  readonly json?: unknown;
  readonly file?: Blob;
  readonly signal?: AbortSignal | undefined;
}

export async function ask<T>(method: Method, path: string, { json, file, signal }: Sent = {}): Promise<T> {
  const response = await fetch(`/api${path}`, {
    method,
    signal: signal ?? null,
    ...(file !== undefined ? { body: file, headers: { 'Content-Type': 'application/octet-stream' } } : {}),
    ...(json === undefined
      ? {}
      : { body: JSON.stringify(json), headers: { 'Content-Type': 'application/json' } }),
  });
  const text = await response.text();
  if (!response.ok) throw toSignIn(refusalIn(text));
  return text === '' ? (undefined as T) : JSON.parse(text);
}

/** Who has not signed in is led to where one does, and comes back from there. */
function toSignIn(refusal: Refused): Refused {
  if (refusal.problems.some(({ code }) => code === 'sign-in-first'))
    location.assign(`/sign-in?then=${encodeURIComponent(location.pathname + location.search)}`);
  return refusal;
}

function refusalIn(body: string): Refused {
  try {
    const { problems }: Refusal = JSON.parse(body);
    return new Refused(problems);
  } catch {
    return new Refused([notReached]);
  }
}
