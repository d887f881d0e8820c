/** Slanting strokes to fill a span with, which needs no colour to be told from a shade. */
import UPlot from './uplot.ts';

const EVERY = 7; // [px]

/** Typed as uPlot has it; the canvas takes either. */
export function hatch(ctx: CanvasRenderingContext2D, ink: string): CanvasRenderingContext2D['fillStyle'] {
  const size = Math.round(EVERY * UPlot.pxRatio);
  const tile = document.createElement('canvas');
  tile.width = tile.height = size;
  const own = tile.getContext('2d');
  if (own === null) return ink;
  own.strokeStyle = ink;
  own.lineWidth = 1.25 * UPlot.pxRatio;
  // Beyond the corners, so that the strokes of neighbouring tiles meet.
  for (const by of [-size, 0, size]) {
    own.moveTo(by - 1, size + 1);
    own.lineTo(by + size + 1, -1);
  }
  own.stroke();
  return ctx.createPattern(tile, 'repeat') ?? ink;
}
