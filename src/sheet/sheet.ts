/** An assessment -> the sheet that is printed, signed and handed over: one file of HTML that asks for nothing. */
import { builderPart } from './builder.ts';
import { firstPage } from './firstPage.ts';
import { escaped, html, type Markup } from './html.ts';
import type { SheetInput } from './input.ts';
import { recordPart } from './record.ts';
import * as words from './sheetWords.ts';
import { photosPart, signedPart } from './signing.ts';
import { styles } from './styles.ts';

/** All pages: the first for the people who live there, then the builder's, then the record. */
export const sheetHtml = (input: SheetInput): string =>
  documentOf(input, [
    firstPage(input, words.openQuestion),
    html`<h2>${words.titles.builder}</h2>\n${builderPart(input)}`,
    html`<h2>${words.titles.record}</h2>\n${recordPart(input)}${photosPart(input.photos)}${signedPart()}`,
  ]);

/** The first page alone. */
export const firstPageHtml = (input: SheetInput): string =>
  documentOf(input, [firstPage(input, words.openQuestionAlone)]);

/** The policy shuts out what the sheet never needs: scripts, and anything from elsewhere. */
const documentOf = ({ house: { name } }: SheetInput, pages: readonly Markup[]): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escaped(`${words.titles.sheet}: ${name}`)}</title>
<style>${styles(name)}</style>
</head>
<body>
<main>
${pages.map((page) => html`<div class="page">${page}</div>\n`.text).join('')}</main>
</body>
</html>
`;
