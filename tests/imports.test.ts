/** The rooms and who may import whom: `src/` runs one way, and nothing imports `server/` or `web/`. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { expect, test } from 'vitest';

const root = new URL('..', import.meta.url).pathname;

/** The order of `src/`: a room imports from its own group's room or from earlier groups only. */
const groups: readonly (readonly string[])[] = [
  ['maths', 'house.ts', 'houseFile.ts', 'houseText.ts', 'assessment.ts'],
  ['air', 'sky', 'series'],
  ['logs', 'fabric', 'sense'],
  ['record'],
  ['cooling'],
  ['heatloss'],
  ['damp', 'gap'],
  ['words'],
  ['assessing'],
  ['assess.ts', 'report.ts', 'curves.ts'],
  ['sheet'],
];

interface Import {
  readonly place: string;
  readonly from: string;
  readonly to: string;
}

function importsBelow(folder: string): Import[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .map((file) => join(folder, file))
    .flatMap((file) =>
      readFileSync(join(root, file), 'utf8')
        .split('\n')
        .flatMap((line, i) => {
          const target = /(?:from|import)\s*\(?\s*'([^']+)'/.exec(line)?.[1];
          if (target === undefined) return [];
          const to = target.startsWith('.') ? relative(root, join(root, dirname(file), target)) : target;
          return [{ place: `${file}:${i + 1}`, from: file, to }];
        }),
    );
}

const roomOf = (file: string) => file.split('/')[1] ?? file;
const groupOf = (room: string) => groups.findIndex((rooms) => rooms.includes(room));

/** Lines of `src/` that import from a later group, or from a neighbour of their own group. */
function uphill(imports: readonly Import[]): string[] {
  return imports
    .filter(({ to }) => to.startsWith('src/') || to.startsWith('server/') || to.startsWith('web/'))
    .filter(({ from, to }) => {
      const [own, other] = [roomOf(from), roomOf(to)];
      if (!to.startsWith('src/')) return true;
      if (own === other) return false;
      const together = groupOf(own) === groupOf(other) && own.endsWith('.ts') && other.endsWith('.ts');
      return !together && (groupOf(other) < 0 || groupOf(other) >= groupOf(own)) && !isBorder(own, other);
    })
    .map(({ place, to }) => `${place} goes uphill to ${to}`);
}

/** `maths/` shares its group with the border files and may name their types (an estimate). */
const isBorder = (own: string, other: string) => own === 'maths' && other === 'assessment.ts';

test('every room of src/ stands in the order of rooms', () => {
  const rooms = new Set(readdirSync(join(root, 'src')).filter((it) => !it.endsWith('.json')));
  expect([...rooms].filter((room) => groupOf(room) < 0)).toEqual([]);
});

test('imports inside src/ run downhill only', () => {
  expect(uphill(importsBelow('src'))).toEqual([]);
});

test('the check sees an import that goes uphill', () => {
  const bad = { place: 'src/maths/a.ts:1', from: 'src/maths/a.ts', to: 'src/gap/index.ts' };
  expect(uphill([bad])).toEqual(['src/maths/a.ts:1 goes uphill to src/gap/index.ts']);
});

test('src/ knows neither files nor network nor a page', () => {
  const impure = importsBelow('src').filter(({ to }) => to.startsWith('node:'));
  expect(impure.map(({ place, to }) => `${place} imports ${to}`)).toEqual([]);
});

test('server/ does not import web/', () => {
  const across = importsBelow('server').filter(({ to }) => to.startsWith('web/'));
  expect(across.map(({ place }) => place)).toEqual([]);
});
