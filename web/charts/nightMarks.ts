/** What stands in the plots of one night beside their lines: the night itself, the sun, the fitted hours, nought. */
import type { NightCurve } from '../../src/curves.ts';
import { clock } from '../../src/sheet/drawing/clock.ts';
import { inks } from './inks.ts';
import { canvasFont, spanOnCanvas } from './plot.ts';
import UPlot from './uplot.ts';

const BRACKET = 12; // [px], from the bottom of the plot

export function drawNight(plot: UPlot, { sunset, sunrise, window }: NightCurve): void {
  const { ctx, bbox } = plot;
  const fill = (from: number, to: number, ink: string) => {
    const span = spanOnCanvas(plot, from, to);
    if (span === null) return;
    ctx.fillStyle = ink;
    ctx.fillRect(span.left, bbox.top, span.width, bbox.height);
  };
  ctx.save();
  fill(sunset, sunrise, inks().night);
  if (window !== null) fill(window.from, window.to, inks().windowShade);
  ctx.restore();
}

export function drawSun(plot: UPlot, { sunset, sunrise }: NightCurve, timeZone: string): void {
  const { ctx, bbox } = plot;
  const night = spanOnCanvas(plot, sunset, sunrise);
  if (night === null) return;
  const size = UPlot.pxRatio;
  ctx.save();
  ctx.font = canvasFont();
  ctx.fillStyle = inks().graphite;
  ctx.textBaseline = 'bottom';
  ctx.textAlign = 'left';
  ctx.fillText(`sunset ${clock(sunset, timeZone)}`, night.left, bbox.top - 6 * size);
  ctx.textAlign = 'right';
  ctx.fillText(`sunrise ${clock(sunrise, timeZone)}`, night.left + night.width, bbox.top - 6 * size);
  ctx.restore();
}

/** Between which times the fall was fitted: a measure with its two ends, and the times over it. */
export function drawBracket(plot: UPlot, { window }: NightCurve, timeZone: string): void {
  if (window === null) return;
  const span = spanOnCanvas(plot, window.from, window.to);
  if (span === null) return;
  const { ctx, bbox } = plot;
  const size = UPlot.pxRatio;
  const y = bbox.top + bbox.height - BRACKET * size;
  const text = `fitted ${clock(window.from, timeZone)} to ${clock(window.to, timeZone)}`;
  ctx.save();
  ctx.strokeStyle = inks().nightWords;
  ctx.lineWidth = size;
  ctx.setLineDash([]);
  ctx.beginPath();
  ctx.moveTo(span.left, y);
  ctx.lineTo(span.left + span.width, y);
  for (const x of [span.left, span.left + span.width]) {
    ctx.moveTo(x, y - 5 * size);
    ctx.lineTo(x, y + 5 * size);
  }
  ctx.stroke();
  ctx.font = canvasFont();
  ctx.fillStyle = inks().nightWords;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'bottom';
  ctx.fillText(text, span.left + span.width / 2, y - 5 * size);
  ctx.restore();
}

export function drawZero(plot: UPlot): void {
  const { ctx, bbox } = plot;
  const y = Math.round(plot.valToPos(0, 'y', true));
  ctx.save();
  ctx.strokeStyle = inks().nightLesser;
  ctx.lineWidth = UPlot.pxRatio;
  ctx.beginPath();
  ctx.moveTo(bbox.left, y);
  ctx.lineTo(bbox.left + bbox.width, y);
  ctx.stroke();
  ctx.restore();
}
