/** Who may look, put together once: by which names, and with which passphrase. */
import { type PassphraseHash, storedIn } from './passphrase.ts';
import { LOOPBACK, type Reach, reachOf } from './reach.ts';
import { type Sessions, sessions } from './sessions.ts';
import { type Throttle, throttle } from './throttle.ts';

export interface Access {
  readonly reach: Reach;
  /** Everybody comes by TLS: cookies are sent in no other way. */
  readonly secure: boolean;
  /** What others need to come in; null when only this machine is answered, which needs nothing. */
  readonly door: Door | null;
}

export interface Door {
  /** As it is now: it may be set again while the server runs; null when it was taken away. */
  passphrase(): PassphraseHash | null;
  readonly sessions: Sessions;
  readonly throttle: Throttle;
}

/** Whether others come in: directly, or by a proxy before this machine's own address. */
export const isForOthers = (host: string, origin: string | null) =>
  origin !== null || !LOOPBACK.includes(host);

export interface AccessAsked {
  readonly host: string;
  /** As `publicOrigin` gives it. */
  readonly origin: string | null;
  /** Holds the passphrase that was set, unless there is a `given` one. */
  readonly dataFolder: string;
  readonly given: PassphraseHash | null;
}

export function accessOf({ host, origin, dataFolder, given }: AccessAsked): Access {
  return {
    reach: reachOf(host, origin),
    secure: origin?.startsWith('https:') === true,
    door: isForOthers(host, origin)
      ? { passphrase: () => given ?? storedIn(dataFolder), sessions: sessions(), throttle: throttle() }
      : null,
  };
}

/** For this machine alone. */
export const thisMachineOnly = (): Access =>
  accessOf({ host: '127.0.0.1', origin: null, dataFolder: '', given: null });
