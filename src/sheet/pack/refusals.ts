/** Why a pack is not taken, in words. */
import type { Message } from '../../assessment.ts';

const askAnew =
  'Ask whoever made the pack for it again. To look at it all the same, unpack it and bring the folder; then nothing vouches for it.';

export const noZip: Message = {
  code: 'pack-no-zip',
  text: 'This is no zip, or only a part of one.',
  remedy: 'Bring the pack as it was made, or the unpacked folder.',
};

export const encrypted: Message = {
  code: 'pack-encrypted',
  text: 'This zip is locked with a password.',
  remedy: 'Unpack it and bring the folder.',
};

export const tooLarge = (largest: number): Message => ({
  code: 'pack-too-large',
  text: `More than ${Math.round(largest / 1024 / 1024)} MB would come out of this zip.`,
  remedy: 'Unpack it and bring the folder.',
});

export const leadsOut = (name: string): Message => ({
  code: 'pack-path-refused',
  text: `This zip holds a file that would be unpacked outside of its folder: “${name}”. Nothing of it was taken.`,
  remedy: 'Do not unpack it by other means either, unless you know who made it.',
});

export const twice = (name: string): Message => ({
  code: 'pack-name-twice',
  text: `This zip holds two files of one name: “${name}”. Nothing of it was taken.`,
  remedy: askAnew,
});

export const broken = (name: string): Message => ({
  code: 'pack-file-broken',
  text: 'This file of the zip is broken.',
  where: { file: name },
  remedy: 'Copy the pack again: it was damaged on its way.',
});

export const noHouse: Message = {
  code: 'pack-no-house',
  text: 'There is no house.json in this zip, neither at its root nor in one folder.',
  remedy: 'Bring a handover pack, or a zip of a house folder.',
};

export const newer = (software: string, own: string): Message => ({
  code: 'pack-newer',
  text: `This pack was made by ${software}, which lays packs out in a newer way than ${own} knows. Nothing of it was taken.`,
  remedy: `Bring it to ${software} or a newer version; or unpack it and bring the folder: then nothing vouches for it.`,
});

export const fileChanged = (file: string): Message => ({
  code: 'pack-file-changed',
  text: 'This file is not the one that was packed: its hash is another.',
  where: { file },
  remedy: askAnew,
});

export const fileMissing = (file: string): Message => ({
  code: 'pack-file-missing',
  text: 'This file was packed and is not there any more.',
  where: { file },
  remedy: askAnew,
});

export const fileAdded = (file: string): Message => ({
  code: 'pack-file-added',
  text: 'This file was not packed: it was put in later.',
  where: { file },
  remedy: askAnew,
});
