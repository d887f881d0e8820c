/** A quantity with its interval, as a pencil mark on a ruler: the one figure for everything that has an interval. */
import './Rule.css';
import { placeOn, type RuleScale, ruleScale } from './ruleScale.ts';
import { type RuleUnit, ruleUnits } from './ruleUnits.ts';

export interface RuleMark {
  readonly label: string;
  readonly value: number;
  /** The 95 % interval; a drawn value has none. */
  readonly low?: number;
  readonly high?: number;
  /** Measured is a pencil mark, drawn a notch in the ruler's edge, any other a hollow mark. */
  readonly kind: 'measured' | 'drawn' | 'other';
}

export interface RuleProps {
  /** What is measured here, for those who hear it. */
  readonly title: string;
  readonly unit: RuleUnit;
  readonly marks: readonly RuleMark[];
  /** One line for each mark instead of two, for lists. */
  readonly small?: boolean;
}

const RULER = 40;

export function Rule({ title, unit, marks, small = false }: RuleProps) {
  if (marks.length === 0) return null;
  const scale = ruleScale(marks.flatMap(({ value, low = value, high = value }) => [value, low, high]));
  const row = small ? 34 : 52;
  const edge = marks.length * row;
  const lines = marks.map((mark, i) => ({ mark, unit, scale, y: (i + 1) * row - 10, edge }));
  return (
    <figure class={small ? 'rule rule-small' : 'rule'}>
      <svg role="img" aria-label={spoken(title, unit, marks)} width="100%" height={edge + RULER}>
        {lines.map((line) => (
          <Pencil key={line.mark.label} {...line} />
        ))}
        {lines.map((line) => (
          <Words key={line.mark.label} {...line} />
        ))}
        <Ruler scale={scale} edge={edge} sign={ruleUnits[unit].sign} />
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
    </figure>
  );
}

const percent = (share: number) => `${(share * 100).toFixed(3)}%`;

const figureOf = (unit: RuleUnit, { value, low, high }: RuleMark) =>
  low === undefined || high === undefined
    ? ruleUnits[unit].point(value)
    : ruleUnits[unit].between({ value, low, high });

const spoken = (title: string, unit: RuleUnit, marks: readonly RuleMark[]) =>
  `${title}. ${marks.map((mark) => `${mark.label}: ${figureOf(unit, mark)}`).join('; ')}.`;

function Ruler({ scale, edge, sign }: { scale: RuleScale; edge: number; sign: string }) {
  const depth = { long: 13, middle: 9, short: 6 } as const;
  return (
    <g class="ruler">
      <svg y={edge} overflow="visible" aria-hidden="true">
        <rect x="-14" width="28" height={RULER} class="ruler-body" />
        <svg x="100%" overflow="visible" aria-hidden="true">
          <rect x="-14" width="28" height={RULER} class="ruler-body" />
        </svg>
        <rect width="100%" height={RULER} class="ruler-body" />
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
        <text x="0" y="28" dx={8 + 4 * scale.graduations[0].text.length} class="ruler-sign">
          {sign}
        </text>
      </svg>
    </g>
  );
}

interface PencilProps {
  readonly mark: RuleMark;
  readonly unit: RuleUnit;
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

function Words({ mark, unit, scale, y }: PencilProps) {
  const { value, low = value, high = value, kind, label } = mark;
  const at = placeOn(scale, value);
  const { anchor, x, aside } = wordsAt(kind, at, placeOn(scale, low), placeOn(scale, high));
  return (
    <text x={percent(x)} dx={aside} y={kind === 'drawn' ? y : y - 14} text-anchor={anchor} class="rule-words">
      <tspan class="rule-label">{label} </tspan>
      <tspan class="rule-figure">{figureOf(unit, mark)}</tspan>
    </text>
  );
}

interface WordsPlace {
  readonly anchor: 'start' | 'middle' | 'end';
  readonly x: number;
  /** [px] */
  readonly aside: number;
}

/** Words begin at the mark's left end, end at its right end or stand over it, so that they stay on the sheet. */
function wordsAt(kind: RuleMark['kind'], at: number, from: number, to: number): WordsPlace {
  if (kind === 'drawn')
    return at < 0.5 ? { anchor: 'start', x: at, aside: 8 } : { anchor: 'end', x: at, aside: -8 };
  const middle = (from + to) / 2;
  if (middle < 0.35) return { anchor: 'start', x: from, aside: 0 };
  if (middle > 0.65) return { anchor: 'end', x: to, aside: 0 };
  return { anchor: 'middle', x: Math.min(0.6, Math.max(0.4, at)), aside: 0 };
}
