/** What stands in the plots of the readings beside their lines, drawn on uPlot's canvas. */
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { inks } from './inks.ts';
import { canvasFont, spanOnCanvas } from './plot.ts';
import { doubtedMarks, heatedSpans } from './readingsFacts.ts';
import { columnsAt, type Family } from './readingsSeries.ts';
import { thinned } from './thinned.ts';
import UPlot from './uplot.ts';

const HEAT_HEIGHT = 8; // [px]
const NOTE_SIZE = 8; // [px], of a note's number from its middle

/** With the canvas as it was when it is done. */
export function drawing(plot: UPlot, draw: (ctx: CanvasRenderingContext2D, size: number) => void): void {
  const { ctx } = plot;
  ctx.save();
  ctx.setLineDash([]);
  ctx.lineWidth = UPlot.pxRatio;
  draw(ctx, UPlot.pxRatio);
  ctx.restore();
}

/** A used night is a shade; one that was left out is hollow. */
export const drawNights = (plot: UPlot, { nights }: ReadingsAnswer): void =>
  drawing(plot, (ctx) => {
    const { bbox } = plot;
    const { nightShade, line } = inks();
    for (const { sunset, sunrise, used } of nights) {
      const span = spanOnCanvas(plot, sunset, sunrise);
      if (span === null) continue;
      if (used) {
        ctx.fillStyle = nightShade;
        ctx.fillRect(span.left, bbox.top, span.width, bbox.height);
      } else {
        ctx.strokeStyle = thinned(line, 0.55);
        ctx.strokeRect(span.left + 0.5, bbox.top + 0.5, span.width - 1, bbox.height - 1);
      }
    }
  });

/** A hatched strip at the foot where the heat was on. */
export const drawHeat = (plot: UPlot, readings: ReadingsAnswer): void =>
  drawing(plot, (ctx, size) => {
    const height = HEAT_HEIGHT * size;
    const top = plot.bbox.top + plot.bbox.height - height;
    ctx.strokeStyle = inks().ember;
    for (const { from, to } of heatedSpans(readings)) {
      const span = spanOnCanvas(plot, from, to);
      if (span === null) continue;
      const width = Math.max(span.width, 2 * size);
      ctx.save();
      ctx.beginPath();
      ctx.rect(span.left, top, width, height);
      ctx.clip();
      ctx.beginPath();
      for (let x = span.left - height; x < span.left + width; x += 4 * size) {
        ctx.moveTo(x, top + height);
        ctx.lineTo(x + height, top);
      }
      ctx.stroke();
      ctx.restore();
    }
  });

/** A measure over each stage with its name; its bounds run down through every plot. */
export const drawStages = (plot: UPlot, stages: ReadingsAnswer['stages'], named: boolean): void =>
  drawing(plot, (ctx, size) => {
    const { bbox } = plot;
    ctx.strokeStyle = inks().line;
    ctx.fillStyle = inks().graphite;
    ctx.font = canvasFont();
    ctx.textBaseline = 'bottom';
    ctx.textAlign = 'center';
    const top = bbox.top - (named ? 8 * size : 0);
    for (const { name, from, to } of stages) {
      const span = spanOnCanvas(plot, from, to);
      if (span === null) continue;
      ctx.beginPath();
      for (const at of [from, to]) {
        const x = Math.round(plot.valToPos(at, 'x', true));
        if (x < bbox.left || x > bbox.left + bbox.width) continue;
        ctx.moveTo(x, top - (named ? 5 * size : 0));
        ctx.lineTo(x, bbox.top + bbox.height);
      }
      if (named) {
        ctx.moveTo(span.left, top);
        ctx.lineTo(span.left + span.width, top);
      }
      ctx.stroke();
      const text = named ? fitting(ctx, name, span.width - 8 * size) : '';
      ctx.fillText(text, span.left + span.width / 2, top - 3 * size);
    }
  });

/** A dotted line at each note, and in the first plot its number in the list below. */
export const drawNotes = (plot: UPlot, { notes }: ReadingsAnswer, numbered: boolean): void =>
  drawing(plot, (ctx, size) => {
    const { bbox } = plot;
    ctx.font = canvasFont(11);
    ctx.textAlign = 'center';
    ctx.textBaseline = 'middle';
    for (const [i, { at }] of notes.entries()) {
      const x = Math.round(plot.valToPos(at, 'x', true));
      if (x < bbox.left || x > bbox.left + bbox.width) continue;
      ctx.strokeStyle = inks().graphite;
      ctx.setLineDash([size, 3 * size]);
      ctx.beginPath();
      ctx.moveTo(x, bbox.top);
      ctx.lineTo(x, bbox.top + bbox.height);
      ctx.stroke();
      if (!numbered) continue;
      const y = bbox.top + (NOTE_SIZE + 2) * size;
      ctx.setLineDash([]);
      ctx.fillStyle = inks().paper;
      ctx.beginPath();
      ctx.arc(x, y, NOTE_SIZE * size, 0, 2 * Math.PI);
      ctx.fill();
      ctx.stroke();
      ctx.fillStyle = inks().graphite;
      ctx.fillText(String(i + 1), x, y);
    }
  });

/** Readings that are kept out are hollow; spans that a person keeps out have a measure at the head. */
export const drawLeftOut = (plot: UPlot, readings: ReadingsAnswer, family: Family): void =>
  drawing(plot, (ctx, size) => {
    const { bbox } = plot;
    for (const [i, { channel, ink }] of family.lines.entries()) {
      if (plot.series[columnsAt(family, i).most]?.show === false) continue;
      const own = readings.channels[channel];
      ctx.fillStyle = inks().paper;
      ctx.strokeStyle = inks()[ink];
      for (const { at, value } of doubtedMarks(own, readings)) {
        const [x, y] = [plot.valToPos(at, 'x', true), plot.valToPos(value, 'y', true)];
        if (x < bbox.left || x > bbox.left + bbox.width) continue;
        ctx.beginPath();
        ctx.arc(x, y, 3.5 * size, 0, 2 * Math.PI);
        ctx.fill();
        ctx.stroke();
      }
      for (const { from, to } of readings.leftOut.filter(({ file }) => file === own.file)) {
        const span = spanOnCanvas(plot, from, to);
        if (span === null) continue;
        const y = bbox.top + (4 + 4 * i) * size;
        ctx.beginPath();
        for (const x of [span.left, span.left + span.width]) {
          ctx.moveTo(x, y - 3 * size);
          ctx.lineTo(x, y + 3 * size);
        }
        ctx.moveTo(span.left, y);
        ctx.lineTo(span.left + span.width, y);
        ctx.stroke();
      }
    }
  });

/** The name, or as much of it as fits; nothing rather than a letter or two. */
export function fitting(ctx: CanvasRenderingContext2D, name: string, width: number): string {
  if (ctx.measureText(name).width <= width) return name;
  const letters = Array.from(name, (_, n) => n).findLast(
    (n) => ctx.measureText(`${name.slice(0, n)}…`).width <= width,
  );
  return letters === undefined || letters < 3 ? '' : `${name.slice(0, letters)}…`;
}
