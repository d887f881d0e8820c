/** A stage as it is typed, and what is wrong with it in the words that stand at its fields. */
import type { StageEntry } from '../../src/house.ts';

export interface StageDraft {
  readonly name: string;
  /** Local times as a date field has them: "2027-01-09T12:00"; empty until they are given. */
  readonly from: string;
  readonly to: string;
  readonly complete: boolean;
}

export type DraftProblems = Partial<Record<'name' | 'from' | 'to', string>>;

export const emptyDraft: StageDraft = { name: '', from: '', to: '', complete: true };

export const draftOf = ({ name, from, to, complete = true }: StageEntry): StageDraft => ({
  name,
  from: inField(from),
  to: inField(to),
  complete,
});

/** @param others names that are taken */
export function problemsOfDraft({ name, from, to }: StageDraft, others: readonly string[]): DraftProblems {
  return {
    ...(name.trim() === '' ? { name: 'Give it a name, such as “After sealing”.' } : {}),
    ...(others.includes(name.trim()) ? { name: 'Another stage is called so.' } : {}),
    ...(from === '' ? { from: 'Give the day and the time.' } : {}),
    ...(to === ''
      ? { to: 'Give the day and the time.' }
      : from !== '' && to <= from
        ? { to: 'It has to end after it begins.' }
        : {}),
  };
}

export const stageOf = ({ name, from, to, complete }: StageDraft): StageEntry => ({
  name: name.trim(),
  from,
  to,
  complete,
});

/** A date alone begins at midnight; seconds are none of a date field's. */
const inField = (local: string) => (local.length === 10 ? `${local}T00:00` : local.slice(0, 16));
