/** House + logs -> what they show: the one place that knows the whole way. */
import { drawnLike, drivingSd, neighbourOf, withoutAppliances } from './assessing/asDrawn.ts';
import { withBorrowed } from './assessing/borrowed.ts';
import { compare, pairsOf } from './assessing/compared.ts';
import type { Assessing, AssessStep, Evidence } from './assessing/evidence.ts';
import { assessStage } from './assessing/judged.ts';
import { measureStage, wholeRecord } from './assessing/measured.ts';
import { networkOfDesign, withNetwork } from './assessing/throughNetwork.ts';
import { judgeNights, nightsOfStage } from './cooling/index.ts';
import { designOf } from './fabric/index.ts';
import { designedYear, overlaps, sizeUnknown, unknownNights } from './gap/index.ts';
import { foretoldNights, networkEstimates } from './heatloss/index.ts';
import type { House } from './house.ts';
import { type FileRemark, gatherRecord } from './record/index.ts';
import { timeAt } from './series/grid.ts';
import type { HouseRecord } from './series/record.ts';
import { nightsBetween } from './sky/nights.ts';

export type {
  Assessing,
  AssessStep,
  ComparisonEvidence,
  Evidence,
  StageEvidence,
} from './assessing/evidence.ts';

/**
 * Assesses a house folder: the house as `house.json` has it, and the bytes of its files by their names.
 *
 * @param onStep  told of each step before it is taken
 * @param remarks what was met when the files were taken in
 */
export function assess(
  house: House,
  files: ReadonlyMap<string, Uint8Array>,
  onStep: (step: AssessStep) => void = () => {},
  remarks: ReadonlyMap<string, FileRemark> = new Map(),
): Assessing {
  const gathered = gatherRecord(house, files, {
    onFile: (step) => onStep({ kind: 'read', ...step }),
    remarks,
  });
  if (gathered.kind === 'no record') return gathered;
  const { record, accounts } = gathered;
  const shown = assessRecord(house, record, onStep);
  const findings = [...gathered.findings, ...shown.findings];
  return { kind: 'assessed', evidence: { house, accounts, record, ...shown, findings } };
}

/** What a record that was gathered shows, beside the house's design. */
export function assessRecord(
  house: House,
  gathered: HouseRecord,
  onStep: (step: AssessStep) => void = () => {},
): Pick<
  Evidence,
  'design' | 'designedYear' | 'neighbour' | 'nights' | 'foretold' | 'stages' | 'comparisons' | 'findings'
> {
  const { location } = house;
  onStep({ kind: 'nights' });
  const design = designOf(house);
  const { record, findings } = withoutAppliances(gathered, design && drawnLike(house, design));
  const neighbour = neighbourOf(house, record, design);
  const differenceSd = drivingSd(house, record, neighbour);
  const end = timeAt(record.grid, record.grid.length - 1);
  const nights = judgeNights(
    record,
    nightsBetween(record.grid.start, end, location),
    house.nights,
    neighbour,
  );
  const entries = house.stages?.toSorted((a, b) => (a.from < b.from ? -1 : 1));
  const spans = entries?.map((entry) => nightsOfStage(entry, nights, record.grid, location.timeZone));
  const rests = { house, record, design, neighbour, differenceSd, nights };
  const measured = (spans ?? [wholeRecord(record, nights)]).map((stage, done, { length: of }) => {
    onStep({ kind: 'stage', name: stage.name, done, of });
    return measureStage(stage, rests);
  });
  const drawn = networkOfDesign(house, record, design, measured);
  const network =
    drawn &&
    networkEstimates({ ...drawn, neighbour, onRound: (done, of) => onStep({ kind: 'network', done, of }) });
  const stages = measured
    .map((own, s) => withNetwork(own, network?.stages[s] ?? null))
    .map((own, s, all) =>
      assessStage(withBorrowed(own, all), house, record, design, () => network?.outlooks(s) ?? []),
    );
  return {
    design,
    designedYear: design && designedYear(house, design),
    neighbour,
    nights,
    foretold: drawn === null ? [] : foretoldNights(drawn),
    stages,
    comparisons: pairsOf(stages).map(([before, after]) =>
      compare(before, after, network?.ratio(stages.indexOf(before), stages.indexOf(after)) ?? null, {
        house,
        design,
        record,
        differenceSd,
      }),
    ),
    findings: [
      ...findings,
      ...sizeUnknown(house, design && drawnLike(house, design)),
      ...unknownNights(house, nights),
      ...overlaps(entries ?? []),
    ],
  };
}
