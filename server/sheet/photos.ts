/** Photos for the sheet: JPEG or PNG, put into it whole. */
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Message } from '../../src/assessment.ts';
import type { Photo } from '../../src/sheet/index.ts';

/** [bytes] */
const LARGEST = 10 * 1024 * 1024;
/** Of those sent in a form, which is held in memory. */
const MOST = 12;
/** [bytes] */
export const LARGEST_TOGETHER = 40 * 1024 * 1024;

export type Photos =
  | { readonly kind: 'photos'; readonly photos: readonly Photo[] }
  | { readonly kind: 'problems'; readonly problems: readonly Message[] };

/** All of them or, when one is refused, why. */
export async function readPhotos(paths: readonly string[]): Promise<Photos> {
  return photosOf(await Promise.all(paths.map(readPhoto)));
}

async function readPhoto(path: string): Promise<Photo | Message> {
  try {
    if ((await stat(path)).size > LARGEST) return tooLarge(path);
    return photoOf(await readFile(path), basename(path), path);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refusal(path, 'photo-not-read', `This photo could not be read (${why}).`, 'Check its path.');
  }
}

/**
 * What was sent in a form, or why one of them is refused.
 *
 * @param fields all that the form holds under one name
 */
export async function photosIn(fields: readonly (File | string)[]): Promise<Photos> {
  const files = fields.filter((it) => typeof it !== 'string');
  if (files.length > MOST || files.reduce((sum, { size }) => sum + size, 0) > LARGEST_TOGETHER)
    return { kind: 'problems', problems: [tooMuch] };
  return photosOf(
    await Promise.all(
      files.map(async (file) => photoOf(Buffer.from(await file.arrayBuffer()), file.name, file.name)),
    ),
  );
}

function photosOf(read: readonly (Photo | Message)[]): Photos {
  const problems = read.filter((it): it is Message => !('dataUri' in it));
  if (problems.length > 0) return { kind: 'problems', problems };
  return { kind: 'photos', photos: read.filter((it): it is Photo => 'dataUri' in it) };
}

/** @param file as the person knows it */
function photoOf(bytes: Buffer, name: string, file: string): Photo | Message {
  if (bytes.length > LARGEST) return tooLarge(file);
  const type = typeOf(bytes);
  if (type === null)
    return refusal(
      file,
      'photo-no-picture',
      'This is neither a JPEG nor a PNG picture.',
      'Save it as one of these.',
    );
  return { name, dataUri: `data:${type};base64,${bytes.toString('base64')}` };
}

const refusal = (file: string, code: string, text: string, remedy: string): Message => ({
  code,
  text,
  where: { file },
  remedy,
});

const tooLarge = (file: string) =>
  refusal(file, 'photo-too-large', 'This photo is larger than 10 MB.', 'Make it smaller, or leave it out.');

const tooMuch: Message = {
  code: 'photos-too-large',
  text: `These are more than ${MOST} photos, or together more than ${LARGEST_TOGETHER / 1024 / 1024} MB.`,
  remedy: 'Leave some out, or make them smaller.',
};

/** By its first bytes, whatever its name says. */
function typeOf(bytes: Buffer): string | null {
  if (bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff]))) return 'image/jpeg';
  return bytes.subarray(0, 8).equals(Buffer.from('89504e470d0a1a0a', 'hex')) ? 'image/png' : null;
}
