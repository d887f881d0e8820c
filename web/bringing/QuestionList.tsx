/** What the files do not say, asked; an answered question stays, so that it can be answered otherwise. */
import type { BringingPreview } from '../../server/api/shapes.ts';
import type { Imported } from '../../src/assessment.ts';
import { figures } from '../../src/words/index.ts';
import { quantities } from '../parts/quantities.ts';
import type { Begun } from './begun.ts';
import { Choices } from './Choices.tsx';
import { columnsOf } from './columnsOf.ts';
import type { HouseDraft } from './draft.ts';
import { isAnswered, isChosen, type Question, withAnswer } from './questions.ts';

interface QuestionListProps {
  readonly begun: Begun;
  readonly preview: BringingPreview;
  readonly change: (draft: HouseDraft) => void;
}

export function QuestionList({ begun, preview, change }: QuestionListProps) {
  const { questions, draft } = begun;
  const asked = questions.filter(({ file }) => preview.files.some(({ imported }) => imported.file === file));
  if (asked.length === 0) return null;
  const open = asked.filter((question) => !isAnswered(question, draft)).length;
  return (
    <section>
      <h2>{open === 0 ? 'Your answers' : open === 1 ? 'One question' : `${open} questions`}</h2>
      <p>
        {open === 0
          ? 'The files are read as you say.'
          : 'The files do not say it. Until you do, the guess named is used.'}
      </p>
      <ul class="files">
        {asked.map((question) => (
          <li key={`${question.file} ${question.code} ${question.column}`}>
            <OneQuestion question={question} begun={begun} preview={preview} change={change} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function OneQuestion({
  question,
  begun,
  preview,
  change,
}: QuestionListProps & { readonly question: Question }) {
  const { file, ask, why, choices } = question;
  const { draft } = begun;
  const imported = preview.files.find((it) => it.imported.file === file)?.imported;
  return (
    <>
      <Choices
        legend={
          <>
            {file}: {ask}
          </>
        }
        choices={choices.map((choice) => ({
          label: choice.label,
          chosen: isChosen(choice, question, draft),
          choose: () => change(withAnswer(draft, file, choice.answer, columnsOf(file, begun, preview))),
        }))}
      />
      {isAnswered(question, draft) ? null : <p class="small lesser">{why}</p>}
      {imported === undefined ? null : <p class="small">{effectWords(question, imported)}</p>}
    </>
  );
}

/** What the answer makes of the file. */
function effectWords({ choices, column }: Question, { from, to, channels }: Imported): string {
  if (choices[0]?.answer.kind === 'read' && 'unit' in choices[0].answer.read) {
    const { min, max } = channels.find(({ quantity }) => quantity === 'temperature') ?? {};
    return typeof min === 'number' && typeof max === 'number'
      ? `Read like this, its temperatures run from ${figures.temperature(min)} to ${figures.temperature(max)}.`
      : '';
  }
  const own = channels.find((it) => it.column === column);
  if (own !== undefined && own.min !== null && own.max !== null) {
    const { title, unit } = quantities[own.quantity];
    const [low, high] = [own.min, own.max].map((value) => figures.decimal(value, 1));
    return `Read like this, it is ${title.toLowerCase()} from ${low} to ${high} ${unit}.`;
  }
  return from === null || to === null
    ? ''
    : `Read like this, its first reading is of ${figures.moment(from)}, its last of ${figures.moment(to)}.`;
}
