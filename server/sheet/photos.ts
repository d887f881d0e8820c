/** Photos for the sheet: JPEG or PNG, put into it whole. */
import { readFile, stat } from 'node:fs/promises';
import { basename } from 'node:path';
import type { Message } from '../../src/assessment.ts';
import type { Photo } from '../../src/sheet/index.ts';

/** [bytes] */
const LARGEST = 10 * 1024 * 1024;

export type Photos =
  | { readonly kind: 'photos'; readonly photos: readonly Photo[] }
  | { readonly kind: 'problems'; readonly problems: readonly Message[] };

/** All of them or, when one is refused, why. */
export async function readPhotos(paths: readonly string[]): Promise<Photos> {
  const photos: Photo[] = [];
  const problems: Message[] = [];
  for (const path of paths) {
    const read = await readPhoto(path);
    if ('dataUri' in read) photos.push(read);
    else problems.push(read);
  }
  return problems.length > 0 ? { kind: 'problems', problems } : { kind: 'photos', photos };
}

async function readPhoto(path: string): Promise<Photo | Message> {
  const refused = (code: string, text: string, remedy: string): Message => ({
    code,
    text,
    where: { file: path },
    remedy,
  });
  let bytes: Buffer;
  try {
    if ((await stat(path)).size > LARGEST)
      return refused(
        'photo-too-large',
        'This photo is larger than 10 MB.',
        'Make it smaller, or leave it out.',
      );
    bytes = await readFile(path);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refused('photo-not-read', `This photo could not be read (${why}).`, 'Check its path.');
  }
  const type = typeOf(bytes);
  if (type === null)
    return refused(
      'photo-no-picture',
      'This is neither a JPEG nor a PNG picture.',
      'Save it as one of these.',
    );
  return { name: basename(path), dataUri: `data:${type};base64,${bytes.toString('base64')}` };
}

/** By its first bytes, whatever its name says. */
function typeOf(bytes: Buffer): string | null {
  if (bytes.subarray(0, 3).equals(Buffer.from([0xff, 0xd8, 0xff]))) return 'image/jpeg';
  return bytes.subarray(0, 8).equals(Buffer.from('89504e470d0a1a0a', 'hex')) ? 'image/png' : null;
}
