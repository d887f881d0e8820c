/** Prints the table for the tuning and for the judging seeds. */
import { judgeHouse, judgingSeeds, table, tuningSeeds, wallKinds } from './prove.ts';

for (const [name, seeds] of [
  ['tuning', tuningSeeds],
  ['judging', judgingSeeds],
] as const) {
  const judged = seeds.flatMap((seed) => wallKinds.flatMap((kind) => judgeHouse(kind, seed)));
  console.log(
    `Seeds for ${name}: ${seeds[0]} to ${seeds[seeds.length - 1]}, ${wallKinds.length} kinds of wall\n${table(judged)}\n`,
  );
}
