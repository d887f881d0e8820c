/** The path of a file inside a house folder, and no other. */
import { refused } from '../refused.ts';

const LONGEST_PATH = 200;
/** Names that lead elsewhere, and the end of the path of a folder. */
const NO_NAMES = ['', '.', '..'];

/** @throws Refused when it leads elsewhere */
export function insidePath(path: string): string {
  const foreign = /[\\\0]/.test(path) || /^[A-Za-z]:/.test(path);
  if (foreign || path.split('/').some((part) => NO_NAMES.includes(part)) || path.length > LONGEST_PATH)
    throw refused(
      400,
      'path-refused',
      'This is not the path of a file inside a house folder.',
      `Name it as house.json does, such as "logs/living.csv": no "..", no backslash, at most ${LONGEST_PATH} characters.`,
    );
  return path;
}
