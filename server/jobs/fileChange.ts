/** What a file that was brought changes of the house that it is added to. */
import type { House } from '../../src/house.ts';
import { exportsOf, filesOf, type Shelf } from '../../src/record/index.ts';
import { perReportedUnit } from '../../src/report.ts';
import { isoWithOffset } from '../../src/sky/zone.ts';
import type { FileChange } from '../api/shapes.ts';
import { counterpart, entriesOf, joinedChannels } from '../store/joinedChannels.ts';
import { forCommon, type Match } from './sameLogger.ts';

const FIRST = 5;

/**
 * @param house    names the file
 * @param isStored whether a file was there before
 * @param shelf    of `house`
 */
export function fileChange(
  name: string,
  match: Match,
  house: House,
  isStored: (file: string) => boolean,
  shelf: Shelf,
): FileChange {
  if (match.kind === 'same') return { ...match, newReadings: 0, conflicts: { count: 0, first: [] } };
  const naming = entriesOf(house).flatMap(({ entry }) => (filesOf(entry).includes(name) ? [entry] : []));
  const of = naming.flatMap(filesOf).find(isStored) ?? null;
  let newReadings = 0;
  let count = 0;
  const first: FileChange['conflicts']['first'][number][] = [];
  const seen = new Set<string>();
  for (const entry of naming) {
    const stored = exportsOf(entry, shelf).filter(({ file }) => isStored(file));
    const brought = shelf.read(name, entry);
    const series = joinedChannels(stored, entry);
    for (const channel of brought?.channels ?? []) {
      const key = JSON.stringify([channel.column, channel.quantity]);
      if (seen.has(key)) continue;
      seen.add(key);
      newReadings += channel.time.length;
      const own = counterpart(channel, brought?.channels ?? [], series);
      if (own === null) continue;
      const scale = perReportedUnit[channel.quantity] ?? 1;
      forCommon(own, channel, (i, j) => {
        newReadings--;
        if (own.value[i] === channel.value[j]) return;
        count++;
        if (first.length >= FIRST) return;
        first.push({
          at: isoWithOffset(channel.time[j], house.location.timeZone),
          column: channel.column,
          stored: own.value[i] / scale,
          brought: channel.value[j] / scale,
        });
      });
    }
  }
  return { kind: of === null ? 'new' : 'continues', of, newReadings, conflicts: { count, first } };
}
