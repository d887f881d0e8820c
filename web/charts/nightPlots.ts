/** The two plots of one night for uPlot: the temperatures on the dark band that the night is, and the residuals. */
import type { NightCurve } from '../../src/curves.ts';
import { signedKelvins } from '../../src/sheet/drawing/chartWords.ts';
import { clock } from '../../src/sheet/drawing/clock.ts';
import { type Inks, inks } from './inks.ts';
import { residualReach, residualTicks } from './nightSeries.ts';
import { canvasFont, padded, RIGHT, spanOnCanvas, timeAxis, valueAxis } from './plot.ts';
import UPlot from './uplot.ts';

type Options = Omit<UPlot.Options, 'width'>;

const OUTSIDE_DASH = [6, 4];
const FIT_DASH = [9, 5];
const BRACKET = 12; // [px], from the bottom of the plot

export const temperaturePlot = (curve: NightCurve, timeZone: string, together: string): Options => ({
  ...base(curve, together),
  height: 320,
  padding: [26, RIGHT, 0, 0],
  axes: [inNight(timeAxis(timeZone, false), curve), inNight(valueAxis(), curve)],
  scales: { x: wholeNight(curve), y: { range: aboveBracket } },
  series: [
    {},
    { stroke: inkOf(curve, 'ember', 'nightEmber'), width: 2.25, points: { show: false } },
    { stroke: inkOf(curve, 'frost', 'nightFrost'), width: 2, dash: OUTSIDE_DASH, points: { show: false } },
    { stroke: () => inks().nightWords, width: 1.5, dash: FIT_DASH, points: { show: false } },
  ],
  hooks: {
    drawClear: [(plot) => drawNight(plot, curve)],
    draw: [(plot) => drawSun(plot, curve, timeZone), (plot) => drawBracket(plot, curve, timeZone)],
  },
});

export const residualPlot = (
  curve: NightCurve,
  residual: readonly (number | null)[],
  timeZone: string,
  together: string,
): Options => {
  const reach = residualReach(residual);
  return {
    ...base(curve, together),
    height: 132,
    padding: [6, RIGHT, 0, 0],
    axes: [inNight(timeAxis(timeZone), curve), inNight(residualAxis(reach), curve)],
    scales: { x: wholeNight(curve), y: { range: () => [-reach, reach] } },
    series: [{}, { stroke: inkOf(curve, 'ember', 'nightEmber'), width: 1.5, points: { show: false } }],
    hooks: { drawClear: [(plot) => drawNight(plot, curve)], drawAxes: [drawZero] },
  };
};

const base = (curve: NightCurve, together: string): Pick<Options, 'legend' | 'cursor'> => ({
  legend: { show: false },
  cursor: {
    y: false,
    drag: { x: false, y: false, setScale: false },
    sync: { key: together, setSeries: false },
    points: {
      size: 7,
      stroke: () => inks().night,
      fill: (plot, series) => {
        const { ember, frost, nightEmber, nightFrost, nightWords } = inks();
        const at = plot.data[0][plot.cursor.idx ?? 0];
        const dark = at >= curve.sunset && at <= curve.sunrise;
        if (series === 3) return nightWords;
        return series === 2 ? (dark ? nightFrost : frost) : dark ? nightEmber : ember;
      },
    },
  },
});

const residualAxis = (reach: number): UPlot.Axis => ({
  ...valueAxis(),
  splits: () => residualTicks(reach),
  values: (_plot, splits) =>
    splits.map((value) => signedKelvins(value, value === 0 ? 0 : 2).replace(' K', '')),
});

/** The grid is chalk on paper and the night's own line in the night. */
const inNight = (axis: UPlot.Axis, curve: NightCurve): UPlot.Axis => ({
  ...axis,
  grid: { ...axis.grid, stroke: inkOf(curve, 'chalk', 'nightLine') },
});

/** Room under the lines for the measure of what was fitted. */
function aboveBracket(plot: UPlot, low: number | null, high: number | null): [number, number] {
  const [least, most] = padded(plot, low, high);
  return [least - (most - least) * 0.12, most];
}

const wholeNight = ({ time, sunset, sunrise }: NightCurve): UPlot.Scale => ({
  time: false,
  range: () => [time[0] ?? sunset, time.at(-1) ?? sunrise],
});

/** One line, two inks: the one of the day before sunset and after sunrise, the one of the night between. */
const inkOf = (curve: NightCurve, byDay: keyof Inks, byNight: keyof Inks) => {
  return (plot: UPlot): CanvasGradient | string => {
    const { left, width } = plot.bbox;
    const night = spanOnCanvas(plot, curve.sunset, curve.sunrise);
    if (night === null || !(width > 0)) return inks()[byDay];
    const ink = plot.ctx.createLinearGradient(left, 0, left + width, 0);
    const dusk = (night.left - left) / width;
    const dawn = dusk + night.width / width;
    ink.addColorStop(dusk, inks()[byDay]);
    ink.addColorStop(dusk, inks()[byNight]);
    ink.addColorStop(dawn, inks()[byNight]);
    ink.addColorStop(dawn, inks()[byDay]);
    return ink;
  };
};

function drawNight(plot: UPlot, { sunset, sunrise, window }: NightCurve): void {
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

function drawSun(plot: UPlot, { sunset, sunrise }: NightCurve, timeZone: string): void {
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
function drawBracket(plot: UPlot, { window }: NightCurve, timeZone: string): void {
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

function drawZero(plot: UPlot): void {
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
