/** How long a request may take to arrive. */
import { createServer, type Server } from 'node:http';
import { type AddressInfo, connect } from 'node:net';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { limitArrival } from '../../server/timeouts.ts';

const STALLED = 100; // [ms]
let server: Server;
beforeEach(async () => {
  server = createServer((request, response) => {
    request.on('error', () => {}).resume();
    request.on('end', () => setTimeout(() => response.end('done'), 5 * STALLED));
  });
  limitArrival(server, STALLED);
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
});
afterEach(() => server.close());

/** What comes back until the line is closed. */
const send = (text: string) =>
  new Promise<string>((closed) => {
    let back = '';
    const line = connect((server.address() as AddressInfo).port, '127.0.0.1');
    line.on('data', (bytes) => {
      back += bytes;
    });
    line.on('close', () => closed(back)).write(text);
  });
const head = 'POST / HTTP/1.1\r\nHost: here\r\nConnection: close\r\nContent-Length: 4\r\n\r\n';

test('a body that stops half-way is not waited for', async () => {
  expect(await send(`${head}ha`)).toBe('');
});

test('an answer may take longer than a body may pause', async () => {
  expect(await send(`${head}half`)).toContain('done');
});
