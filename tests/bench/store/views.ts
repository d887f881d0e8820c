/** What every contestant does: answers the readings view again and again, while nothing or an import goes on. */
export const VIEWS = 20;

export const cases = [1, 10].flatMap((years) =>
  ['idle', 'while an import runs'].map((meanwhile) => ({
    years,
    name: `${years === 1 ? 'a year' : `${years} years`}, ${meanwhile}`,
    importing: meanwhile !== 'idle',
  })),
);

export interface Viewed {
  /** Of each view [s]. */
  readonly waits: readonly number[];
  readonly channels: number;
  /** Intervals of each channel, and the least and greatest of the first one's. */
  readonly points: number;
  readonly least: number;
  readonly greatest: number;
}

/** @param view answers as JSON a list of channels, each with the least and greatest of every interval */
export async function viewed(view: () => Promise<string>): Promise<Viewed> {
  const waits: number[] = [];
  let answer = '';
  for (let i = 0; i < VIEWS; i++) {
    const before = performance.now();
    answer = await view();
    waits.push((performance.now() - before) / 1000);
  }
  const { channels }: { channels: { min: (number | null)[]; max: (number | null)[] }[] } = JSON.parse(answer);
  const [{ min, max }] = channels;
  const known = (values: (number | null)[]) => values.filter((it) => it !== null);
  return {
    waits,
    channels: channels.length,
    points: known(min).length,
    least: Math.min(...known(min)),
    greatest: Math.max(...known(max)),
  };
}

/** Does it again and again until it is told to stop, and then waits for the last. */
export function meanwhile(importing: boolean, once: () => Promise<unknown>): () => Promise<number> {
  let goesOn = importing;
  let times = 0;
  const done = (async () => {
    for (; goesOn; times++) await once();
  })();
  return async () => {
    goesOn = false;
    await done;
    return times;
  };
}
