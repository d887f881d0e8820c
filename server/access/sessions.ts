/** Who has signed in: in memory only, so that a restart ends all of it. */
import { randomBytes } from 'node:crypto';
import { sha256 } from '../store/sha256.ts';
import type { PassphraseHash } from './passphrase.ts';

const UNUSED = 12 * 3600; // [s]
export const LONGEST_SESSION = 7 * 86_400; // [s]
const MOST = 100;
/** A clock that was put back by more does not tell how long it has been [s]. */
const PUT_RIGHT = 600;

interface Session {
  /** The hash of the passphrase that it was begun with: another one ends it. */
  readonly hash: PassphraseHash;
  /** [s] */
  readonly begun: number;
  used: number;
}

export type Sessions = ReturnType<typeof sessions>;

/** @param now [s] */
export function sessions(now: () => number = () => Date.now() / 1000) {
  const byHash = new Map<string, Session>();
  return {
    /** @returns what the browser is to bring again */
    begin(hash: PassphraseHash): string {
      const token = randomBytes(32).toString('base64url');
      byHash.set(sha256(token), { hash, begun: now(), used: now() });
      const [oldest] = byHash.keys();
      if (byHash.size > MOST) byHash.delete(oldest);
      return token;
    },

    /** @param hash of the passphrase as it is now; null when there is none any more */
    holds(token: string | undefined, hash: PassphraseHash | null): boolean {
      const key = sha256(token ?? '');
      const session = byHash.get(key);
      if (session === undefined) return false;
      const at = now();
      const putBack = at < session.used - PUT_RIGHT;
      const over = putBack || at - session.used > UNUSED || at - session.begun > LONGEST_SESSION;
      if (over || session.hash !== hash) {
        byHash.delete(key);
        return false;
      }
      session.used = at;
      return true;
    },

    end(token: string | undefined): void {
      byHash.delete(sha256(token ?? ''));
    },
  };
}
