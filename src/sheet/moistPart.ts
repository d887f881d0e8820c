/** How moist the air was over the nights, room by room beside outdoors; nothing where no humidity was logged. */
import type { NightCurve } from '../curves.ts';
import type { MoistMean } from '../record/moistMeans.ts';
import { dryingSentence, gramsOfWater, ordinarySentence, percentHumidity } from '../words/aboutHumidity.ts';
import { figures } from '../words/index.ts';
import { moistNightsDrawing } from './drawing/moistNights.ts';
import { tied } from './drawing/tied.ts';
import { html, type Markup, named } from './html.ts';
import { meanOf, moistNights } from './moistNights.ts';
import { paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { table } from './table.ts';

export function moistPart(curves: readonly NightCurve[]): Markup | null {
  const loggers = airs(curves);
  if (loggers.length === 0) return null;
  const nights = moistNights(curves);
  return part(
    words.titles.moist,
    paragraph([dryingSentence(nights), ordinarySentence(nights)].filter((it) => it !== null).join(' ')),
    nights.length === 0 ? paragraph(words.noMoistOutside, 'small lesser') : null,
    moistNightsDrawing(curves),
    moistTable(loggers),
  );
}

interface Air {
  readonly logger: MoistMean;
  readonly nights: readonly MoistMean[];
  /** Vapour over outdoors in the nights of which it is known [kg/m³]. */
  readonly over: readonly number[];
}

/** One for each logger, over all of its nights. */
function airs(curves: readonly NightCurve[]): Air[] {
  const all = curves.flatMap(({ moist = [] }) => {
    const outside = meanOf(moist.filter(({ place }) => place === 'outside').map((it) => it.absoluteHumidity));
    return moist.map((mean) => ({ mean, over: outside === null ? null : mean.absoluteHumidity - outside }));
  });
  const files = [...new Set(all.map(({ mean }) => mean.file))];
  return files.map((file): Air => {
    const own = all.filter(({ mean }) => mean.file === file);
    return {
      logger: own[0].mean,
      nights: own.map(({ mean }) => mean),
      over: own.flatMap(({ over }) => (over === null ? [] : [over])),
    };
  });
}

const moistTable = (loggers: readonly Air[]): Markup | null =>
  table({
    caption: 'Means of all nights, from sunset to sunrise',
    rows: loggers,
    columns: [
      {
        head: 'Where',
        cell: ({ logger: { room, place, file } }) =>
          place === 'outside' && room === file
            ? words.places.outside
            : html`${named(room)}${place === 'inside' ? null : `, ${words.places[place]}`}`,
      },
      { head: 'Nights', cell: ({ nights }) => nights.length, numeric: true },
      {
        head: 'Temperature',
        cell: ({ nights }) => figures.temperature(mean(nights.map((it) => it.temperature))),
        numeric: true,
        whole: true,
      },
      {
        head: 'Relative humidity',
        cell: ({ nights }) => tied(percentHumidity(100 * mean(nights.map((it) => it.relativeHumidity)))),
        numeric: true,
      },
      {
        head: 'Water in the air',
        cell: ({ nights }) => tied(gramsOfWater(1000 * mean(nights.map((it) => it.absoluteHumidity)))),
        numeric: true,
      },
      {
        head: 'More than outdoors',
        cell: ({ logger, over }) =>
          logger.place === 'outside' || over.length === 0 ? '' : tied(gramsOfWater(1000 * mean(over))),
        numeric: true,
      },
    ],
  });

/** Of one or more. */
const mean = (values: readonly number[]) => meanOf(values) ?? Number.NaN;
