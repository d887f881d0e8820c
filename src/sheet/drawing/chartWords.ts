/** What the charts say: the drop in figures, a night's spoken name, a reason short enough for a band. */
import type { NightResult } from '../../assessment.ts';
import { fateOfNight } from '../../words/answer.ts';
import { figures, reasonsInBrief } from '../../words/index.ts';

const { decimal } = figures;

/** A figure with a true minus. */
export const signed = decimal;

/** A change with its sign, "−1.2 K"; nothing measurable is "0.0 K". */
export function signedKelvins(difference: number, digits = 1): string {
  const figure = decimal(difference, digits);
  const rise = difference > 0 && Number(figure) !== 0;
  return `${rise ? '+' : ''}${figure} K`;
}

/** A temperature as the axes and the cursor write it. */
export const celsius = (value: number, digits = 1) => `${decimal(value, digits)} °C`;

/** "Night of 12 February: fell 1.2 K, used" */
export const spokenNight = (date: string, night: NightResult | undefined) =>
  `Night of ${figures.day(date)}: ${fateOfNight(night)}`;

/** The first reason in a few words: "the fall is uneven". */
export function shortReason(night: NightResult | undefined): string {
  if (night === undefined) return 'belongs to no stage';
  const inBrief: { readonly [code: string]: string | undefined } = reasonsInBrief;
  return inBrief[night.reasons[0]?.code ?? ''] ?? 'left out';
}

/** Words on lines of so many letters; a longer word stands alone. */
export function wrapped(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > letters) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
