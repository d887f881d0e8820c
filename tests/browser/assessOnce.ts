/** Before the first browser test: the demonstration house is assessed once, and each file begins from a copy of it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { startStillwarm } from './startStillwarm.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    readonly demonstrationData: string;
  }
}

export default async function assessOnce({ provide }: TestProject) {
  const data = mkdtempSync(join(tmpdir(), 'stillwarm-once-'));
  const server = await startStillwarm(data);
  await server.demonstration();
  await server.stop();
  provide('demonstrationData', data);
  return () => rmSync(data, { recursive: true });
}
