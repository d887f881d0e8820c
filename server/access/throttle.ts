/** How often a passphrase may be guessed: by one address, and by all together. */

/** Wrong ones that cost nothing; the next costs so long a wait, and each further one doubles it. */
const FREE = 4;
const FIRST_WAIT = 5; // [s]
const LONGEST_WAIT = 15 * 60; // [s]
/** Wrong ones of all addresses together: so many at once, then one each so often. */
const AT_ONCE = 30;
const ONE_EACH = 4; // [s]
/** An address is forgotten after this, and the oldest when there are more than so many. */
const FORGOTTEN = 3600; // [s]
export const MOST_ADDRESSES = 1000;

interface Guesses {
  wrong: number;
  /** [s] */
  last: number;
}

export type Throttle = ReturnType<typeof throttle>;

/** @param now [s] */
export function throttle(now: () => number = () => Date.now() / 1000) {
  const byAddress = new Map<string, Guesses>();
  let all = { spent: 0, at: now() };

  const spentBy = (at: number) => Math.max(0, all.spent - Math.max(0, at - all.at) / ONE_EACH);

  return {
    /** How long an address has to wait before its next guess [s]; 0 when it need not. */
    wait(address: string): number {
      const at = now();
      const known = byAddress.get(networkOf(address));
      // Never longer than the pause itself, also when the clock was put back meanwhile.
      const own = known === undefined ? 0 : pause(known.wrong) - Math.max(0, at - known.last);
      return Math.ceil(Math.max(0, own, (spentBy(at) - AT_ONCE + 1) * ONE_EACH));
    },

    /** Counts a guess as wrong, before it is looked at: guesses sent at once are counted too. */
    guess(address: string): void {
      const at = now();
      const network = networkOf(address);
      const known = byAddress.get(network);
      byAddress.delete(network);
      const wrong = known === undefined || at - known.last > FORGOTTEN ? 0 : known.wrong;
      byAddress.set(network, { wrong: wrong + 1, last: at });
      const [oldest] = byAddress.keys();
      if (byAddress.size > MOST_ADDRESSES) byAddress.delete(oldest);
      all = { spent: spentBy(at) + 1, at };
    },

    /** The guess was right after all. */
    right(address: string): void {
      byAddress.delete(networkOf(address));
      all = { spent: Math.max(0, all.spent - 1), at: all.at };
    },

    /** How many addresses are remembered. */
    size: () => byAddress.size,
  };
}

const pause = (wrong: number) =>
  wrong <= FREE ? 0 : Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** (wrong - FREE - 1));

/** Whoever has one address of version 6 has the 2^64 of its network. */
function networkOf(address: string): string {
  const bare = address.replace(/^::ffff:(?=\d+\.)/i, '').replace(/%.*$/, '');
  if (!bare.includes(':')) return bare;
  const [head, tail = ''] = bare.split('::');
  const front = head === '' ? [] : head.split(':');
  const back = tail === '' ? [] : tail.split(':');
  const zeros = Array<string>(Math.max(0, 8 - front.length - back.length)).fill('0');
  return [...front, ...zeros, ...back].slice(0, 4).join(':');
}
