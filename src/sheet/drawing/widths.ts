/** A drawing at two widths, since what is legible on paper is not on a phone: the style shows the one that fits. */
import { html, type Markup } from '../html.ts';

/** What A4 has between its margins [px]; Letter has a little more. */
export const PAPER_WIDTH = 680;
/** What a phone of 360 px has between its margins. */
const PHONE_WIDTH = 328;

export const atBothWidths = (draw: (width: number) => Markup): Markup =>
  html`<div class="wide">${draw(PAPER_WIDTH)}</div><div class="narrow">${draw(PHONE_WIDTH)}</div>`;

/** A length as SVG has it, without digits that nobody sees. */
export const px = (length: number) => String(Math.round(length * 10) / 10);
