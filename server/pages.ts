/** The built pages: files as they are, and the one page for every address that is no file. */
import { existsSync } from 'node:fs';
import { serveStatic } from '@hono/node-server/serve-static';
import { Hono } from 'hono';
import { refused } from './refused.ts';

/** @param folder of the built pages; nothing outside of it is ever sent */
export function pages(folder: string) {
  const app = new Hono();
  if (!existsSync(folder))
    return app.all('*', () => {
      throw refused(
        503,
        'pages-not-built',
        'The pages are not built yet.',
        'Run npm run build, then start again.',
      );
    });
  const onePage = serveStatic({ root: folder, path: 'index.html' });
  return app
    .use(async (c, next) => {
      await next();
      if (c.res.ok) c.res.headers.set('Cache-Control', cacheOf(c.req.path));
    })
    .get('*', serveStatic({ root: folder }))
    .get('*', (c, next) => (looksLikeFile(c.req.path) ? next() : onePage(c, next)))
    .all('*', () => {
      throw refused(404, 'no-such-page', 'There is nothing at this address.', 'Go back to the houses.');
    });
}

const looksLikeFile = (path: string) => /\.[^/]*$/.test(path);

/** Built assets carry the hash of their content in their name. */
const cacheOf = (path: string) =>
  path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
