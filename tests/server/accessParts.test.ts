/** The pieces of the door by themselves: the passphrase, its throttle, the sessions, the names of this machine. */
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isForOthers } from '../../server/access/access.ts';
import { hashOf, matches, storedIn } from '../../server/access/passphrase.ts';
import { publicOrigin, reachOf } from '../../server/access/reach.ts';
import { LONGEST_SESSION, sessions } from '../../server/access/sessions.ts';
import { MOST_ADDRESSES, throttle } from '../../server/access/throttle.ts';
import { passphraseCommand } from '../../server/passphraseCommand.ts';
import { serveCommand } from '../../server/serveCommand.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillwarm-access-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

function paper() {
  const lines: string[] = [];
  return { write: (text: string) => lines.push(text), text: () => lines.join('') };
}
async function setPassphrase(typed: string, terminal = false) {
  const [out, err] = [paper(), paper()];
  const input = Object.assign(Readable.from([Buffer.from(typed)]), {
    isTTY: terminal,
    setRawMode: (() => {}) as never,
  });
  const code = await passphraseCommand(['--data', folder], {}, input, out, err);
  return { code, said: out.text() + err.text() };
}

describe('the passphrase', () => {
  test('is kept as a salted hash that costs 32 MB to try, readable by its owner only', async () => {
    const phrase = 'vier trockene Wände';
    expect((await setPassphrase(`${phrase}\n`)).code).toBe(0);
    const kept = readFileSync(join(folder, 'passphrase'), 'utf8');
    expect(kept).toMatch(/^scrypt 32768 8 3 \S{22} \S{43}\n$/);
    expect(statSync(join(folder, 'passphrase')).mode & 0o077).toBe(0);
    expect(await matches(phrase, storedIn(folder) ?? '')).toBe(true);
    expect(await matches('vier trockene Wande', storedIn(folder) ?? '')).toBe(false);
    await setPassphrase(`${phrase}\n`);
    expect(readFileSync(join(folder, 'passphrase'), 'utf8')).not.toBe(kept);
  });

  test('is not shown while it is typed, and typed twice', async () => {
    const { code, said } = await setPassphrase('four dry timber walls\rfour dry timber wells\r', true);
    expect(code).toBe(2);
    expect(said).not.toMatch(/timber/);
    expect(said).toContain('The two are not the same. Nothing was changed.');
    expect(
      (
        await setPassphrase(
          'four dry timber wax\u007fll\u007f\u007fllsX\u007f\rfour dry timber walls\r',
          true,
        )
      ).code,
    ).toBe(0);
  });

  test.each(['', 'short', `${'x'.repeat(1001)}`])('is not “%s”', async (phrase) => {
    expect((await setPassphrase(`${phrase}\n`)).code).toBe(2);
    expect(storedIn(folder)).toBeNull();
  });

  test('is the same however its letters are composed, and a hash that was damaged lets nobody in', async () => {
    const cheap = { N: 16, r: 8, p: 1, maxmem: 2 ** 20 };
    const hash = await hashOf('w\u00e4rmer als drau\u00dfen', cheap);
    expect(await matches('wa\u0308rmer als drau\u00dfen', hash)).toBe(true);
    await expect(matches('', hash.slice(0, -3))).rejects.toThrow('set it again');
    await expect(matches('', '')).rejects.toThrow('set it again');
  });

  test.each([
    [['--host', '0.0.0.0'], {}, 'Serving others needs a passphrase'],
    [['--host', '::'], {}, 'Serving others needs a passphrase'],
    [['--origin', 'https://houses.example'], {}, 'Serving others needs a passphrase'],
    [['--host', '0.0.0.0'], { STILLWARM_PASSPHRASE: 'short' }, 'at least 12 characters'],
    [['--origin', 'https://houses.example/path'], {}, 'is no public address'],
    [['--origin', 'javascript:alert(1)'], {}, 'is no public address'],
    [['--host', 'a b'], {}, 'is no address of a machine'],
  ])('is needed by serve %j %j', async (args, env, said) => {
    const err = paper();
    const asked = ['--port', '0', '--data', folder, ...args];
    expect(await serveCommand(asked, env, paper(), err, Promise.resolve())).toBe(2);
    expect(err.text()).toContain(said);
  });
});

test('others come in at any address but those of this machine for itself, and by a proxy', () => {
  for (const host of ['127.0.0.1', 'localhost', '::1']) expect(isForOthers(host, null)).toBe(false);
  for (const host of ['0.0.0.0', '::', '192.0.2.7', '127.0.0.2']) expect(isForOthers(host, null)).toBe(true);
  expect(isForOthers('127.0.0.1', 'https://houses.example')).toBe(true);
});

test('bound everywhere, a server is called by each address of the machine and by no other name', () => {
  const reach = reachOf('0.0.0.0', null);
  const own = Object.values(networkInterfaces()).flatMap((them) => them ?? []);
  for (const { address, family } of own.filter((it) => it.family === 'IPv4'))
    expect([family, address, reach.answers(`${address}:8620`)]).toEqual([family, address, true]);
  for (const host of [
    '192.0.2.200',
    '0.0.0.0',
    'localhost.',
    'stillwarm.local',
    '[::1',
    '[::1]x',
    '[fe80::1%eth0]',
    '127.1',
  ])
    expect([host, reach.answers(host)]).toEqual([host, false]);
  expect(reachOf('2001:DB8:0:0::7', null).answers('[2001:db8::7]:8620')).toBe(true);
});

test('a public origin is a scheme and a host, and nothing behind it', () => {
  expect(publicOrigin('https://Houses.example:443/')).toBe('https://houses.example');
  for (const text of [
    'houses.example',
    'ftp://houses.example',
    'https://me@houses.example',
    'https://a/?b',
    '',
  ])
    expect([text, publicOrigin(text)]).toEqual([text, null]);
});

describe('guessing', () => {
  test('costs an address nothing five times, then twice as long each time, up to a quarter of an hour', () => {
    let now = 0;
    const guesses = throttle(() => now);
    const waits: number[] = [];
    for (let i = 0; i < 16; i++) {
      guesses.guess('192.0.2.1');
      waits.push(guesses.wait('192.0.2.1'));
      now += waits[i];
    }
    expect(waits).toEqual([0, 0, 0, 0, 5, 10, 20, 40, 80, 160, 320, 640, 900, 900, 900, 900]);
    expect(guesses.wait('192.0.2.2')).toBe(0);
  });

  test('is stopped for all together when each guess comes from another address, in bounded memory', () => {
    let now = 0;
    const guesses = throttle(() => now);
    const addressOf = (i: number) => `10.${i >> 16}.${(i >> 8) & 255}.${i & 255}`;
    for (let i = 0; i < 30; i++) guesses.guess(addressOf(i));
    expect(guesses.wait('192.0.2.1')).toBe(4);
    now = 4;
    expect(guesses.wait('192.0.2.1')).toBe(0);
    for (let i = 0; i < 3 * MOST_ADDRESSES; i++) guesses.guess(addressOf(i));
    expect(guesses.size()).toBe(MOST_ADDRESSES);
  });

  test('is counted for a whole network of version 6, and one address has one spelling', () => {
    const guesses = throttle(() => 0);
    for (const end of [':1', ':2', ':ffff:1', 'a:b:c:d', '0:0:0:9']) guesses.guess(`2001:db8:0:7:${end}`);
    expect(guesses.wait('2001:db8:0:7::abcd')).toBe(5);
    expect(guesses.wait('2001:db8:0:8::1')).toBe(0);
    for (let i = 0; i < 5; i++) guesses.guess('::ffff:192.0.2.1');
    expect(guesses.wait('192.0.2.1')).toBe(5);
  });

  test('right in the end costs nothing', () => {
    const guesses = throttle(() => 0);
    for (let i = 0; i < 100; i++) {
      guesses.guess('192.0.2.1');
      guesses.right('192.0.2.1');
    }
    expect(guesses.wait('192.0.2.1')).toBe(0);
  });
});

describe('a session', () => {
  test('ends unused after twelve hours, and after a week however much it is used', () => {
    let now = 0;
    const all = sessions(() => now);
    const [unused, used] = [all.begin('hash'), all.begin('hash')];
    for (; now < LONGEST_SESSION; now += 6 * 3600) expect(all.holds(used, 'hash')).toBe(true);
    expect(all.holds(unused, 'hash')).toBe(false);
    now += 1;
    expect(all.holds(used, 'hash')).toBe(false);
  });

  test('is one of a hundred: the oldest makes room', () => {
    const all = sessions(() => 0);
    const [first, second] = [all.begin('hash'), all.begin('hash')];
    for (let i = 0; i < 99; i++) all.begin('hash');
    expect([all.holds(first, 'hash'), all.holds(second, 'hash')]).toEqual([false, true]);
  });
});
