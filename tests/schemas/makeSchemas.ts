/** Writes the published schemas beside their source: `npm run schemas`. */
import { writeFileSync } from 'node:fs';
import { published } from './schemas.ts';

for (const [file, text] of Object.entries(published))
  writeFileSync(new URL(`../../src/${file}`, import.meta.url), text);
