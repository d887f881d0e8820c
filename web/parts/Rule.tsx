/** A quantity with its interval, as a pencil mark on a ruler: the one figure for everything that has an interval. */
import { useRef } from 'preact/hooks';
import { PAPER_WIDTH } from '../charts/paper.ts';
import { useWidth } from '../charts/useWidth.ts';
import './Rule.css';
import type { RuleMark } from '../../src/sheet/drawing/ruleMark.ts';
import { placeOn, type RuleScale, ruleScale } from '../../src/sheet/drawing/ruleScale.ts';
import { type RuleUnit, ruleUnits } from '../../src/sheet/drawing/ruleUnits.ts';
import { LINE, type MarkRow, markWords, placeWords } from '../../src/sheet/drawing/ruleWords.ts';

export type { RuleMark };

export interface RuleProps {
  /** What is measured here, for those who hear it. */
  readonly title: string;
  readonly unit: RuleUnit;
  readonly marks: readonly RuleMark[];
  /** One line for each mark instead of two, for lists. */
  readonly small?: boolean;
}

const ASSUMED_WIDTH = 640; // [px]
const PADDING = 32; // [px], on both sides together

export function Rule({ title, unit, marks, small = false }: RuleProps) {
  const frame = useRef<HTMLDivElement>(null);
  const width = useWidth(frame, ASSUMED_WIDTH, PAPER_WIDTH - PADDING);
  if (marks.length === 0) return null;
  const scale = ruleScale(marks.flatMap(({ value, low = value, high = value }) => [value, low, high]));
  const words = wordsOf(marks, unit, scale, width);
  const row = (small ? 34 : 52) + (words.some(({ over }) => over) ? LINE : 0);
  const edge = marks.length * row;
  const { sign } = ruleUnits[unit];
  const lines = marks.map((mark, i) => ({ mark, scale, y: (i + 1) * row - 10, edge }));
  return (
    <figure class={small ? 'rule rule-small' : 'rule'}>
      <div ref={frame}>
        <svg
          role="img"
          aria-label={spoken(title, unit, marks)}
          width="100%"
          height={edge + rulerHeight(sign)}
        >
          {lines.map((line) => (
            <Pencil key={line.mark.label} {...line} />
          ))}
          {words.map(({ label, figure, over, place }, i) => {
            const x = percent(place.x / width);
            const foot = lines[i].y - (marks[i].kind === 'drawn' && marks[i].low === undefined ? 0 : 14);
            return (
              <text
                key={marks[i].label}
                x={x}
                y={over ? foot - LINE : foot}
                text-anchor={place.anchor}
                class="rule-words"
              >
                <tspan class="rule-label">{label} </tspan>
                <tspan class="rule-figure" {...(over ? { x, dy: LINE } : {})}>
                  {figure}
                </tspan>
              </text>
            );
          })}
          <Ruler scale={scale} edge={edge} sign={sign} />
          {marks.map((mark) =>
            mark.kind === 'drawn' ? (
              <svg
                key={mark.label}
                x={percent(placeOn(scale, mark.value))}
                y={edge}
                class="rule-notch"
                aria-hidden="true"
              >
                <path d="M-5.5 -1H5.5L0 9Z" />
                <path d="M-5.5 0L0 9L5.5 0" class="rule-cut" />
              </svg>
            ) : null,
          )}
        </svg>
      </div>
    </figure>
  );
}

function wordsOf(marks: readonly RuleMark[], unit: RuleUnit, scale: RuleScale, width: number) {
  const words = marks.map((mark) => markWords(mark.label, figureOf(unit, mark), width));
  const rows = marks.map(({ kind, value, low = value, high = value }, i): MarkRow => {
    const [from, at, to] = [low, value, high].map((it) => placeOn(scale, it) * width);
    return { kind, low: from, at, high: to, length: words[i].length };
  });
  return placeWords(rows, width).map((place, i) => ({ ...words[i], place }));
}

/** The unit stands under the first figure, where nothing else is. */
const rulerHeight = (sign: string) => (sign === '' ? 38 : 50);

const percent = (share: number) => `${(share * 100).toFixed(3)}%`;

const figureOf = (unit: RuleUnit, { value, low, high }: RuleMark) =>
  low === undefined || high === undefined
    ? ruleUnits[unit].point(value)
    : ruleUnits[unit].between({ value, low, high });

const spoken = (title: string, unit: RuleUnit, marks: readonly RuleMark[]) =>
  `${title}. ${marks.map((mark) => `${mark.label}: ${figureOf(unit, mark)}`).join('; ')}.`;

function Ruler({ scale, edge, sign }: { scale: RuleScale; edge: number; sign: string }) {
  const height = rulerHeight(sign);
  const depth = { long: 13, middle: 9, short: 6 } as const;
  return (
    <g class="ruler">
      <svg y={edge} overflow="visible" aria-hidden="true">
        <rect x="-14" width="28" height={height} class="ruler-body" />
        <svg x="100%" overflow="visible" aria-hidden="true">
          <rect x="-14" width="28" height={height} class="ruler-body" />
        </svg>
        <rect width="100%" height={height} class="ruler-body" />
        <line x1="0" x2="100%" y1="0" y2="0" class="ruler-edge" />
        {scale.graduations.map(({ value, at, length, text, always }) => (
          <g key={value}>
            <line
              x1={percent(at)}
              x2={percent(at)}
              y1="0"
              y2={depth[length]}
              class={`ruler-line-${length}`}
            />
            {text === '' ? null : (
              <text x={percent(at)} y="28" class={always ? '' : 'ruler-spare'}>
                {text}
              </text>
            )}
          </g>
        ))}
        <text x="-9" y="43" class="ruler-sign">
          {sign}
        </text>
      </svg>
    </g>
  );
}

interface PencilProps {
  readonly mark: RuleMark;
  readonly scale: RuleScale;
  /** The height of its line. */
  readonly y: number;
  /** The height of the ruler's edge. */
  readonly edge: number;
}

/** The mark in its row and a fine line down to the ruler's edge; a drawn value is a line through all rows. */
function Pencil({ mark, scale, y, edge }: PencilProps) {
  const { value, low = value, high = value, kind } = mark;
  const at = percent(placeOn(scale, value));
  return (
    <g class={`rule-${kind}`}>
      <line x1={at} x2={at} y1={kind === 'drawn' ? 0 : y} y2={edge} class="rule-fall" />
      {low < high ? (
        <line
          x1={percent(placeOn(scale, low))}
          x2={percent(placeOn(scale, high))}
          y1={y}
          y2={y}
          class="rule-interval"
        />
      ) : null}
      {kind === 'drawn' ? null : (
        <svg x={at} y={y} overflow="visible" aria-hidden="true">
          {kind === 'measured' ? (
            <path d="M-1.2 -8.5C0.6 -3 -0.6 3 1.4 8" class="rule-stroke" />
          ) : (
            <rect x="-2.5" y="-7.5" width="5" height="15" class="rule-hollow" />
          )}
        </svg>
      )}
    </g>
  );
}
