/** Judges many houses, shared out among child processes, so that every core works. */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import type { JudgedRecord } from './judge.ts';
import { judgeShare, type Share } from './judgeShare.ts';

export interface HouseToJudge {
  readonly type: string;
  readonly seed: number;
}

export interface Judging {
  readonly houses: readonly HouseToJudge[];
  /** Only tiers that begin so. */
  readonly tier?: string;
}

/** @param onHouse told after each house how many are done */
export async function judgeAll(judging: Judging, onHouse: (done: number) => void): Promise<JudgedRecord[]> {
  let done = 0;
  const processes = Math.min(availableParallelism(), judging.houses.length);
  const shares = Array.from({ length: processes }, (_, p) => ({
    ...judging,
    houses: judging.houses.filter((_, i) => i % processes === p),
  }));
  const judged = await Promise.all(
    shares.map((share) =>
      inProcess(share, () => {
        onHouse(++done);
      }),
    ),
  );
  const order = new Map(judging.houses.map(({ type, seed }, i) => [`${type} ${seed}`, i]));
  const placeOf = ({ type, seed }: JudgedRecord) => order.get(`${type} ${seed}`) ?? 0;
  return judged.flat().sort((a, b) => placeOf(a) - placeOf(b));
}

function inProcess(share: Share, onHouse: () => void): Promise<JudgedRecord[]> {
  if (share.houses.length < 2) return Promise.resolve(judgeShare(share, onHouse));
  return new Promise((resolve, reject) => {
    const judged: JudgedRecord[] = [];
    const child = fork(new URL('./judgeShare.ts', import.meta.url), { serialization: 'advanced' });
    child.on('message', (records: JudgedRecord[]) => {
      judged.push(...records);
      onHouse();
    });
    child.on('error', reject);
    child.on('exit', (code) =>
      code === 0 ? resolve(judged) : reject(new Error(`a judging process ended with ${code}`)),
    );
    child.send(share);
  });
}
