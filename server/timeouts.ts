/** How long a request may take to arrive: a phone on a slow network is waited for, whoever only holds the line is not. */
import type { IncomingMessage, Server, ServerResponse } from 'node:http';

/** The head of it, which is small [ms]. */
const HEAD = 30_000;
/** Of a body on its way something has to come within this [ms]. */
const STALLED = 120_000;

export function limitArrival(server: Server, stalled = STALLED): void {
  server.headersTimeout = HEAD;
  server.on('request', (request: IncomingMessage, response: ServerResponse) => {
    const { 'content-length': length, 'transfer-encoding': chunked } = request.headers;
    if (chunked === undefined && Number(length ?? 0) === 0) return;
    request.socket.setTimeout(stalled);
    response.on('timeout', () => {
      if (!request.complete) request.socket.destroy(); // what has come is answered, however long that takes
    });
  });
}
