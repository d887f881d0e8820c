/** What the charts of the readings show as one picture, in the colours that it has on the page. */
import { inks } from './inks.ts';
import type { Family } from './readingsSeries.ts';
import { type Shown, spanWords } from './takeReadings.ts';
import UPlot from './uplot.ts';

const HEAD = 28; // [px] over each plot, for its name
const LEGEND = 22; // [px] for a row of lines
const MARGIN = 16; // [px]

/** The plots under each other as they stand on the page, each with its name and its lines. */
export function shownCanvas(shown: Shown, plotOf: (family: Family) => UPlot | undefined): HTMLCanvasElement {
  const size = UPlot.pxRatio;
  const drawn = shown.families.flatMap((family) => {
    const plot = plotOf(family);
    return plot === undefined ? [] : [{ family, canvas: plot.ctx.canvas }];
  });
  const width = Math.max(...drawn.map(({ canvas }) => canvas.width)) + 2 * MARGIN * size;
  const heights = drawn.map(
    ({ canvas, family }) => canvas.height + (HEAD + legendRows(family, width / size) * LEGEND) * size,
  );
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = heights.reduce((sum, it) => sum + it, (2 * MARGIN + HEAD) * size);
  const ctx = canvas.getContext('2d');
  if (ctx === null) return canvas;
  const { paper, graphite, font } = inks();
  ctx.fillStyle = paper;
  ctx.fillRect(0, 0, canvas.width, canvas.height);
  ctx.scale(size, size);
  ctx.textBaseline = 'middle';
  ctx.fillStyle = graphite;
  ctx.font = `14px ${font}`;
  ctx.fillText(spanWords(shown), MARGIN, MARGIN + HEAD / 2);
  let top = MARGIN + HEAD;
  for (const [i, { family, canvas: plot }] of drawn.entries()) {
    ctx.fillStyle = graphite;
    ctx.font = `600 14px ${font}`;
    ctx.fillText(`${family.title} [${family.unit}]`, MARGIN, top + HEAD / 2);
    ctx.font = `13px ${font}`;
    drawLegend(ctx, family, top + HEAD, width / size);
    const rows = legendRows(family, width / size) * LEGEND;
    ctx.drawImage(plot, MARGIN, top + HEAD + rows, plot.width / size, plot.height / size);
    top += heights[i] / size;
  }
  return canvas;
}

const LINE_WIDTH = 170; // [px], of a line's sample and name

const perRow = (width: number) => Math.max(1, Math.floor((width - 2 * MARGIN) / LINE_WIDTH));
const legendRows = ({ lines }: Family, width: number) => Math.ceil(lines.length / perRow(width));

function drawLegend(ctx: CanvasRenderingContext2D, { lines }: Family, top: number, width: number): void {
  for (const [i, { label, ink, dash }] of lines.entries()) {
    const x = MARGIN + (i % perRow(width)) * LINE_WIDTH;
    const y = top + (Math.floor(i / perRow(width)) + 0.5) * LEGEND;
    ctx.strokeStyle = inks()[ink];
    ctx.lineWidth = 2;
    ctx.setLineDash([...dash]);
    ctx.beginPath();
    ctx.moveTo(x, y);
    ctx.lineTo(x + 36, y);
    ctx.stroke();
    ctx.setLineDash([]);
    ctx.fillStyle = inks().graphite;
    ctx.fillText(label, x + 44, y, LINE_WIDTH - 50);
  }
}
