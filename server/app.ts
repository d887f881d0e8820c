/** The whole application without a port: checks, API, pages, and one way to say no. */
import { Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { HTTPException } from 'hono/http-exception';
import { type Access, thisMachineOnly } from './access/access.ts';
import { accessLog } from './access/accessLog.ts';
import { guard } from './access/guard.ts';
import { api } from './api/index.ts';
import { openedLink } from './api/openedLink.ts';
import type { Refusal } from './api/shapes.ts';
import { pages } from './pages.ts';
import { machineFailure, Refused, refused } from './refused.ts';
import { closedHeaders, ownHostOnly } from './security.ts';
import type { Services } from './services.ts';

/** [bytes]; uploads of files and photos have limits of their own. */
const LARGEST_BODY = 1024 * 1024;
const HALF_A_YEAR = 15_552_000; // [s]
const isUpload = (path: string) =>
  /^\/api\/((shared\/)?bringings\/[^/]+\/files\/|houses\/[^/]+\/(sheet\.html|pack\.zip)$)/.test(path);

/** @param access of this machine alone when left out */
export function createApp(services: Services, access: Access = thisMachineOnly()) {
  const limit = bodyLimit({
    maxSize: LARGEST_BODY,
    onError: () => {
      throw refused(413, 'too-large', 'This request is larger than any that is answered.');
    },
  });
  const app = new Hono();
  if (access.door !== null) app.use(accessLog(services.tell));
  app
    .use(closedHeaders)
    .use(ownHostOnly(access))
    .use(async (c, next) => {
      if (access.secure) c.header('Strict-Transport-Security', `max-age=${HALF_A_YEAR}`);
      await next();
    })
    .use('/api/*', async (c, next) => {
      c.header('Cache-Control', 'no-store');
      return isUpload(c.req.path) ? next() : limit(c, next);
    })
    .use('/api/*', guard(access, services.reading))
    .use('/api', guard(access, services.reading))
    .route('/api', api(services, access))
    .all('/api', () => {
      throw noSuchRoute();
    })
    .all('/api/*', () => {
      throw noSuchRoute();
    })
    .route('/l', openedLink(services, access))
    .route('/', pages(services.pages));

  app.onError((error, c) => {
    const refusal = refusalOf(error);
    if (refusal === null) services.tell(error.stack ?? error.message);
    const { status, problems } = refusal ?? brokeDown();
    // What was not read of it is cut off: nobody is to send another request after it.
    if (isUpload(c.req.path)) c.header('Connection', 'close');
    return c.json({ problems } satisfies Refusal, status);
  });
  return app;
}

function refusalOf(error: Error): Refused | null {
  if (error instanceof Refused) return error;
  // What hono itself refuses, such as a body that is no JSON.
  if (error instanceof HTTPException && error.status === 400)
    return refused(400, 'request-not-understood', `${error.message}.`);
  return machineFailure(error);
}

const noSuchRoute = () => refused(404, 'no-such-route', 'The API has nothing at this address.');

const brokeDown = () =>
  refused(
    500,
    'server-fault',
    'Something in the program broke down.',
    'Try again; where it was started, the terminal says more.',
  );
