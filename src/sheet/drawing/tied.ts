/** The text with every figure tied to the word after it, so that a line never ends between "189" and "W/K". */
export const tied = (text: string) => text.replace(/(\d) (?=[^\d\s])/g, '$1\u00a0');
