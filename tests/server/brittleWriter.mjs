/** A writer's thread that breaks down on putAway and refuses deleteHouse. */
import { parentPort } from 'node:worker_threads';

parentPort.on('message', (request) => {
  if (request === 'close') return parentPort.close();
  if (request.call === 'putAway') throw new Error('broken');
  const failed = request.call === 'deleteHouse' ? { message: 'full', code: 'SQLITE_FULL' } : null;
  parentPort.postMessage({ number: request.number, failed });
});
