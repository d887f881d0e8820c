/** Judges a share of the houses; run as a process of its own it takes the share as a message. */
import { provingRecords } from '../records/cache.ts';
import { type JudgedRecord, judgeRecord } from './judge.ts';
import type { Judging } from './judgeAll.ts';

export type Share = Judging;

export function judgeShare(
  { houses, tier }: Share,
  onHouse: (records: readonly JudgedRecord[]) => void,
): JudgedRecord[] {
  return houses.flatMap(({ type, seed }) => {
    const records = provingRecords(type, seed).filter((it) => tier === undefined || it.tier.startsWith(tier));
    const judged = records.map(judgeRecord);
    onHouse(judged);
    return judged;
  });
}

if (process.send !== undefined && process.argv[1]?.endsWith('judgeShare.ts'))
  process.once('message', (share: Share) => {
    judgeShare(share, (records) => process.send?.(records));
  });
