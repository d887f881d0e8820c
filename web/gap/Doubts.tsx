/** Where the width of the interval comes from: the rule unfolded, each piece as long as its source's share. */
import type { StageResult } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { Term } from '../parts/Term.tsx';
import { piecesOf } from './doubtPieces.ts';

export function Doubts({ stage: { doubts = [], heatLossWK } }: { readonly stage: StageResult }) {
  if (doubts.length === 0 || heatLossWK === null) return null;
  return (
    <section>
      <h2>Where the doubt comes from</h2>
      <p>
        What makes the <Term of="interval" /> of {figures.heatLossBetween(heatLossWK)} as wide as it is,
        largest first. Each piece is as long as its share of the whole doubt.
      </p>
      <ol class="doubts">
        {piecesOf(doubts).map(({ name, share, from }) => (
          <li key={name}>
            <span>
              {name} <strong class="figure">{figures.percent(share)}</strong>
            </span>
            <svg width="100%" height="14" aria-hidden="true">
              <line x1="0" x2="100%" y1="7" y2="7" class="doubts-way" />
              <rect x={percent(from)} width={percent(share)} y="1.5" height="11" class="doubts-piece" />
            </svg>
          </li>
        ))}
      </ol>
    </section>
  );
}

const percent = (share: number) => `${(share * 100).toFixed(2)}%`;
