/** What a file does not say and only a person can: as questions, each with its answers as choices. */
import { Temporal } from 'temporal-polyfill';
import type { Imported, Message } from '../../src/assessment.ts';
import { placementsOf, withColumn, withFile, withRead } from './answers.ts';
import { type ColumnShown, roleName } from './columns.ts';
import { columnRoles, type HouseDraft, type Read } from './draft.ts';

export interface Question {
  readonly file: string;
  readonly code: string;
  readonly column: string | null;
  readonly ask: string;
  /** What was noticed. */
  readonly why: string;
  readonly choices: readonly Choice[];
}

export interface Choice {
  readonly label: string;
  readonly answer: Answer;
}

export type Answer =
  | { readonly kind: 'read'; readonly read: Read }
  | { readonly kind: 'zone'; readonly timeZone: string }
  | { readonly kind: 'column'; readonly column: string; readonly role: (typeof columnRoles)[number] };

/** @param house the zone of the house */
export function questionsIn(imported: Imported, house: string): Question[] {
  return imported.notes.flatMap((note) => {
    const asked = askOf(note, imported, house);
    if (asked === null) return [];
    return [
      { file: imported.file, code: note.code, column: note.where?.column ?? null, why: note.text, ...asked },
    ];
  });
}

export const isSame = (a: Question, b: Question): boolean =>
  a.file === b.file && a.code === b.code && a.column === b.column;

/** Whether the form says what this choice says. */
export function isChosen({ answer }: Choice, { file }: Question, draft: HouseDraft): boolean {
  const [placement] = placementsOf(file, draft);
  if (placement === undefined) return false;
  switch (answer.kind) {
    case 'read':
      return Object.entries(answer.read).every(([key, value]) => placement.read[key as keyof Read] === value);
    case 'zone':
      return placement.timeZone === answer.timeZone;
    case 'column':
      return placementsOf(file, draft).some(({ columns }) => columns[answer.role] === answer.column);
  }
}

export const isAnswered = (question: Question, draft: HouseDraft): boolean =>
  question.choices.some((choice) => isChosen(choice, question, draft)) ||
  (question.choices.some(({ answer }) => answer.kind === 'zone') &&
    placementsOf(question.file, draft).some(({ timeZone }) => timeZone !== ''));

/** @param shown the columns of the file */
export function withAnswer(
  draft: HouseDraft,
  file: string,
  answer: Answer,
  shown: readonly ColumnShown[],
): HouseDraft {
  switch (answer.kind) {
    case 'read':
      return withRead(draft, file, answer.read);
    case 'zone':
      return withFile(draft, file, { timeZone: answer.timeZone });
    case 'column':
      return withColumn(draft, file, answer.column, answer.role, shown);
  }
}

type Asked = Pick<Question, 'ask' | 'choices'>;

function askOf({ code, where }: Message, imported: Imported, house: string): Asked | null {
  switch (code) {
    case 'date-order-unknown':
      return { ask: 'Which comes first in its dates, the day or the month?', choices: orders(imported) };
    case 'temperature-unit-guessed':
      return { ask: 'In which unit are its temperatures?', choices: units(['C', 'F', 'K']) };
    case 'unit-as-other-files':
      return { ask: 'In which unit are its temperatures?', choices: units(['F', 'C', 'K']) };
    case 'decimal-mark-guessed':
      return {
        ask: 'Is the mark in its numbers a decimal mark, or does it part the thousands?',
        choices: [
          { label: 'A comma before the decimals', answer: { kind: 'read', read: { decimal: ',' } } },
          { label: 'A point before the decimals', answer: { kind: 'read', read: { decimal: '.' } } },
        ],
      };
    case 'unit-doubted':
      return { ask: 'In which unit are its temperatures really?', choices: units(['C', 'F']) };
    case 'serial-days-guessed':
      return {
        ask: 'From which year did the spreadsheet count the days?',
        choices: ([1900, 1904] as const).map((serialFrom) => ({
          label: `From ${serialFrom}${serialFrom === 1900 ? ', as nearly all do' : ', as some old ones do'}`,
          answer: { kind: 'read', read: { serialFrom } },
        })),
      };
    case 'quantity-guessed': {
      const column = where?.column;
      if (column === undefined) return null;
      return {
        ask: `What does its column “${column}” hold?`,
        choices: columnRoles
          .filter((role) => role !== 'time' && role !== 'date')
          .map((role) => ({ label: roleName(role), answer: { kind: 'column', column, role } })),
      };
    }
    case 'zone-ambiguous':
      return { ask: 'In which time zone was its clock?', choices: zones(house) };
    case 'local-time-missing':
    case 'doubled-hour-once':
      return { ask: 'Does its clock change to summer time and back?', choices: summerTime(house) };
    default:
      return null;
  }
}

const unitNames = { C: '°C', F: '°F', K: 'kelvin' } as const;
const units = (all: readonly ('C' | 'F' | 'K')[]): Choice[] =>
  all.map((unit) => ({ label: unitNames[unit], answer: { kind: 'read', read: { unit } } }));

/** With the file's own first date, read both ways. */
function orders({ understood }: Imported): Choice[] {
  const first = understood?.sample[0]?.cells.join(' ') ?? '';
  const [, a, b] = /(?<!\d)(\d{1,2})[./-](\d{1,2})[./-]\d{2,4}/.exec(first) ?? [];
  const read = (day: string | undefined, month: string | undefined) => {
    if (day === undefined || Number(month) < 1 || Number(month) > 12) return '';
    return `: ${a}/${b} is ${Number(day)} ${MONTHS.format(Date.UTC(2027, Number(month) - 1, 1))}`;
  };
  return [
    { label: `The day${read(a, b)}`, answer: { kind: 'read', read: { dateOrder: 'day-first' } } },
    { label: `The month${read(b, a)}`, answer: { kind: 'read', read: { dateOrder: 'month-first' } } },
  ];
}

const MONTHS = new Intl.DateTimeFormat('en-GB', { month: 'long', timeZone: 'UTC' });

const zones = (house: string): Choice[] =>
  distinct([
    { label: `The house’s: ${house}`, answer: { kind: 'zone', timeZone: house } },
    { label: 'UTC', answer: { kind: 'zone', timeZone: 'UTC' } },
  ]);

function summerTime(house: string): Choice[] {
  const winter = winterZone(house);
  return distinct([
    { label: `Yes, as clocks do in ${house}`, answer: { kind: 'zone', timeZone: house } },
    ...(winter === null
      ? []
      : [
          {
            label: 'No, it keeps winter time all year',
            answer: { kind: 'zone', timeZone: winter } as const,
          },
        ]),
    { label: 'No, it keeps UTC', answer: { kind: 'zone', timeZone: 'UTC' } },
  ]);
}

/** The zone that has a house's winter time all year; null where no zone has that name, as with half hours. */
export function winterZone(house: string): string | null {
  try {
    const hours = [1, 7].map(
      (month) =>
        Temporal.ZonedDateTime.from({ year: 2027, month, day: 1, timeZone: house }).offsetNanoseconds /
        3.6e12,
    );
    const winter = Math.min(...hours);
    if (!Number.isInteger(winter)) return null;
    // the signs of these zones run the other way: west is positive
    return winter === 0 ? 'UTC' : `Etc/GMT${winter > 0 ? '-' : '+'}${Math.abs(winter)}`;
  } catch {
    return null;
  }
}

const distinct = (choices: readonly Choice[]): Choice[] =>
  choices.filter(
    ({ answer }, i) => choices.findIndex((it) => JSON.stringify(it.answer) === JSON.stringify(answer)) === i,
  );
