import { h, render } from 'preact';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { AskedSpan } from '../../../web/api.ts';
import { useFiner } from '../../../web/charts/useFiner.ts';

const record = (name: string) => ({ name, first: 0, last: 1000 });
type Part = ReturnType<typeof record>;

/** What the hook gave last, and the parts asked for that have not come yet. */
let given: ReturnType<typeof useFiner<Part>>;
const asked: { readonly span: AskedSpan; readonly come: (part: Part) => void }[] = [];
const get = (span: AskedSpan) => new Promise<Part>((come) => asked.push({ span, come }));
function Shown({ whole }: { whole: Part }) {
  given = useFiner(whole, 100, get, 'house');
  return null;
}

// What shows nothing needs no more of a document than this.
let place: Element;
beforeEach(() => {
  vi.stubGlobal('document', {});
  place = { childNodes: [] } as unknown as Element;
  asked.length = 0;
});
afterEach(() => {
  render(null, place);
  vi.unstubAllGlobals();
});

const show = (whole: Part) => render(h(Shown, { whole }), place);
const answered = async (name: string) => {
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  asked.shift()?.come(record(name));
};

test('a part is read finer, with half as much to either side, and let go with the whole', async () => {
  const whole = record('whole');
  show(whole);
  expect(given.near).toBe(whole);
  given.look({ from: 400, to: 600 });
  await vi.waitFor(() => expect(asked[0]?.span).toEqual({ from: 300, to: 700, points: 200 }));
  expect(given.near).toBe(whole);
  await answered('part');
  await vi.waitFor(() => expect(given.near.name).toBe('part'));
  given.look({ from: 0, to: 1000 });
  await vi.waitFor(() => expect(given.near).toBe(whole));
});

test('until the part has come the latest whole stands', async () => {
  show(record('whole'));
  await vi.waitFor(() => expect(given.loaded.kind).toBe('loaded'));
  const later = record('later');
  show(later);
  given.look({ from: 400, to: 600 });
  await vi.waitFor(() => expect(asked).toHaveLength(1));
  expect(given.near).toBe(later);
});

test('where the whole was read anew while one looked closer, so is the part', async () => {
  show(record('whole'));
  given.look({ from: 400, to: 600 });
  await answered('part');
  await vi.waitFor(() => expect(given.near.name).toBe('part'));
  show(record('later'));
  await answered('later part');
  await vi.waitFor(() => expect(given.near.name).toBe('later part'));
});
