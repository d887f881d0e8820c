/** A folder with a house.json in it -> a house of its own, unless there is one of that name. */
import { Refused } from '../../refused.ts';
import { HOUSE_FILE } from '../stagedFolder.ts';
import type { FoundFile } from './filesIn.ts';
import { houseThere, isCalled } from './houseOfFolder.ts';
import { openedFile } from './openedFile.ts';
import type { WatchNeeds } from './watching.ts';

/**
 * Stores the house; answers its id and the files that it names.
 *
 * @throws Refused when house.json has a mistake, a file that it names is not there yet, or its name is another's
 */
export async function newHouse(
  files: readonly FoundFile[],
  { folder, bringings, reading }: Pick<WatchNeeds, 'folder' | 'bringings' | 'reading'>,
): Promise<{ readonly id: string; readonly named: readonly FoundFile[] }> {
  const bringing = await bringings.start(null);
  try {
    for (const file of files) await bringings.put(bringing, file.name, openedFile(folder, file));
    const { house, problems, missing, files: previews } = await bringings.preview(bringing);
    if (problems.length > 0) throw new Refused(422, problems);
    if (house !== null && isCalled(house.name, reading.houses())) throw houseThere(house.name);
    if (missing.length > 0) throw notAllThere(missing);
    const id = await bringings.keep(bringing);
    const named = new Set(previews.flatMap(({ imported, named: it }) => (it ? [imported.file] : [])));
    return { id, named: files.filter(({ name }) => name !== HOUSE_FILE && named.has(name)) };
  } catch (error) {
    await bringings.drop(bringing).catch(() => {}); // what is the matter is told already
    throw error;
  }
}

const notAllThere = (missing: readonly string[]) =>
  new Refused(422, [
    {
      code: 'files-to-come',
      text: `Its house.json names files that have not come yet: ${missing.join(', ')}.`,
      remedy: 'Put them beside it, or take them out of house.json; then the house is read.',
    },
  ]);
