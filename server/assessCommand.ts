/** `assess FOLDER`: the main job without a server. */
import { parseArgs } from 'node:util';
import { assess } from '../src/assess.ts';
import type { Assessment, Message } from '../src/assessment.ts';
import { reportOf } from '../src/report.ts';
import { say } from '../src/words/index.ts';
import { readHouseFolder } from './houseFolder.ts';
import { summaryOf } from './summary/index.ts';

interface Out {
  write(text: string): unknown;
}

/** The exit code when `house.json` or every temperature is missing; 0 otherwise, whatever the verdict. */
const NOT_ASSESSED = 2;

/** Runs the command and returns its exit code; problems go to `err`, the answer to `out`. */
export async function assessCommand(args: readonly string[], out: Out, err: Out): Promise<number> {
  const fail = (text: string) => {
    err.write(`${text}\n`);
    return NOT_ASSESSED;
  };
  const asked = parse(args);
  if (typeof asked === 'string') return fail(asked);
  const { folder, json, stage } = asked;

  const read = await readHouseFolder(folder);
  if (read.kind === 'no house.json')
    return fail(
      `${folder}: there is no house.json here (${read.why}). A house folder holds house.json and the CSVs that it names.`,
    );
  if (read.kind === 'problems') return fail(read.problems.map(say).map(asLine).join('\n'));
  const assessing = assess(read.house, read.files, undefined, read.remarks);
  if (assessing.kind === 'no record') {
    for (const finding of assessing.findings) err.write(`${asLine(say(finding))}\n`);
    return fail(
      assessing.missing === 'inside'
        ? 'No readable inside temperature remains, so there is nothing to assess. Check the loggers with "place": "inside".'
        : 'No outdoor temperature remains, neither from a logger with "place": "outside" nor from a weather file, so a fall inside says nothing.',
    );
  }
  const whole = reportOf(assessing.evidence);
  if (stage !== undefined && !whole.stages.some(({ name }) => name === stage))
    return fail(
      `There is no stage “${stage}”. The stages are ${whole.stages.map(({ name }) => `“${name}”`).join(', ')}.`,
    );
  const assessment: Assessment =
    stage === undefined
      ? whole
      : { ...whole, stages: whole.stages.filter(({ name }) => name === stage), comparisons: [] };
  for (const warning of assessment.warnings) err.write(`${asLine(warning)}\n`);
  out.write(json ? `${JSON.stringify(assessment, null, 2)}\n` : summaryOf(assessment, assessing.evidence));
  return 0;
}

function parse(
  args: readonly string[],
): { folder: string; json: boolean; stage: string | undefined } | string {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean', default: false }, stage: { type: 'string' } },
    });
    if (positionals.length !== 1)
      return 'Name one house folder: stillwarm assess FOLDER [--json] [--stage NAME]';
    return { folder: positionals[0], json: values.json, stage: values.stage };
  } catch (error) {
    return error instanceof Error ? error.message : String(error);
  }
}

/** "living.csv, line 12: what is the matter. What to do." */
export function asLine({ text, where, remedy }: Message): string {
  const place = [
    where?.file,
    where?.line === undefined ? undefined : `line ${where.line}`,
    where?.column === undefined ? undefined : `column “${where.column}”`,
    where?.key,
  ].filter((part) => part !== undefined);
  return [place.length > 0 ? `${place.join(', ')}:` : '', text, remedy ?? ''].filter(Boolean).join(' ');
}
