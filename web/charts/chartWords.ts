/** What the charts say: the drop in figures, a night's spoken name, a reason short enough for a band. */
import type { NightResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';

const MINUS = '−';

/** A change with its sign, "−1.2 K"; nothing measurable is "0.0 K". */
export function signedKelvins(difference: number, digits = 1): string {
  const size = Math.abs(difference).toFixed(digits);
  const sign = Number(size) === 0 ? '' : difference < 0 ? MINUS : '+';
  return `${sign}${size} K`;
}

/** A temperature as the axes and the cursor write it, with a true minus. */
export const celsius = (value: number, digits = 1) => `${signed(value, digits)} °C`;

/** A figure with a true minus. */
export const signed = (value: number, digits: number) => {
  const size = Math.abs(value).toFixed(digits);
  return value < 0 && Number(size) !== 0 ? MINUS + size : size;
};

/** What became of a night, in words: "fell 1.2 K, used". */
export function saidOf(night: NightResult | undefined): string {
  if (night === undefined) return 'belongs to no stage';
  const moved =
    night.dropK === null
      ? []
      : [`${night.dropK < 0 ? 'rose' : 'fell'} ${Math.abs(night.dropK).toFixed(1)} K`];
  const reasons = night.reasons.map(({ text }) => text).join('; ');
  const fate = night.used ? 'used' : `left out${reasons === '' ? '' : `: ${reasons}`}`;
  return [...moved, ...(night.heated ? ['heated'] : []), fate].join(', ');
}

/** "Night of 12 February: fell 1.2 K, used" */
export const spokenNight = (date: string, night: NightResult | undefined) =>
  `Night of ${figures.day(date)}: ${saidOf(night)}`;

/** The first reason without its particulars: "the fall is uneven". */
export function shortReason(night: NightResult | undefined): string {
  if (night === undefined) return 'belongs to no stage';
  const [first] = night.reasons;
  if (first === undefined) return 'left out';
  return first.text.split(/ \(|[:;,](?= )/)[0];
}

/** Words on lines of so many letters; a longer word stands alone. */
export function wrapped(text: string, letters: number): string[] {
  const lines: string[] = [];
  for (const word of text.replace(/(\d) (K|h|min|kWh)\b/g, '$1\u00a0$2').split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > letters) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
}
