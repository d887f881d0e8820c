/** Writes the demonstration house into sample-logs/ and its truth beside this file: npx tsx tests/proving/makeSample.ts */
import { mkdirSync, writeFileSync } from 'node:fs';
import { sampleFiles } from './sampleFiles.ts';

const { folder, truth } = sampleFiles();
const into = new URL('../../sample-logs/', import.meta.url);
mkdirSync(into, { recursive: true });
for (const [name, text] of folder) writeFileSync(new URL(name, into), text);
writeFileSync(new URL('sampleTruth.json', import.meta.url), truth);
