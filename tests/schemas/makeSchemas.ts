/** Writes the published schemas and the reference of the API beside their source: `npm run schemas`. */
import { writeFileSync } from 'node:fs';
import { apiReference } from './apiReference.ts';
import { published } from './schemas.ts';

for (const [file, text] of Object.entries(published))
  writeFileSync(new URL(`../../src/${file}`, import.meta.url), text);
writeFileSync(new URL('../../server/api/API.md', import.meta.url), apiReference());
