/** The writer's thread: it opens the database named by `workerData` and makes the changes in the order they come. */
import { parentPort, workerData } from 'node:worker_threads';
import { openForWriting } from '../store/database.ts';
import { writingTo } from '../store/writing.ts';
import type { WriteReply, WriteRequest } from './writer.ts';

const db = openForWriting(String(workerData));
const writing = writingTo(db);

parentPort?.on('message', (request: WriteRequest | 'close') => {
  if (request === 'close') {
    db.close();
    parentPort?.close();
    return;
  }
  parentPort?.postMessage({ number: request.number, failed: failureOf(request) } satisfies WriteReply);
});

function failureOf({ call, args }: WriteRequest): WriteReply['failed'] {
  try {
    (writing[call] as (...args: readonly unknown[]) => void)(...args);
    return null;
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    return { message: error instanceof Error ? error.message : String(error), code };
  }
}
