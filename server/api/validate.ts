/** Checks what a request brings against a schema; what does not fit is refused by name. */
import type { MiddlewareHandler } from 'hono';
import { createMiddleware } from 'hono/factory';
import { validator } from 'hono/validator';
import { z } from 'zod';
import { Refused, refused } from '../refused.ts';

/** What a route takes, remembered of its middleware for the reference. */
export interface Taken {
  readonly in: 'query' | 'body';
  /** Of the body. */
  readonly type: string | null;
  /** Null for bytes. */
  readonly schema: z.ZodType | null;
  readonly optional: boolean;
}
const taken = new WeakMap<object, readonly Taken[]>();

/** What a handler of a route takes; nothing for one that is none of these here. */
export const takenBy = (handler: object): readonly Taken[] => taken.get(handler) ?? [];

function taking<H extends object>(handler: H, ...what: readonly Taken[]): H {
  taken.set(handler, what);
  return handler;
}
const body = (type: string, schema: z.ZodType | null, optional = false): Taken => ({
  in: 'body',
  type,
  schema,
  optional,
});

export const parse = <S extends z.ZodType>(schema: S, value: unknown, where: string): z.output<S> => {
  const checked = schema.safeParse(value);
  if (checked.success) return checked.data;
  throw new Refused(
    400,
    checked.error.issues.map(({ path, message }) => ({
      code: 'request-not-understood',
      text: `${[where, ...path].join(' ')}: ${message}.`,
    })),
  );
};

export const checkedQuery = <S extends z.ZodType>(schema: S) =>
  taking(
    validator('query', (value) => parse(schema, value, 'Query')),
    { in: 'query', type: null, schema, optional: true },
  );

export const checkedJson = <S extends z.ZodType>(schema: S) =>
  taking(
    validator('json', (value, c) => {
      if (!/^application\/json\b/.test(c.req.header('content-type') ?? ''))
        throw wrongType('application/json');
      return parse(schema, value, 'Body');
    }),
    body('application/json', schema),
  );

/** The same for a route that may be asked without a body. */
export const optionalJson = <S extends z.ZodType>(schema: S) =>
  taking(
    validator('json', (value, c) => {
      const type = c.req.header('content-type');
      if (type !== undefined && !/^application\/json\b/.test(type)) throw wrongType('application/json');
      return parse(schema, value, 'Body');
    }),
    body('application/json', schema, true),
  );

/** A route that takes the bytes of one file. */
export const bytesOnly: MiddlewareHandler = taking(
  createMiddleware(async (c, next) => {
    if (c.req.header('content-type') !== 'application/octet-stream')
      throw wrongType('application/octet-stream');
    await next();
  }),
  body('application/octet-stream', null),
);

/** A route that takes text or JSON, each by its content type; it looks at them itself. */
export const textOrJson = (type: string, schema: z.ZodType): MiddlewareHandler =>
  taking(
    createMiddleware(async (c, next) => {
      const sent = c.req.header('content-type')?.split(';')[0].trim().toLowerCase();
      if (sent !== type && sent !== 'application/json') throw wrongType(`${type} or application/json`);
      await next();
    }),
    body(type, null),
    body('application/json', schema),
  );

export const wrongType = (wanted: string) =>
  refused(415, 'wrong-content-type', `This route takes ${wanted} only.`, `Send it as ${wanted}.`);

/** A number in a query. */
export const queryNumber = z.string().trim().min(1, 'a number, not nothing').pipe(z.coerce.number<string>());
