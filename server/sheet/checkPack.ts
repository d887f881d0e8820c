/** `sheet --check PACK`: whether a pack is as it was made, and whether its figures come out again. */
import { readFile } from 'node:fs/promises';
import { isDeepStrictEqual } from 'node:util';
import { assess } from '../../src/assess.ts';
import type { Assessment } from '../../src/assessment.ts';
import { readHouse } from '../../src/houseFile.ts';
import { reportOf } from '../../src/report.ts';
import { ASSESSMENT } from '../../src/sheet/pack/names.ts';
import { readPack } from '../../src/sheet/pack/readPack.ts';
import { figures, say } from '../../src/words/index.ts';
import { asLine } from '../assessCommand.ts';
import { softwareVersion } from '../root.ts';
import { sha256 } from '../store/sha256.ts';

interface Out {
  write(text: string): unknown;
}

const NOT_AS_PACKED = 1;
const NOT_CHECKED = 2;

/** 0 when all is as packed and the assessment comes out the same; 1 when not; 2 when it cannot be told. */
export async function checkPack(path: string, out: Out, err: Out): Promise<number> {
  const own = `Stillwarm ${softwareVersion().split(' ')[0]}`;
  const pack = await readPack(await readFile(path), async (bytes) => sha256(bytes), own);
  if (pack.kind === 'refused') {
    for (const problem of pack.problems) err.write(`${asLine(problem)}\n`);
    return NOT_AS_PACKED;
  }
  const { files, all, software, otherVersion } = pack;
  const packed = all.get(ASSESSMENT);
  if (software === null || packed === undefined) {
    err.write('This is a plain house folder: it has no hashes and no assessment to compare with.\n');
    return NOT_CHECKED;
  }
  out.write(
    `All ${figures.count(files.size, 'file')} of the house are as they were packed by ${software}.\n`,
  );
  if (otherVersion !== null) out.write(`${asLine(otherVersion)}\n`);
  const again = assessmentOf(files, err);
  if (again === null) return NOT_CHECKED;
  const before: unknown = JSON.parse(new TextDecoder().decode(packed));
  const same = isDeepStrictEqual(JSON.parse(JSON.stringify(again)), before);
  out.write(
    same
      ? `Worked out again by ${own}: the same assessment, to the last digit.\n`
      : `Worked out again by ${own}: the assessment differs from the packed one${own === software ? '' : `, which is of ${software}`}.\n`,
  );
  return same ? 0 : NOT_AS_PACKED;
}

function assessmentOf(files: ReadonlyMap<string, Uint8Array>, err: Out): Assessment | null {
  const reading = readHouse(new TextDecoder().decode(files.get('house.json')));
  if (reading.kind === 'problems') {
    for (const problem of reading.problems) err.write(`${asLine(say(problem))}\n`);
    return null;
  }
  const assessing = assess(reading.house, files);
  if (assessing.kind === 'assessed') return reportOf(assessing.evidence);
  err.write('Nothing can be assessed from these files.\n');
  return null;
}
