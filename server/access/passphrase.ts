/** The passphrase: kept as a salted scrypt hash only, in a file of the data folder or of an environment variable. */
import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';
import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Shorter ones are guessed. */
export const SHORTEST = 12;
const LONGEST = 1000;
/** 32 MB and some 0.3 s for each guess (MEMORY: N = 2^15, r = 8, p = 3 is what OWASP's sheet of 2023 has for scrypt). */
const COST = { N: 2 ** 15, r: 8, p: 3, maxmem: 64 * 1024 * 1024 };
const KEY = 32; // [bytes]
const FILE = 'passphrase';
const FORM = /^scrypt (\d+) (\d+) (\d+) ([A-Za-z0-9_-]{22}) ([A-Za-z0-9_-]{43})\n?$/;

/** "scrypt N r p salt key", as it is kept. */
export type PassphraseHash = string;

/** What is wrong with a passphrase that is to be set; null when nothing is. */
export function unfit(passphrase: string): string | null {
  const { length } = [...passphrase.normalize('NFKC')];
  if (length < SHORTEST)
    return `A passphrase has at least ${SHORTEST} characters; four or five words do well.`;
  return length > LONGEST ? `A passphrase has at most ${LONGEST} characters.` : null;
}

/** @param cost of each guess; it is kept with the hash */
export async function hashOf(passphrase: string, cost = COST): Promise<PassphraseHash> {
  const salt = randomBytes(16);
  const key = await derived(passphrase, salt, cost);
  return `scrypt ${cost.N} ${cost.r} ${cost.p} ${salt.toString('base64url')} ${key.toString('base64url')}`;
}

/** Takes as long for a wrong one as for the right one. @throws Error when the hash is none of ours */
export async function matches(passphrase: string, hash: PassphraseHash): Promise<boolean> {
  const [, N, r, p, salt, key] = FORM.exec(hash) ?? [];
  if (key === undefined) throw new Error('The stored passphrase cannot be read: set it again.');
  const cost = { N: Number(N), r: Number(r), p: Number(p), maxmem: COST.maxmem };
  const wanted = Buffer.from(key, 'base64url');
  // Longer than any that could be set: it is not worth its time.
  const asked = passphrase.length > 4 * LONGEST ? '' : passphrase;
  return timingSafeEqual(await derived(asked, Buffer.from(salt, 'base64url'), cost), wanted);
}

/** The hash in a data folder; null when none was set there. */
export function storedIn(dataFolder: string): PassphraseHash | null {
  const path = join(dataFolder, FILE);
  return existsSync(path) ? readFileSync(path, 'utf8').trim() : null;
}

/** Puts the hash into a data folder, readable by this user only; wholly or not at all. */
export function store(dataFolder: string, hash: PassphraseHash): void {
  const path = join(dataFolder, FILE);
  writeFileSync(`${path}.new`, `${hash}\n`, { mode: 0o600 });
  renameSync(`${path}.new`, path);
}

const derived = (passphrase: string, salt: Buffer, cost: typeof COST) =>
  new Promise<Buffer>((resolve, reject) => {
    scrypt(passphrase.normalize('NFKC'), salt, KEY, cost, (error, key) =>
      error ? reject(error) : resolve(key),
    );
  });
