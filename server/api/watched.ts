/** The files of the watched folder that could not be taken, and why. */
import { Hono } from 'hono';
import type { Services } from '../services.ts';
import type { WatchedAnswer } from './shapes.ts';

export const watchedApi = ({ watching }: Services) =>
  new Hono().get('/', (c) => {
    const answer: WatchedAnswer = { folder: watching?.folder ?? null, problems: watching?.problems() ?? [] };
    return c.json(answer);
  });
