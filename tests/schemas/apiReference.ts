/** The reference of the HTTP API, made from the routes and the schemas that they check with. */
import { z } from 'zod';
import { type Taken, takenBy } from '../../server/api/validate.ts';
import { createApp } from '../../server/app.ts';
import type { Services } from '../../server/services.ts';
import { apiWords } from './apiWords.ts';

export interface Route {
  /** "GET /api/houses/:id" */
  readonly route: string;
  readonly takes: readonly Taken[];
}

/** Every route that the application answers, the pages apart. Nothing is asked of the services for that. */
export function apiRoutes(): readonly Route[] {
  const routes = new Map<string, readonly Taken[]>();
  for (const { method, path, handler } of createApp({ pages: '' } as Services).routes) {
    if (method === 'ALL') continue; // what stands before all routes, and the refusals behind them
    const route = `${method} ${path}`;
    routes.set(route, [...(routes.get(route) ?? []), ...takenBy(handler)]);
  }
  return Array.from(routes, ([route, takes]) => ({ route, takes }));
}

const head = `# The HTTP API

Made by \`npm run schemas\` from the routes and the schemas that they check with: do not edit.

Everything is below the address that the dashboard printed when it started. Bodies are JSON unless it says otherwise;
keys that are not known are refused. The types of the answers are in \`server/api/shapes.ts\` and \`accessShapes.ts\`.
Every refusal is a \`Refusal\`: \`{ "problems": [{ "code", "text", "where"?, "remedy"? }] }\`, with the status 400 (not
understood), 401 or 403 (not allowed), 404 (not there), 409 (not as things stand), 413 (too large), 415 (another content
type), 422 (no log, or not of this house), 429 (too often), 503 or 507 (the store). Where a passphrase is asked for, sign
in first and send the cookie. Requests of other sites' pages are refused.
`;

export const apiReference = (): string =>
  `${[head.trim(), ...apiRoutes().flatMap(sectionOf)].join('\n\n')}\n`;

const sectionOf = ({ route, takes }: Route) => [`## ${route}`, doesAndAnswers(route), ...takes.map(taken)];

function doesAndAnswers(route: string): string {
  const words = apiWords[route];
  if (words === undefined) throw new Error(`apiWords.ts has no words for ${route}`);
  return `${words.does} Answers: ${/^[A-Z]/.test(words.answers) || /[{]/.test(words.answers) ? `\`${words.answers}\`` : words.answers}.`;
}

function taken({ in: where, type, schema, optional }: Taken): string {
  const what = where === 'query' ? 'Query' : `Body, \`${type}\``;
  if (schema === null) return `${what}: the bytes of the file.`;
  const { $schema: _, ...shape } = z.toJSONSchema(schema, { io: 'input' });
  return `${what}${optional ? ' (may be left out)' : ''}:\n\n\`\`\`\n${JSON.stringify(shape, null, 1)}\n\`\`\``;
}
