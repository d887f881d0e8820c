/** The name of some bytes that no other bytes have. */
import { createHash } from 'node:crypto';

export const sha256 = (of: Uint8Array | string) => createHash('sha256').update(of).digest('hex');
