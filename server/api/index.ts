/** The whole API, below /api. Its type is what the pages' client is made from. */
import { Hono } from 'hono';
import type { Access } from '../access/access.ts';
import type { Services } from '../services.ts';
import { accessApi } from './access.ts';
import { assessmentsApi } from './assessments.ts';
import { bringingsApi } from './bringings.ts';
import { byHandApi } from './byHand.ts';
import { demonstrationApi } from './demonstration.ts';
import { folderApi } from './folder.ts';
import { heatApi } from './heat.ts';
import { housesApi } from './houses.ts';
import { humidityApi } from './humidity.ts';
import { linksApi } from './links.ts';
import { loggersApi } from './loggers.ts';
import { namelessApi } from './nameless.ts';
import { nightsApi } from './nights.ts';
import { readingsApi } from './readings.ts';
import { sentReadingsApi } from './sentReadings.ts';
import { sharedApi } from './shared.ts';
import { sheetApi } from './sheet.ts';
import { watchedApi } from './watched.ts';
import { wholeHouseApi } from './wholeHouse.ts';

export const api = (services: Services, access: Access) =>
  new Hono()
    .route('/houses', housesApi(services))
    .route('/houses', nightsApi(services))
    .route('/houses', readingsApi(services))
    .route('/houses', sentReadingsApi(services))
    .route('/houses', byHandApi(services))
    .route('/houses', wholeHouseApi(services))
    .route('/houses', heatApi(services))
    .route('/houses', humidityApi(services))
    .route('/houses', loggersApi(services))
    .route('/houses', folderApi(services))
    .route('/houses', sheetApi(services))
    .route('/houses', assessmentsApi(services))
    .route('/houses', linksApi(services, access))
    .route('/houses', namelessApi(services))
    .route('/access', accessApi(access))
    .route('/shared', sharedApi(services, access))
    .route('/bringings', bringingsApi(services))
    .route('/watched', watchedApi(services))
    .route('/demonstration', demonstrationApi(services));

/** For hono's client: `hc<Api>('/api')`. */
export type Api = ReturnType<typeof api>;
