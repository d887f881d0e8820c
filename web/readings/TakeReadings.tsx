/** What is shown, to take along: its figures as CSV, its picture as PNG or SVG. */
import { useState } from 'preact/hooks';
import type { Family } from '../charts/readingsSeries.ts';
import { readingsSvg } from '../charts/readingsSvg.ts';
import { shownCanvas } from '../charts/shownCanvas.ts';
import { nameOf, type Shown, shownRows } from '../charts/takeReadings.ts';
import type UPlot from '../charts/uplot.ts';
import { saveFile } from '../parts/saveFile.ts';
import { intervalWords } from './readingsWords.ts';

export interface TakeReadingsProps {
  readonly shown: Shown;
  readonly name: string;
  readonly plotOf: (family: Family) => UPlot | undefined;
}

export function TakeReadings({ shown, name, plotOf }: TakeReadingsProps) {
  const [told, setTold] = useState('');
  const take = (kind: string, blob: Blob | null) => {
    const file = `${nameOf(shown)}.${kind}`;
    if (blob === null)
      return setTold('The browser made no picture of it. Try a narrower window, or the SVG.');
    saveFile(blob, file);
    setTold(`“${file}” is with your downloads.`);
  };
  const csv = async () => {
    const { csvOf } = await import('./csv.ts');
    take('csv', new Blob([csvOf(shownRows(shown))], { type: 'text/csv;charset=utf-8' }));
  };
  const png = () => shownCanvas(shown, plotOf).toBlob((blob) => take('png', blob), 'image/png');
  const svg = () => take('svg', new Blob([readingsSvg(shown, name)], { type: 'image/svg+xml' }));
  const nothing = shown.families.length === 0;
  return (
    <div class="screen-only">
      <p class="readings-buttons">
        <span>Take what is shown:</span>
        <button type="button" disabled={nothing} onClick={csv}>
          CSV
        </button>
        <button type="button" disabled={nothing} onClick={png}>
          PNG
        </button>
        <button type="button" disabled={nothing} onClick={svg}>
          SVG
        </button>
        <span class="small lesser">
          The table has the least and the greatest reading {intervalWords(shown.readings.step)}; look closer
          for a finer one.
        </span>
      </p>
      <p class="small" role="status">
        {told}
      </p>
    </div>
  );
}
