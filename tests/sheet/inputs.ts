/** Houses as the sheet is made of them: the demonstration, a small invented one, and what each may lack. */
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { folderOnRecord } from '../../server/sheet/folderOnRecord.ts';
import { sha256 } from '../../server/store/sha256.ts';
import { assess } from '../../src/assess.ts';
import { nightCurves } from '../../src/curves.ts';
import { houseSchema } from '../../src/house.ts';
import { reportOf } from '../../src/report.ts';
import type { SheetInput } from '../../src/sheet/index.ts';
import { house, houseFolder } from '../server/inventedHouse.ts';

export const sampleFolder = new URL('../../sample-logs', import.meta.url).pathname;

const rest = { version: '1.2.3', date: '2027-02-14', photos: [] };

/** Two loggers, three nights, no design. */
export function inventedInput(change: Readonly<Record<string, unknown>> = {}): SheetInput {
  const changed = houseSchema.parse({ ...house, ...change });
  const bytes = new Map(
    Object.entries(houseFolder).map(([name, text]) => [name, new TextEncoder().encode(text)]),
  );
  const assessing = assess(changed, bytes);
  if (assessing.kind !== 'assessed') throw new Error('the invented house has no record');
  const files = Array.from(bytes, ([name, it]) => ({ name, bytes: it.length, sha256: sha256(it) }));
  const { evidence } = assessing;
  return { house: changed, assessment: reportOf(evidence), curves: nightCurves(evidence), files, ...rest };
}

export async function inputOfFolder(path: string): Promise<SheetInput> {
  const folder = await folderOnRecord(path);
  if (folder.kind === 'problems') throw new Error(folder.problems.map(({ text }) => text).join(' '));
  const assessing = assess(folder.house, folder.bytes, undefined, folder.remarks);
  if (assessing.kind !== 'assessed') throw new Error('there is no record');
  const { evidence } = assessing;
  return {
    house: folder.house,
    assessment: reportOf(evidence),
    curves: nightCurves(evidence),
    files: folder.files,
    ...rest,
  };
}

export async function writeFolder(folder: string, files: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, text] of Object.entries(files)) {
    await mkdir(dirname(join(folder, name)), { recursive: true });
    await writeFile(join(folder, name), text);
  }
}

/** The last stage alone, without the one before it. */
export const withOneStage = (input: SheetInput): SheetInput => ({
  ...input,
  assessment: { ...input.assessment, stages: input.assessment.stages.slice(-1), comparisons: [] },
});

/** As many stages, each like the last, one compared with the next. */
export function withStages(input: SheetInput, count: number): SheetInput {
  const { stages, comparisons } = input.assessment;
  const many = Array.from({ length: count }, (_, i) => ({
    ...stages[i % stages.length],
    name: `Stage ${i + 1}, the ${i % 2 === 0 ? 'north' : 'south'} side sealed`,
  }));
  const compared = many
    .slice(1)
    .map(({ name }, i) => ({ ...comparisons[0], before: many[i].name, after: name }));
  return { ...input, assessment: { ...input.assessment, stages: many, comparisons: compared } };
}

const DAY = 86_400; // [s]

/** So many nights in one stage, the last ones over and over, a day later each time; every fifth left out. */
export function withNights(input: SheetInput, count: number): SheetInput {
  const stage = input.assessment.stages[input.assessment.stages.length - 1];
  const curves = input.curves.slice(-stage.nights.length);
  const shifted = Array.from({ length: count }, (_, i) => {
    const [curve, night] = [curves[i % curves.length], stage.nights[i % curves.length]];
    const later = i * DAY - (Date.parse(curve.date) - Date.parse(curves[0].date)) / 1000;
    const date = new Date(Date.parse(curve.date) + later * 1000).toISOString().slice(0, 10);
    const leftOut = i % 5 === 4;
    return {
      curve: {
        ...curve,
        date,
        sunset: curve.sunset + later,
        sunrise: curve.sunrise + later,
        time: curve.time.map((it) => it + later),
        window: curve.window && { from: curve.window.from + later, to: curve.window.to + later },
      },
      night: {
        ...night,
        date,
        used: night.used && !leftOut,
        reasons: leftOut ? [{ code: 'uneven-fall', text: 'the fall is uneven' }] : night.reasons,
      },
    };
  });
  return {
    ...input,
    curves: shifted.map(({ curve }) => curve),
    assessment: {
      ...input.assessment,
      stages: [{ ...stage, nights: shifted.map(({ night }) => night) }],
      comparisons: [],
    },
  };
}
