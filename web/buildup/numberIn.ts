/** What was typed as a number, with a comma or a point; undefined for nothing typed, null for what is no number. */
export function numberIn(text: string): number | undefined | null {
  const plain = plainOf(text);
  if (plain === '') return undefined;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) && !readsTwoWays(text) ? Number(plain) : null;
}

/** Why it is no number, and what is. */
export function whyNot(text: string): string {
  const plain = plainOf(text);
  return readsTwoWays(text)
    ? `“${text}” can be read as ${Number(plain)} or as ${plain.replace('.', '')}: write one of them.`
    : `“${text}” is not a number.`;
}

const plainOf = (text: string) => text.trim().replace('−', '-').replace(',', '.');

/** The comma of "1,200" parts thousands in one country and the decimals off in another. */
const readsTwoWays = (text: string) => /^[-+−]?[1-9]\d{0,2},\d{3}$/.test(text.trim());
