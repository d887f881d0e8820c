/** What assessments came to: the outcome of a house as it is, and results of what it was, within the caller's transaction. */
import type { Database } from 'better-sqlite3';
import type { Message } from '../../src/assessment.ts';
import type { NightCurve } from '../../src/curves.ts';

/** What an assessment came to; `answer` and `assessment` as JSON. */
export type Outcome =
  | {
      readonly kind: 'assessed';
      readonly answer: string;
      readonly assessment: string;
      readonly nights: readonly StoredNight[];
    }
  | { readonly kind: 'not assessed'; readonly problems: readonly Message[] }
  | { readonly kind: 'cancelled' };

export type StoredNight = Pick<NightCurve, 'date' | 'sunset' | 'sunrise'> & {
  readonly used: boolean;
  /** A NightCurve as JSON. */
  readonly curve: string;
};

/** Of each house so many former results are kept, the latest. */
const MOST_FORMER = 12;

type AssessedRow = { readonly restsOn: string; readonly answer: string; readonly assessment: string };
type NightRow = Omit<StoredNight, 'used'> & { readonly used: number };

export function outcomesIn(db: Database) {
  const upsertOutcome = db.prepare(
    `INSERT OR REPLACE INTO outcome (house, rests_on, kind, problems, answer, assessment)
     VALUES (@house, @restsOn, @kind, @problems, @answer, @assessment)`,
  );
  const assessed = db.prepare<[number], AssessedRow>(
    `SELECT rests_on AS restsOn, answer, assessment FROM outcome WHERE house = ? AND kind = 'assessed'`,
  );
  const updateAssessment = db.prepare('UPDATE outcome SET assessment = ? WHERE house = ?');
  const deleteOutcome = db.prepare('DELETE FROM outcome WHERE house = ?');
  const nights = db.prepare<[number], NightRow>(
    `SELECT date, sunset_s AS sunset, sunrise_s AS sunrise, used, curve FROM night WHERE house = ?
     ORDER BY sunset_s`,
  );
  const deleteNights = db.prepare('DELETE FROM night WHERE house = ?');
  const insertNight = db.prepare(
    'INSERT INTO night (house, date, sunset_s, sunrise_s, used, curve) VALUES (?, ?, ?, ?, ?, ?)',
  );
  const former = db
    .prepare<[number, string], string>('SELECT result FROM former_result WHERE house = ? AND rests_on = ?')
    .pluck();
  const insertFormer = db.prepare(
    'INSERT OR REPLACE INTO former_result (house, rests_on, result) VALUES (?, ?, ?)',
  );
  const deleteFormer = db.prepare('DELETE FROM former_result WHERE house = ? AND rests_on = ?');
  const deleteOldest = db.prepare(
    `DELETE FROM former_result WHERE house = @house AND number NOT IN
     (SELECT number FROM former_result WHERE house = @house ORDER BY number DESC LIMIT ${MOST_FORMER})`,
  );

  /** Replaces the outcome of a house. */
  function store(house: number, name: string, restsOn: string, outcome: Outcome): void {
    const result = outcome.kind === 'assessed' ? outcome : null;
    upsertOutcome.run({
      house,
      restsOn,
      kind: outcome.kind,
      problems: outcome.kind === 'not assessed' ? JSON.stringify(outcome.problems) : null,
      answer: result?.answer ?? null,
      assessment: result === null ? null : headed(result.assessment, name),
    });
    deleteNights.run(house);
    for (const { date, sunset, sunrise, used, curve } of result?.nights ?? [])
      insertNight.run(house, date, sunset, sunrise, used ? 1 : 0, curve);
    deleteOldest.run({ house });
  }

  return {
    store,

    /** The house is not any more what its outcome rests on; a result is kept in case it is so again. */
    setAside(house: number): void {
      const result = assessed.get(house);
      if (result !== undefined) {
        const { restsOn, ...rest } = result;
        const itsNights = nights.all(house).map((night) => ({ ...night, used: night.used === 1 }));
        const outcome: Outcome = { kind: 'assessed', ...rest, nights: itsNights };
        insertFormer.run(house, restsOn, JSON.stringify(outcome));
      }
      deleteOutcome.run(house);
      deleteNights.run(house);
    },

    /** The house is again what a former result rests on, if there is one: it is its outcome then. */
    takeUp(house: number, name: string, restsOn: string): void {
      const result = former.get(house, restsOn);
      if (result === undefined) return;
      deleteFormer.run(house, restsOn);
      store(house, name, restsOn, JSON.parse(result));
    },

    /** Only the name of the house has changed of all that its outcome tells. */
    rename(house: number, name: string): void {
      const result = assessed.get(house);
      if (result !== undefined) updateAssessment.run(headed(result.assessment, name), house);
    },
  };
}

/** An assessment under the name that the house has now. */
const headed = (assessment: string, name: string) =>
  JSON.stringify({ ...JSON.parse(assessment), house: name });
