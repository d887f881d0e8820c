/** A stored house -> the outcome of its assessment, as the store keeps it. */
import { type AssessStep, assess } from '../../src/assess.ts';
import type { Assessment } from '../../src/assessment.ts';
import { nightCurves } from '../../src/curves.ts';
import { readHouse } from '../../src/houseFile.ts';
import { filesNamed } from '../../src/record/index.ts';
import { reportOf } from '../../src/report.ts';
import { drawnBeside, say } from '../../src/words/index.ts';
import type { HouseSummary } from '../api/shapes.ts';
import { openForReading } from '../store/database.ts';
import type { Outcome } from '../store/outcomes.ts';
import { readingFrom } from '../store/reading.ts';
import { noRecord } from './noRecord.ts';

/**
 * @param database path of the file, which is opened for reading
 * @param onStep   told of each step before it is taken
 * @throws Error when the house is not there
 */
export function assessHouse(database: string, id: string, onStep: (step: AssessStep) => void): Outcome {
  const db = openForReading(database);
  try {
    const store = readingFrom(db);
    const json = store.json(id);
    if (json === null) throw new Error('the house is gone');
    const reading = readHouse(new TextDecoder().decode(json));
    if (reading.kind === 'problems') return { kind: 'not assessed', problems: reading.problems.map(say) };
    const { house } = reading;
    const files = new Map<string, Uint8Array>();
    for (const name of filesNamed(house)) {
      const bytes = store.file(id, name);
      if (bytes !== null) files.set(name, bytes);
    }
    const assessing = assess(house, files, onStep);
    if (assessing.kind === 'no record')
      return {
        kind: 'not assessed',
        problems: [noRecord(assessing.missing), ...assessing.findings.map(say)],
      };
    const assessment = reportOf(assessing.evidence);
    const used = new Set(
      assessment.stages.flatMap(({ nights }) => nights.filter((it) => it.used).map(({ date }) => date)),
    );
    const nights = nightCurves(assessing.evidence).map((curve) => ({
      date: curve.date,
      sunset: curve.sunset,
      sunrise: curve.sunrise,
      used: used.has(curve.date),
      curve: JSON.stringify(curve),
    }));
    return {
      kind: 'assessed',
      answer: JSON.stringify(answerOf(assessment)),
      assessment: JSON.stringify(assessment),
      nights,
    };
  } finally {
    db.close();
  }
}

function answerOf({ stages, design }: Assessment): HouseSummary['answer'] {
  const stage = stages.at(-1);
  if (stage === undefined) return null;
  const { heatLossWK: measured, gap } = stage;
  return {
    stage: stage.name,
    heatLossWK: measured && { value: measured.value, low: measured.low, high: measured.high },
    drawnWK: drawnBeside(stage, design),
    ratio: gap?.ratio ?? null,
    verdict: gap?.verdict ?? null,
    timeConstantH: stage.timeConstantH,
  };
}
