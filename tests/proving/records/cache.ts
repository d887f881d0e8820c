/** Simulated records kept on disk, so that only the first run of a change to the proving ground pays for them. */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { deserialize, serialize } from 'node:v8';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { houseTypeNamed } from '../houses/index.ts';
import { byTransmittance, designHeatLoss } from './drawnHouse.ts';
import { runHouse } from './houseRun.ts';
import type { ProvingRecord } from './provingRecord.ts';
import { type RawRecord, rawRecords } from './records.ts';

const proving = new URL('../', import.meta.url);
const series = new URL('../../../src/series/', import.meta.url);
const folder = new URL('../../../node_modules/.cache/proving/', import.meta.url);

/** All records of one house: from disk when it was simulated by the same code, else simulated now and kept. */
export function provingRecords(type: string, seed: number): ProvingRecord[] {
  const name = `${type.replaceAll(/[^a-z]+/gi, '-')}-${seed}-${sourceHash()}.bin`;
  const file = new URL(name, folder);
  const kept = read(file);
  if (kept !== null) return kept.map(withDesign);
  const raw = rawRecords(runHouse(houseTypeNamed(type), seed));
  mkdirSync(folder, { recursive: true });
  const half = new URL(`${name}.${process.pid}`, folder); // another process may be writing the same house
  writeFileSync(half, deflateRawSync(serialize(raw), { level: 1 }));
  renameSync(half, file);
  return raw.map(withDesign);
}

function read(file: URL): RawRecord[] | null {
  try {
    return deserialize(inflateRawSync(readFileSync(file)));
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') return null;
    throw error;
  }
}

/** What hangs on the code of `src/fabric` is worked out at every reading, so that changes there need no new run. */
export function withDesign({ ownSeed, stages, ...raw }: RawRecord): ProvingRecord {
  const byU = raw.tier === 'loggers, U-values and a capacity figure';
  const [first] = stages;
  const last = stages[stages.length - 1];
  return {
    ...raw,
    house: byU ? byTransmittance(raw.house, ownSeed) : raw.house,
    truth: {
      stages,
      ratio: stages.length > 1 ? last.heatLossCoefficient / first.heatLossCoefficient : null,
      ratioToDesign: last.heatLossCoefficient / designHeatLoss(raw.house),
    },
  };
}

let hash: string | null = null;

/** Of all that makes a record: this folder without tests, judging and the sample, and how series are resampled. */
function sourceHash(): string {
  if (hash !== null) return hash;
  const sum = createHash('sha256');
  for (const root of [proving, series])
    for (const file of readdirSync(root, { recursive: true, encoding: 'utf8' }).toSorted())
      if (file.endsWith('.ts') && !/\.test\.ts$|^judging|^sample|^makeSample|^runProve/.test(file))
        sum.update(file).update(readFileSync(new URL(file, root)));
  hash = sum.digest('hex').slice(0, 12);
  return hash;
}
