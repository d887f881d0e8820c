/** When the page is printed: what is drawn for a width on the screen is drawn anew for the sheet. */
import { useEffect, useState } from 'preact/hooks';

/** What a sheet of A4 has between its margins [px]; a letter sheet has a little more. */
export const PAPER_WIDTH = 680;

const printing = () => matchMedia('print');

export const isPrinting = () => printing().matches;

/** Calls back when printing begins and when it ends. @returns what stops it */
export function watchPrinting(changed: () => void): () => void {
  const media = printing();
  media.addEventListener('change', changed);
  return () => media.removeEventListener('change', changed);
}

export function usePrinting(): boolean {
  const [now, setNow] = useState(isPrinting);
  useEffect(() => watchPrinting(() => setNow(isPrinting())), []);
  return now;
}
