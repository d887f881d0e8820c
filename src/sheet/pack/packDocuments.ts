/** The documents of a handover pack: what is put beside `house.json` and the raw files, which stay as they are. */
import type { SheetInput } from '../input.ts';
import { firstPageHtml, sheetHtml } from '../sheet.ts';
import { hashLine } from './hashList.ts';
import {
  ASSESSMENT,
  FIRST_PAGE,
  FOLDER,
  HASHES,
  isOfPack,
  PACK_FORMAT,
  README,
  SHEET,
  VERSIONS,
} from './names.ts';

export interface Document {
  readonly name: string;
  readonly text: string;
}

/** A file of the house that has a name of the pack's own; null when there is none. */
export const clashing = ({ files }: SheetInput): string | null =>
  files.find(({ name }) => isOfPack(name))?.name ?? null;

/** @param sha256 of a text in UTF-8, hexadecimal */
export function packDocuments(input: SheetInput, sha256: (text: string) => string): Document[] {
  const documents: readonly Document[] = [
    { name: README, text: readme(input) },
    { name: SHEET, text: sheetHtml(input) },
    { name: FIRST_PAGE, text: firstPageHtml(input) },
    // As `assess --json` writes it, so that the two can be compared byte for byte.
    { name: ASSESSMENT, text: `${JSON.stringify(input.assessment, null, 2)}\n` },
    {
      name: VERSIONS,
      text: `${JSON.stringify({ pack: PACK_FORMAT, software: `Stillwarm ${input.version}`, made: input.date }, null, 2)}\n`,
    },
  ];
  const hashes = [
    ...input.files.map(({ name, sha256: hash }) => hashLine(hash, name)),
    ...documents.map(({ name, text }) => hashLine(sha256(text), name)),
  ];
  return [...documents, { name: HASHES, text: hashes.join('') }];
}

const readme = ({ house, version, date }: SheetInput): string => `HANDOVER PACK
${house.name}
Made on ${date} by Stillwarm ${version}

${SHEET}
    The handover sheet. It opens in any browser, without a network, and prints on A4 or Letter.
${FIRST_PAGE}
    Its first page alone, for the people who live in the house.
house.json and the files it names
    What was measured and what was drawn, byte for byte as it was read.
${ASSESSMENT}
    The result, as the program wrote it.
${HASHES}
    The SHA-256 hash of each file, a line each: "sha256  name".

A SECOND OPINION
Unpack this zip, and in the folder that comes of it run

    sha256sum --check ${HASHES}

It tells which file is not as it was packed. The hashes of the raw files also stand on the signed sheet. Then

    stillwarm assess . --json

With version ${version} it prints ${ASSESSMENT} again, the same figures to the last digit.
Another version may differ; the sheet says which version its figures are of.

A result is evidence, not a certificate. Local codes and licensed practice decide.
All that the pack itself adds lies in ${FOLDER} and in this file.
`;
