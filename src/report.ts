/** The evidence in SI -> the assessment as the JSON has it. The one place that turns figures into the units of the border. */
import type { Evidence, StageEvidence } from './assess.ts';
import {
  type Assessment,
  doubtSources,
  type Estimate,
  type Imported,
  type NightResult,
  type Quantity,
  reportedUnits,
  type StageResult,
} from './assessment.ts';
import type { JudgedNight, LaterStarts, LeaveOneOut, RoomsCooling } from './cooling/index.ts';
import type { Design, ElementDesign } from './fabric/index.ts';
import type { DoubtShares } from './heatloss/index.ts';
import type { LogChannel, Understood } from './logs/index.ts';
import { logInterval } from './maths/logInterval.ts';
import { studentTQuantile } from './maths/studentT.ts';
import type { FileAccount } from './record/index.ts';
import { type Grid, timeAt } from './series/grid.ts';
import { isoWithOffset } from './sky/zone.ts';
import { say } from './words/index.ts';

const inHours = (seconds: number) => seconds / 3600;
const estimateInHours = ({ value, low, high }: Estimate): Estimate => ({
  value: inHours(value),
  low: inHours(low),
  high: inHours(high),
});

/** The assessment of a house, ready for JSON: what is unknown is null, times carry the house's offset. */
export function reportOf(evidence: Evidence): Assessment {
  const { house, record } = evidence;
  const zone = house.location.timeZone;
  return {
    house: house.name,
    design: evidence.design && reportDesign(evidence.design),
    imports: evidence.accounts.map((account) => reportImport(account, zone)),
    stages: evidence.stages.map((stage) => reportStage(stage, record.grid, zone)),
    comparisons: evidence.comparisons.map(({ before, after, ratios, notes }) => ({
      before,
      after,
      heatLossRatio: ratios?.heatLossRatio ?? null,
      timeConstantRatio: ratios?.timeConstantRatio ?? null,
      notes: notes.map(say),
    })),
    warnings: [...evidence.findings, ...(evidence.design?.refusals ?? [])].map(say),
  };
}

/** The largest share first. */
const reportDoubts = (shares: DoubtShares): StageResult['doubts'] =>
  doubtSources.map((source) => ({ source, share: shares[source] })).toSorted((a, b) => b.share - a.share);

/** Null as well when an element has no transmittance, so that there is no heat loss; the warnings say why. */
function reportDesign(design: Design): Assessment['design'] {
  const { heatLoss, fabric, meanTransmittance, ranges } = design;
  if (heatLoss === null || fabric === null || meanTransmittance === null) return null;
  if (ranges.heatLoss === null || ranges.fabric === null) return null;
  return {
    heatLossWK: heatLoss,
    heatLossAsTestedWK: design.heatLossAsTested,
    fabricWK: fabric,
    bridgesWK: design.bridges,
    ventilationWK: design.ventilation,
    meanUValue: meanTransmittance,
    heatCapacityKJK: design.heatCapacity && design.heatCapacity / 1000,
    heatCapacitySdPercent: design.heatCapacitySd && design.heatCapacitySd * 100,
    timeConstantH: design.timeConstant && inHours(design.timeConstant),
    toNeighboursWK: design.toNeighbours,
    ranges: {
      heatLossWK: ranges.heatLoss,
      heatLossAsTestedWK: ranges.heatLossAsTested,
      fabricWK: ranges.fabric,
      bridgesWK: ranges.bridges,
      ventilationWK: ranges.ventilation,
      elementsWK: [...ranges.elements],
    },
    elements: design.elements.map(reportElement),
    notes: design.findings.map(say),
  };
}

function reportElement(element: ElementDesign): NonNullable<Assessment['design']>['elements'][number] {
  const { name, area, transmittance, heatLoss, to, findings } = element;
  return { name, areaM2: area, uValue: transmittance, heatLossWK: heatLoss, to, notes: findings.map(say) };
}

function reportStage(evidence: StageEvidence, grid: Grid, zone: string): StageResult {
  const { stage, pooled, estimates, tier, headline, gap, next, notes } = evidence;
  return {
    name: stage.name,
    from: isoWithOffset(stage.from, zone),
    to: isoWithOffset(stage.to, zone),
    nights: stage.nights.map((night) => reportNight(night, grid, zone)),
    timeConstantH: pooled && estimateInHours(pooled.timeConstant),
    ...reportLaterStarts(evidence.laterStarts),
    ...reportLeaveOneOut(evidence.leaveOneOut),
    ...reportRooms(evidence.rooms),
    estimates: estimates.map(({ method, heatLossCoefficient, notes: said }) => ({
      method,
      heatLossWK: heatLossCoefficient,
      notes: said.map(say),
    })),
    tier,
    heatLossWK: headline && { ...headline.heatLossCoefficient, method: headline.method },
    ...(evidence.doubts !== null && { doubts: reportDoubts(evidence.doubts) }),
    gap,
    next: next.map(say),
    notes: notes.map(say),
  };
}

function reportLaterStarts(them: LaterStarts | null): Pick<StageResult, 'laterStarts'> {
  if (them === null) return {};
  const { nights, starts, moves } = them;
  const coverage = studentTQuantile(0.975, nights - 1);
  return {
    laterStarts: {
      nights,
      starts: starts.map(({ later, timeConstant, logSe, ratio }) => ({
        laterH: inHours(later),
        timeConstantH: estimateInHours(logInterval(timeConstant, logSe, 0, coverage)),
        ratio: { ...ratio },
      })),
      moves,
    },
  };
}

function reportLeaveOneOut(them: LeaveOneOut | null): Pick<StageResult, 'leaveOneOut'> {
  if (them === null) return {};
  const { without, most, carries } = them;
  const timeConstants = without.map(({ timeConstant }) => inHours(timeConstant));
  return {
    leaveOneOut: {
      lowestTimeConstantH: Math.min(...timeConstants),
      highestTimeConstantH: Math.max(...timeConstants),
      most: { date: most.date, timeConstantH: inHours(most.timeConstant) },
      carries,
    },
  };
}

function reportRooms({ rooms }: RoomsCooling): Pick<StageResult, 'rooms'> {
  if (rooms.length === 0) return {};
  return {
    rooms: rooms.map(({ room, file, timeConstant, ratio, nights }) => ({
      room,
      file,
      timeConstantH: estimateInHours(timeConstant),
      ratio,
      nights,
    })),
  };
}

function reportNight(judged: JudgedNight, grid: Grid, zone: string): NightResult {
  const { night, window, fit, drop, duration, meanDifference, used, heated, reasons } = judged;
  const fitted = fit?.kind === 'fitted' ? fit : null;
  return {
    date: night.date,
    from: window && isoWithOffset(timeAt(grid, window.first), zone),
    to: window && isoWithOffset(timeAt(grid, window.last), zone),
    used,
    heated,
    reasons: reasons.map(say),
    dropK: drop,
    rateKPerH: drop !== null && duration ? drop / inHours(duration) : null,
    meanDifferenceK: meanDifference,
    timeConstantH: fitted && inHours(fitted.timeConstant.value),
    timeConstantSeH: fitted && inHours(fitted.timeConstant.value) * fitted.logSe,
  };
}

/** What was understood of one file. */
export function reportImport({ file, reading }: FileAccount, zone: string): Imported {
  const channels = reading.kind === 'read' ? reading.channels : [];
  const ends = channels.flatMap(({ time }) => (time.length > 0 ? [time[0], time[time.length - 1]] : []));
  return {
    file,
    rows: reading.rows,
    readings: channels.reduce((sum, { time }) => sum + time.length, 0),
    rejected: reading.kind === 'read' ? reading.rejected : reading.rows,
    from: ends.length > 0 ? isoWithOffset(Math.min(...ends), zone) : null,
    to: ends.length > 0 ? isoWithOffset(Math.max(...ends), zone) : null,
    intervalS: reading.kind === 'read' ? reading.interval : null,
    understood: reading.understood && reportUnderstood(reading.understood),
    channels: channels.map(reportChannel),
    notes: reading.findings.map(say),
  };
}

/** Of a long preamble the first lines say enough. */
const PREAMBLE_LINES = 100;

function reportUnderstood({ preamble, clock, columns, sample, ...rest }: Understood): Imported['understood'] {
  const { lines, interval, ...said } = preamble;
  return {
    ...rest,
    preamble: { lines: lines.slice(0, PREAMBLE_LINES), ...said, intervalS: interval },
    clock: { ...clock, columns: [...clock.columns] },
    columns: columns.map((column) => ({ ...column, because: [...column.because] })),
    sample: sample.map(({ line, cells }) => ({ line, cells: [...cells] })),
  };
}

/** What the JSON's unit of a quantity is in SI; 1 where it is left out. */
export const perReportedUnit: Readonly<Partial<Record<Quantity, number>>> = {
  humidity: 0.01,
  absoluteHumidity: 0.001,
  energy: 3.6e6,
  meter: 3.6e6,
  pressure: 100,
  carbonDioxide: 1e-6,
};

function reportChannel({ column, quantity, value, doubt }: LogChannel): Imported['channels'][number] {
  const scale = perReportedUnit[quantity] ?? 1;
  const reported = (it: number) => (Number.isFinite(it) ? it / scale : null);
  let [count, sum, min, max] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let i = 0; i < value.length; i++) {
    if (doubt[i] !== 0) continue;
    count++;
    sum += value[i];
    if (value[i] < min) min = value[i];
    if (value[i] > max) max = value[i];
  }
  return {
    column,
    quantity,
    unit: reportedUnits[quantity],
    readings: value.length,
    doubted: value.length - count,
    mean: reported(sum / count),
    min: reported(min),
    max: reported(max),
  };
}
