/** What axe-core finds on the page as it stands. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** @returns rule and first place of each; empty when there are none */
export async function axeViolations(page: Page): Promise<string[]> {
  // Through the debugger, which the page's own policy against inline script does not reach.
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const run = Reflect.get(window, 'axe') as {
      run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
    };
    return (await run.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0].html}`);
  });
}
