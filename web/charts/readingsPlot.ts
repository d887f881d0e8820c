/** One family of readings as a plot: its lines with their bands from minimum to maximum, the nights, the stages. */
import type { ReadingsAnswer } from '../../server/api/shapes.ts';
import { inks } from './inks.ts';
import { drawNames, roomForNames } from './lineNames.ts';
import { padded, RIGHT, timeAxis, valueAxis } from './plot.ts';
import { drawHeat, drawLeftOut, drawNights, drawNotes, drawStages } from './readingsMarks.ts';
import { alone, columnsAt, columnsOf, type Family, type Line } from './readingsSeries.ts';
import { thinned } from './thinned.ts';
import type UPlot from './uplot.ts';
import { between, type View } from './view.ts';

/** What the plot asks for whenever it draws: it is made once and outlives many views. */
export interface Source {
  readonly readings: () => ReadingsAnswer;
  /** As they are being moved. */
  readonly stages: () => ReadingsAnswer['stages'];
  readonly view: () => View;
  readonly setView: (view: View) => void;
  readonly follow: (plot: UPlot) => void;
}

export const STAGES_HEIGHT = 24; // [px]

export const heightOfPlot = (family: Family, first: boolean) =>
  (family.quantity === 'temperature' ? 300 : 190) + (first ? STAGES_HEIGHT : 0);

export function readingsPlot(
  family: Family,
  first: boolean,
  timeZone: string,
  together: string,
  source: Source,
): Omit<UPlot.Options, 'width'> {
  const right = family.midway ? roomForNames : () => RIGHT;
  return {
    height: heightOfPlot(family, first),
    padding: [first ? STAGES_HEIGHT + 4 : 8, right, 0, 0],
    legend: { show: false },
    axes: [timeAxis(timeZone, true, right), valueAxis()],
    scales: {
      x: { time: false, range: () => [source.view().from, source.view().to] },
      y: { range: padded },
    },
    series: [{}, ...family.lines.flatMap((line) => seriesOf(line, family))],
    bands: family.lines.map(({ ink }, i) => {
      const { most, least } = columnsAt(family, i);
      return { series: [most, least], fill: () => thinned(inks()[ink], 0.22) };
    }),
    cursor: {
      y: false,
      drag: { x: true, y: false, setScale: false, dist: 4 },
      // Only the cursor is shared: each plot would otherwise set the view anew.
      sync: {
        key: together,
        setSeries: false,
        filters: { pub: (type) => type === 'mousemove' || type === 'mouseleave' },
      },
      points: { size: 6 },
      bind: {
        // Shift and drag moves the view (`gestures.ts`).
        mousedown: (_plot, _target, handler) => (event) => (event.shiftKey ? null : handler(event)),
        dblclick: () => () => {
          source.setView(wholeOf(source.readings()));
          return null;
        },
      },
    },
    hooks: {
      drawClear: [
        (plot) => {
          drawNights(plot, source.readings());
          if (family.quantity === 'temperature') drawHeat(plot, source.readings());
        },
      ],
      draw: [
        (plot) => {
          drawStages(plot, source.stages(), first);
          drawLeftOut(plot, source.readings(), family);
          drawNotes(plot, source.readings(), first);
          if (family.midway) drawNames(plot, family);
        },
      ],
      setCursor: [source.follow],
      setSelect: [
        (plot) => {
          const { left, width } = plot.select;
          if (width > 0) {
            const [from, to] = [left, left + width].map((x) => plot.posToVal(x, 'x'));
            source.setView(between(from, to, wholeOf(source.readings())));
          }
          plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
        },
      ],
    },
  };
}

export const wholeOf = ({ first, last }: ReadingsAnswer): View => ({ from: first, to: last });

export const dataOf = (readings: ReadingsAnswer, family: Family): UPlot.AlignedData =>
  columnsOf(readings, family);

function seriesOf({ ink, dash }: Line, { midway }: Family): UPlot.Series[] {
  const drawn: UPlot.Series = {
    stroke: () => inks()[ink],
    width: midway ? 1.75 : 1.25,
    dash: [...dash],
    points: {
      show: true,
      size: 3,
      fill: () => inks()[ink],
      filter: (plot, series) => alone(plot.data[series] as (number | null | undefined)[]),
    },
  };
  const edge: UPlot.Series = { width: 0, points: { show: false } };
  return midway ? [edge, edge, drawn].map((it) => ({ ...it })) : [drawn, { ...drawn }];
}
