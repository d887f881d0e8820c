/** What the files of a pack are called, beside the house folder's own. */

export const README = 'README.txt';
export const FOLDER = 'handover/';
export const SHEET = `${FOLDER}sheet.html`;
export const FIRST_PAGE = `${FOLDER}first-page.html`;
export const ASSESSMENT = `${FOLDER}assessment.json`;
export const VERSIONS = `${FOLDER}pack.json`;
export const HASHES = `${FOLDER}hashes.txt`;

/** Raised when a pack is laid out so that an older program would misread it. */
export const PACK_FORMAT = 1;

/** Names that belong to the pack itself. */
export const isOfPack = (name: string) => name === README || name.startsWith(FOLDER);
