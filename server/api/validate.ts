/** Checks what a request brings against a schema; what does not fit is refused by name. */
import { validator } from 'hono/validator';
import { z } from 'zod';
import { Refused, refused } from '../refused.ts';

const parse = <S extends z.ZodType>(schema: S, value: unknown, where: string): z.output<S> => {
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
  validator('query', (value) => parse(schema, value, 'Query'));

export const checkedJson = <S extends z.ZodType>(schema: S) =>
  validator('json', (value, c) => {
    if (!/^application\/json\b/.test(c.req.header('content-type') ?? '')) throw wrongType('application/json');
    return parse(schema, value, 'Body');
  });

/** The same for a route that may be asked without a body. */
export const optionalJson = <S extends z.ZodType>(schema: S) =>
  validator('json', (value, c) => {
    const type = c.req.header('content-type');
    if (type !== undefined && !/^application\/json\b/.test(type)) throw wrongType('application/json');
    return parse(schema, value, 'Body');
  });

export const wrongType = (wanted: string) =>
  refused(415, 'wrong-content-type', `This route takes ${wanted} only.`, `Send it as ${wanted}.`);

/** A number in a query. */
export const queryNumber = z.string().trim().min(1, 'a number, not nothing').pipe(z.coerce.number<string>());
