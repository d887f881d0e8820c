/** What is handed over of a house: the sheet, its first page, the pack. As stored: nothing is worked out again. */
import { type Context, Hono } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import type { Assessment } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';
import { firstPageHtml, type SheetInput, sheetHtml } from '../../src/sheet/index.ts';
import { clashing, packDocuments } from '../../src/sheet/pack/packDocuments.ts';
import { houseIn } from '../jobs/storedFolder.ts';
import { noSuchHouse, Refused, refused } from '../refused.ts';
import { softwareVersion } from '../root.ts';
import type { Services } from '../services.ts';
import { LARGEST_TOGETHER, photosIn } from '../sheet/photos.ts';
import { today } from '../sheet/today.ts';
import { sha256 } from '../store/sha256.ts';
import { zipStream } from '../zipStream.ts';
import { wrongType } from './validate.ts';

export const sheetApi = ({ reading, assessments }: Services) => {
  function inputOf(
    id: string,
    photos: SheetInput['photos'] = [],
  ): SheetInput & { readonly json: Uint8Array } {
    const stored = reading.house(id);
    const json = reading.json(id);
    if (stored === null || json === null) throw noSuchHouse();
    const assessment = reading.assessment(id);
    const house = houseIn(json);
    if (assessment === null || !assessments.isCurrent(stored) || house.kind === 'problems')
      throw notAssessed();
    const files = reading
      .files(id)
      .map(({ file, bytes, sha256: hash }) => ({ name: file, bytes, sha256: hash }));
    return {
      json,
      house: house.house,
      assessment: JSON.parse(assessment) as Assessment,
      curves: reading.curves(id).map((curve) => JSON.parse(curve) as NightCurve),
      files: [{ name: 'house.json', bytes: json.length, sha256: sha256(json) }, ...files],
      version: softwareVersion().split(' ')[0],
      date: today(stored.timeZone, new Date()),
      photos,
    };
  }
  function packOf(c: Context, input: ReturnType<typeof inputOf>, id: string) {
    if (clashing(input) !== null) throw nameTaken();
    function* files() {
      for (const { name, text } of packDocuments(input, sha256))
        yield { name, bytes: () => new TextEncoder().encode(text) };
      yield { name: 'house.json', bytes: () => input.json };
      for (const { file } of reading.files(id)) yield { name: file, bytes: () => reading.file(id, file) };
    }
    return c.body(zipStream(files()), 200, { 'Content-Type': 'application/zip' });
  }
  return new Hono()
    .get('/:id/sheet.html', (c) => asPage(c, sheetHtml(inputOf(c.req.param('id')))))
    .post('/:id/sheet.html', limited, async (c) =>
      asPage(c, sheetHtml(inputOf(c.req.param('id'), await photosOf(c)))),
    )
    .get('/:id/first-page.html', (c) => asPage(c, firstPageHtml(inputOf(c.req.param('id')))))
    .get('/:id/pack.zip', (c) => packOf(c, inputOf(c.req.param('id')), c.req.param('id')))
    .post('/:id/pack.zip', limited, async (c) => {
      const id = c.req.param('id');
      return packOf(c, inputOf(id, await photosOf(c)), id);
    });
};

const tooLarge = () =>
  refused(
    413,
    'photos-too-large',
    `These photos are together more than ${LARGEST_TOGETHER / 1024 / 1024} MB.`,
    'Leave some out, or make them smaller.',
  );

/** A little more than the photos: the form has words of its own around them. */
const limited = bodyLimit({
  maxSize: LARGEST_TOGETHER + 64 * 1024,
  onError: () => {
    throw tooLarge();
  },
});

/** Those of the form, under “photo”. They are put in and kept nowhere else. */
async function photosOf(c: Context): Promise<SheetInput['photos']> {
  if (!/^multipart\/form-data\b/.test(c.req.header('content-type') ?? ''))
    throw wrongType('multipart/form-data');
  const form = await c.req.formData().catch(() => {
    throw refused(400, 'request-not-understood', 'This is not a whole form.', 'Send the photos again.');
  });
  const photos = await photosIn(form.getAll('photo'));
  if (photos.kind === 'problems') throw new Refused(422, photos.problems);
  return photos.photos;
}

/** It has its style in itself and needs nothing else. */
const asPage = (c: Context, text: string) =>
  c.body(text, 200, {
    'Content-Type': 'text/html; charset=utf-8',
    'Content-Security-Policy':
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  });

const notAssessed = () =>
  refused(
    409,
    'not-assessed',
    'This house is not assessed as it now stands, so there is nothing to hand over yet.',
    'Wait for its assessment, or ask for it on its page.',
  );

const nameTaken = () =>
  refused(
    409,
    'pack-name-taken',
    'A file of this house has a name that the pack needs for itself (README.txt, or one in “handover/”).',
    'Rename it in the folder and in house.json, and bring the house again.',
  );
