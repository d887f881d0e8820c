/** The two plots of one night for uPlot: the temperatures on the dark band that the night is, and the residuals. */
import type { NightCurve } from '../../src/curves.ts';
import { signedKelvins } from '../../src/sheet/drawing/chartWords.ts';
import { hatch } from './hatch.ts';
import { type Inks, inks } from './inks.ts';
import { drawBracket, drawNight, drawSun, drawZero } from './nightMarks.ts';
import { type NightColumns, orGap, residualReach, residualTicks } from './nightSeries.ts';
import { padded, RIGHT, spanOnCanvas, timeAxis, valueAxis } from './plot.ts';
import type UPlot from './uplot.ts';

type Options = Omit<UPlot.Options, 'width'>;

const OUTSIDE_DASH = [6, 4];
const FIT_DASH = [9, 5];
const DRAWN_DASH = [2, 3];

/** The columns in their order: what lies under the others comes first. */
export const temperaturesOf = (it: NightColumns): UPlot.AlignedData => [
  it.time,
  it.drawnHigh,
  it.drawnLow,
  it.inside,
  it.outside,
  it.fitted,
];
const [INSIDE, OUTSIDE, FITTED] = [3, 4, 5];

export const temperaturePlot = (curve: NightCurve, timeZone: string, together: string): Options => ({
  ...base(curve, together),
  height: 320,
  padding: [26, RIGHT, 0, 0],
  axes: [inNight(timeAxis(timeZone, false), curve), inNight(valueAxis(), curve)],
  scales: { x: wholeNight(curve), y: { range: aboveBracket } },
  series: [
    {},
    drawnEdge(),
    drawnEdge(),
    { stroke: inkOf(curve, 'ember', 'nightEmber'), width: 2.25, points: { show: false } },
    { stroke: inkOf(curve, 'frost', 'nightFrost'), width: 2, dash: OUTSIDE_DASH, points: { show: false } },
    { stroke: () => inks().nightWords, width: 1.5, dash: FIT_DASH, points: { show: false } },
  ],
  bands: drawnBand(),
  hooks: {
    drawClear: [(plot) => drawNight(plot, curve)],
    draw: [(plot) => drawSun(plot, curve, timeZone), (plot) => drawBracket(plot, curve, timeZone)],
  },
});

const drawnBand = (): UPlot.Band[] => [
  { series: [1, 2], fill: (plot) => hatch(plot.ctx, inks().nightLesser) },
];

const drawnEdge = (): UPlot.Series => ({
  stroke: () => inks().nightWords,
  width: 1,
  dash: DRAWN_DASH,
  points: { show: false },
});

/** What the fit leaves over, and how far the drawing lies beside the fit: the same band, large enough to be read. */
export const residualsOf = ({
  time,
  fitted,
  residual,
  drawnHigh,
  drawnLow,
}: NightColumns): UPlot.AlignedData => {
  const less = (column: NightColumns['fitted']) =>
    column.map((it, i) => (it === null ? null : it - (fitted[i] ?? Number.NaN))).map(orGap);
  return [time, less(drawnHigh), less(drawnLow), residual];
};

export const residualPlot = (
  curve: NightCurve,
  data: UPlot.AlignedData,
  timeZone: string,
  together: string,
): Options => {
  const reach = residualReach(data.slice(1).flatMap((column) => [...column] as (number | null)[]));
  return {
    ...base(curve, together),
    height: RESIDUALS_HEIGHT,
    padding: [6, RIGHT, 0, 0],
    axes: [inNight(timeAxis(timeZone), curve), inNight(residualAxis(reach), curve)],
    scales: { x: wholeNight(curve), y: { range: () => [-reach, reach] } },
    series: [
      {},
      drawnEdge(),
      drawnEdge(),
      { stroke: inkOf(curve, 'ember', 'nightEmber'), width: 1.5, points: { show: false } },
    ],
    bands: drawnBand(),
    hooks: { drawClear: [(plot) => drawNight(plot, curve)], drawAxes: [drawZero] },
  };
};
const RESIDUALS_HEIGHT = 190; // [px]

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
        if (series < INSIDE || series === FITTED) return nightWords;
        return series === OUTSIDE ? (dark ? nightFrost : frost) : dark ? nightEmber : ember;
      },
    },
  },
});

const residualAxis = (reach: number): UPlot.Axis => ({
  ...valueAxis(),
  splits: () => residualTicks(reach),
  values: (_plot, splits) => splits.map((value) => signedKelvins(value, digitsOf(value)).replace(' K', '')),
});

/** As many as its first figure needs. */
const digitsOf = (value: number) =>
  value === 0 ? 0 : Math.max(0, Math.ceil(-Math.log10(Math.abs(value)) - 1e-9));

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
