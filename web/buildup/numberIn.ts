/** What was typed as a number, with a comma or a point; undefined for nothing typed, null for what is no number. */
export function numberIn(text: string): number | undefined | null {
  const plain = text.trim().replace('−', '-').replace(',', '.');
  if (plain === '') return undefined;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}
