/** What stands in each table of a printed sheet, cell by cell, by the assessment's JSON alone. */
import type { Estimate } from '../../src/assessment.ts';
import type { SheetInput } from '../../src/sheet/index.ts';
import { allOf, type Printed } from './printedPdf.ts';

/** The figures of a cell in their order, or its whole text without white space; null where it has none to compare. */
export type Cell = readonly number[] | string | null;

interface ExpectedTable {
  readonly caption: string;
  /** Without the first cell, which names the row. */
  readonly rows: readonly (readonly Cell[])[];
}

/** Cells that are not what the JSON has, tables that it has no figures for, and tables that are missing. */
export function wrongFigures(printed: Printed, input: SheetInput): string[] {
  const tables = allOf(printed, 'Table');
  const expected = expectedTables(input);
  const captionOf = (it: Printed) => allOf(it, 'Caption')[0]?.text ?? '';
  const unknown = tables.filter(
    (it) => !expected.some(({ caption }) => captionOf(it).startsWith(bare(caption))),
  );
  return [
    ...unknown.map((it) => `not known: ${captionOf(it)}`),
    ...expected.flatMap(({ caption, rows }) => {
      const table = tables.find((it) => captionOf(it).startsWith(bare(caption)));
      if (table === undefined) return rows.length === 0 ? [] : [`missing: ${caption}`];
      const body = bodyRows(table);
      if (body.length !== rows.length) return [`${caption}: ${body.length} rows, not ${rows.length}`];
      return rows.flatMap((cells, i) => {
        const drawn = body[i].children.slice(1).filter(({ text }) => text !== '');
        const wanted = cells.filter((cell) => cell === null || cell.length > 0);
        if (drawn.length === wanted.length && wanted.every((cell, k) => isSame(drawn[k].text, cell)))
          return [];
        return [
          `${caption}, row ${i + 1}: ${drawn.map(({ text }) => text)} is not ${JSON.stringify(wanted)}`,
        ];
      });
    }),
  ];
}

export const bodyRows = (table: Printed): Printed[] =>
  allOf(table, 'TR').filter((row) => row.children.some(({ kind }) => kind === 'TD'));

const bare = (text: string) => text.replace(/\s/g, '');

/** A printed figure is the JSON's to half of its last digit. */
export function isSame(text: string, cell: Cell): boolean {
  if (cell === null) return true;
  if (typeof cell === 'string') return text === bare(cell);
  const figures = text.match(/−?\d+(\.\d+)?/g) ?? [];
  return (
    figures.length === cell.length &&
    figures.every((it, i) => {
      const lastDigit = 10 ** -(it.split('.')[1]?.length ?? 0);
      return Math.abs(Number(it.replace('−', '-')) - cell[i]) <= lastDigit / 2 + 1e-9;
    })
  );
}

export const interval = (it: Estimate | null | undefined): number[] =>
  it == null ? [] : [it.low, it.high, it.value];
export const known = (it: number | null | undefined): number[] => (it == null ? [] : [it]);
const clockOf = (it: string | null) => (it === null ? '' : it.slice(11, 16));
const mean = (values: readonly number[]) => values.reduce((sum, it) => sum + it, 0) / values.length;

/** "9 to 25 January 2027" */
function days(from: string | null, to: string | null): Cell {
  if (from === null || to === null) return null;
  const [first, last] = [from, to].map((it) => ({
    day: Number(it.slice(8, 10)),
    year: Number(it.slice(0, 4)),
  }));
  return first.year === last.year
    ? [first.day, last.day, last.year]
    : [first.day, first.year, last.day, last.year];
}

/** "9 January 2027, 12:00" */
const moment = (it: string | null): Cell =>
  it === null ? '' : [it.slice(8, 10), it.slice(0, 4), it.slice(11, 13), it.slice(14, 16)].map(Number);

const verdicts = {
  meets: 'performs as drawn',
  exceeds: 'loses more than drawn',
  undecided: 'cannot be told yet',
};

function expectedTables({ house, assessment, curves, files }: SheetInput): ExpectedTable[] {
  const { stages, design, comparisons, imports } = assessment;
  const share = (loss: number | null) =>
    design === null || loss === null ? [] : [(loss / design.heatLossWK) * 100];
  const weather = comparisons.flatMap((it) =>
    it.weather === undefined
      ? []
      : [[it.before, it.weather.before] as const, [it.after, it.weather.after] as const],
  );
  const moist = curves.flatMap((curve) => curve.moist ?? []);
  const outside = (date: number) =>
    curves[date].moist?.find(({ place }) => place === 'outside')?.absoluteHumidity;
  return [
    {
      caption: 'Each stage, with 95 % intervals',
      rows: stages.map(({ from, to, nights, timeConstantH, heatLossWK, gap }) => [
        days(from, to),
        [nights.filter(({ used }) => used).length, nights.length],
        interval(timeConstantH),
        interval(heatLossWK),
        interval(gap?.ratio),
        gap?.verdict ? verdicts[gap.verdict] : 'none',
      ]),
    },
    {
      caption: 'The designed heat loss',
      rows:
        design === null
          ? []
          : [
              ...design.elements.map(({ areaM2, uValue, heatLossWK, to }) => [
                [areaM2],
                known(uValue),
                known(heatLossWK),
                to === 'adjacent' ? [] : share(heatLossWK),
              ]),
              [[], [], [design.bridgesWK], share(design.bridgesWK)],
              [[], [], [design.ventilationWK], share(design.ventilationWK)],
              ...known(design.heatLossAsTestedWK).map((it) => [[], [], [it], []]),
              [[], [], [design.heatLossWK], [100]],
            ],
    },
    {
      caption: 'The weather over the hours',
      rows: weather
        .filter(([name], i) => weather.findIndex(([it]) => it === name) === i)
        .map(([, it]) => [
          [it.nights],
          known(it.meanOutdoorC),
          known(it.meanDifferenceK),
          known(it.windMS),
          known(it.irradianceWM2),
        ]),
    },
    {
      caption: 'Means of all nights',
      rows: [...new Set(moist.map(({ file }) => file))].map((file) => {
        const own = moist.filter((it) => it.file === file);
        const over = curves.flatMap((curve, i) => {
          const [it, there] = [curve.moist?.find((air) => air.file === file), outside(i)];
          return it === undefined || there === undefined ? [] : [1000 * (it.absoluteHumidity - there)];
        });
        return [
          [own.length],
          [mean(own.map((it) => it.temperature))],
          [mean(own.map((it) => it.relativeHumidity * 100))],
          [mean(own.map((it) => it.absoluteHumidity * 1000))],
          own[0].place === 'outside' || over.length === 0 ? [] : [mean(over)],
        ];
      }),
    },
    {
      caption: 'U-values that would explain the whole gap',
      rows: (stages.at(-1)?.gap?.elements ?? []).map((it) => [
        [it.uValueDrawn],
        it.uValueAlone === null ? '–' : interval(it.uValueAlone),
        it.uValueEvenly === null ? '–' : interval(it.uValueEvenly),
        [...it.couldExplainPercent, ...it.notes].map(({ text }) => text).join(' '),
      ]),
    },
    ...stages.flatMap(({ name, nights, estimates, rooms = [] }): ExpectedTable[] => [
      {
        caption: `“${name}”: ${nights.filter(({ used }) => used).length} of`,
        rows: nights.map((it) => [
          it.from === null || it.to === null ? '' : `${clockOf(it.from)}to${clockOf(it.to)}`,
          known(it.dropK),
          known(it.rateKPerH),
          known(it.meanDifferenceK),
          it.timeConstantH === null ? [] : [it.timeConstantH, ...known(it.timeConstantSeH)],
          [
            it.used ? 'used' : 'left out',
            ...(it.heated ? ['heated'] : []),
            ...it.reasons.map(({ text }) => text),
          ].join(';'),
        ]),
      },
      {
        caption: `Heat loss by each way${stages.length > 1 ? ` in “${name}”` : ''}`,
        rows: estimates.map((it) => [interval(it.heatLossWK)]),
      },
      {
        caption: `Each room by its own readings over the same hours${stages.length > 1 ? ` in “${name}”` : ''}`,
        rows: rooms.map((it) => [[it.nights], interval(it.timeConstantH), interval(it.ratio)]),
      },
    ]),
    {
      caption: 'Loggers',
      rows: house.loggers.map(({ file }) => {
        const read = imports.find((it) => it.file === file);
        const it = read?.channels.find(({ quantity }) => quantity === 'temperature');
        return [
          null,
          read?.understood?.preamble.serial ?? '',
          known(read?.intervalS).map((seconds) => seconds / 60),
          it === undefined
            ? null
            : [...known(it.min), ...known(it.max), it.readings, ...(it.doubted ? [it.doubted] : [])],
        ];
      }),
    },
    { caption: 'Files as they were read', rows: files.map(({ bytes, sha256 }) => [[bytes], sha256]) },
    {
      caption: 'How each file was understood',
      rows: imports.map(({ rows, from, to }) => [[rows], moment(from), moment(to), null]),
    },
  ];
}
