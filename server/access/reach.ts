/** By which names the server may be called: this machine's own, and the public one of a proxy in front of it. */
import { isIP } from 'node:net';
import { networkInterfaces } from 'node:os';

export interface Reach {
  /** Whether a request that states this `Host` is answered. */
  answers(host: string): boolean;
  /** Whether a page of this origin may ask, when the request states this `Host`. */
  mayAsk(origin: string, host: string): boolean;
  /** The public address that was named, such as "https://houses.example"; null when none was. */
  readonly origin: string | null;
  /** The addresses by which other machines reach this one directly, as hosts of a URL; none when they cannot. */
  addresses(): readonly string[];
}

export const LOOPBACK = ['127.0.0.1', 'localhost', '::1'];
/** Bound to these, a server listens at every address of the machine. */
export const EVERYWHERE = ['0.0.0.0', '::'];
/** A name or address, and perhaps a port: nothing before it, behind it or in between. */
const HOST = /^(\[[0-9a-f:.]+\]|[a-z0-9.-]+)(?::\d{1,5})?$/i;

/**
 * @param host that the server is bound to
 * @param origin as `publicOrigin` gives it
 */
export function reachOf(host: string, origin: string | null): Reach {
  const own = LOOPBACK.map(asHost);
  const publicHost = origin === null ? null : new URL(origin).hostname;
  const addresses = () =>
    LOOPBACK.includes(host) ? [] : EVERYWHERE.includes(host) ? ofThisMachine(host) : [asHost(host)];
  return {
    origin,
    addresses,
    answers(stated) {
      const name = HOST.exec(stated)?.[1].toLowerCase();
      return name !== undefined && [...own, publicHost, ...addresses()].includes(canonical(name));
    },
    // Forwarded headers are never believed: behind a proxy the public origin is the one that was named.
    mayAsk: (asking, stated) => asking === origin || asking === `http://${stated.toLowerCase()}`,
  };
}

/** Whether a server can be bound to it: an address, or a plain name. */
export const isHost = (host: string) => isIP(host) !== 0 || /^[a-z0-9-]+(\.[a-z0-9-]+)*$/i.test(host);

/** "https://houses.example", or null for what is no origin of http or https. */
export function publicOrigin(text: string): string | null {
  try {
    const { protocol, origin, pathname, search, hash, username } = new URL(text);
    const bare = pathname === '/' && search === '' && hash === '' && username === '';
    return bare && (protocol === 'https:' || protocol === 'http:') ? origin : null;
  } catch {
    return null;
  }
}

/** As it stands in a URL: an address of version 6 in brackets. */
const asHost = (address: string) =>
  address.includes(':') ? canonical(`[${address}]`) : address.toLowerCase();

/** An address of version 6 has one spelling only. */
function canonical(host: string): string {
  try {
    return host.startsWith('[') ? new URL(`http://${host}`).hostname : host;
  } catch {
    return '';
  }
}

function ofThisMachine(host: string): string[] {
  const all = Object.values(networkInterfaces()).flatMap((them) => them ?? []);
  return all
    .filter(({ internal, family, address }) => {
      const reachable = !internal && !address.startsWith('fe80:'); // those need the name of an interface
      return reachable && (family === 'IPv4' || host === '::');
    })
    .map(({ address }) => asHost(address));
}
