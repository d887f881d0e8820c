/** What is filled in by hand: photos or room for them, and who signs. */
import { html, type Markup } from './html.ts';
import type { Photo } from './input.ts';
import { blank, paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';

const FRAMES = 4;

export const photosPart = (photos: readonly Photo[]): Markup | null =>
  photos.length === 0
    ? part(
        words.titles.photos,
        paragraph(words.photoHint, 'small lesser'),
        html`<div class="photos">${Array.from({ length: FRAMES }, () => html`<figure><div class="frame"></div><div class="caption"></div></figure>\n`)}</div>`,
      )
    : part(
        words.titles.photos,
        html`<div class="photos">${photos.map(({ dataUri }, i) => html`<figure><img src="${dataUri}" alt="${words.picture(i + 1)}"><figcaption class="small lesser">${words.picture(i + 1)}</figcaption><div class="caption"></div></figure>\n`)}</div>`,
      );

export const signedPart = (): Markup =>
  html`<div class="signed">${part(
    words.titles.signed,
    words.signatures.map(
      (who) =>
        html`<div class="signature"><h4>${who}</h4>${words.signatureFields.map((field) => blank(field))}</div>\n`,
    ),
  )}</div>`;
