/** The small pieces that the parts of a sheet are put together from. */
import type { Message } from '../assessment.ts';
import { tied } from './drawing/tied.ts';
import { type Content, html, type Markup } from './html.ts';

/** A paragraph; nothing where there is nothing to say. */
export const paragraph = (text: string | null, className = ''): Markup | null =>
  text === null || text === ''
    ? null
    : html`<p${className === '' ? null : html` class="${className}"`}>${tied(text)}</p>\n`;

/** A heading with what belongs to it; nothing where nothing does. */
export function part(title: string, ...contents: readonly Content[]): Markup | null {
  const there = contents.flat().filter((it) => it !== null);
  return there.length === 0 ? null : html`<section><h3>${title}</h3>\n${there}</section>\n`;
}

/** What was found or said, each with its place and what to do. The same thing is said once. */
export function messages(all: readonly Message[]): Markup | null {
  const seen = new Set<string>();
  const told = all.filter((it) => {
    const key = JSON.stringify([it.text, it.where ?? null]);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  if (told.length === 0) return null;
  return html`<ul>${told.map(
    (it) =>
      html`<li>${placeOf(it)}${tied(it.text)}${it.remedy === undefined ? null : html` <span class="lesser">${tied(it.remedy)}</span>`}</li>\n`,
  )}</ul>\n`;
}

/** "living.csv, line 12: ", as the command line has it. */
function placeOf({ where }: Message): string {
  const place = [
    where?.file,
    where?.line === undefined ? undefined : `line ${where.line}`,
    where?.column === undefined ? undefined : `column “${where.column}”`,
    where?.key,
  ].filter((it) => it !== undefined);
  return place.length === 0 ? '' : `${place.join(', ')}: `;
}

export const list = (texts: readonly string[]): Markup | null =>
  texts.length === 0 ? null : html`<ul>${texts.map((text) => html`<li>${tied(text)}</li>\n`)}</ul>\n`;

/** A line to write on. */
export const blank = (label: string): Markup =>
  html`<p class="blank"><span>${label}</span><span class="write"></span></p>\n`;
