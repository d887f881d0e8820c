/** What is the matter, where, and what to do about it. */
import type { Message, Where } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import './ProblemList.css';

export interface ProblemListProps {
  readonly problems: readonly Message[];
  /** Spoken at once: for what has just gone wrong, not for what stood there from the beginning. */
  readonly urgent?: boolean;
}

export function ProblemList({ problems, urgent = false }: ProblemListProps) {
  if (problems.length === 0) return null;
  return (
    <div role={urgent ? 'alert' : undefined}>
      <ul class="problems">
        {problems.map(({ code, text, where, remedy }, i) => (
          <li key={`${code} ${i}`}>
            {where ? <span class="problem-place">{placeOf(where)} </span> : null}
            {sentence(text)}
            {remedy ? <span class="problem-remedy"> {remedy}</span> : null}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** "living.csv, line 12" */
function placeOf({ file, line, column, key, night, stage }: Where): string {
  return [
    file,
    line === undefined ? undefined : `line ${line}`,
    column === undefined ? undefined : `column “${column}”`,
    key === undefined ? undefined : file === undefined ? `house.json, ${key}` : key,
    night === undefined ? undefined : `night of ${figures.day(night)}`,
    stage === undefined ? undefined : `stage “${stage}”`,
  ]
    .filter((part) => part !== undefined)
    .join(', ');
}

/** Reasons of nights begin small; in a list each stands alone. */
const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
