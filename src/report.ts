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
import type { DegreeDays, Design, ElementDesign } from './fabric/index.ts';
import type {
  Agreement,
  AnnualFigures,
  Candidate,
  Change,
  ElementGap,
  Gap,
  Look,
  NightsToShow,
  StageWeather,
  WhereToLook,
} from './gap/index.ts';
import type { DoubtShares, ForetoldNight, SurfaceHint } from './heatloss/index.ts';
import type { LeakageApart } from './heatloss/network/leakageApart.ts';
import type { LogChannel, Understood } from './logs/index.ts';
import { logInterval } from './maths/logInterval.ts';
import { studentTQuantile } from './maths/studentT.ts';
import type { FileAccount } from './record/index.ts';
import { type Grid, timeAt } from './series/grid.ts';
import { isoWithOffset } from './sky/zone.ts';
import { say, sayExplanation, testWords } from './words/index.ts';

const inHours = (seconds: number) => seconds / 3600;
const estimateInHours = ({ value, low, high }: Estimate): Estimate => ({
  value: inHours(value),
  low: inHours(low),
  high: inHours(high),
});

const estimateInKWh = ({ value, low, high }: Estimate): Estimate => ({
  value: value / 3.6e6,
  low: low / 3.6e6,
  high: high / 3.6e6,
});

/** The assessment of a house, ready for JSON: what is unknown is null, times carry the house's offset. */
export function reportOf(evidence: Evidence): Assessment {
  const { house, record } = evidence;
  const zone = house.location.timeZone;
  return {
    house: house.name,
    design: evidence.design && reportDesign(evidence.design, evidence.designedYear),
    imports: evidence.accounts.map((account) => reportImport(account, zone)),
    stages: evidence.stages.map((stage) => reportStage(stage, evidence.foretold, record.grid, zone)),
    comparisons: evidence.comparisons.map(({ before, after, ratios, change, notes }) => ({
      before,
      after,
      heatLossRatio: ratios?.heatLossRatio ?? null,
      timeConstantRatio: ratios?.timeConstantRatio ?? null,
      ...reportChange(change),
      notes: notes.map(say),
    })),
    warnings: [...evidence.findings, ...(evidence.design?.refusals ?? [])].map(say),
  };
}

/** What a change comes to beside its ratios. */
function reportChange(change: Change): Omit<Comparison, 'before' | 'after' | 'notes' | `${string}Ratio`> {
  const { heatPerYear, smallestChange, weather } = change;
  return {
    heatLossDifferenceWK: change.heatLossDifference,
    airChangesPerHour: change.airChangesPerHour,
    energyKWhPerYear: heatPerYear && estimateInKWh(heatPerYear),
    degreeDays: change.degreeDays && reportDegreeDays(change.degreeDays),
    weather: { before: reportWeather(weather.before), after: reportWeather(weather.after) },
    smallestChangePercent: smallestChange === null ? null : smallestChange * 100,
    nightsToShow: reportPlan(change.nightsToShow),
  };
}
type Comparison = Assessment['comparisons'][number];

const reportPlan = (plan: readonly NightsToShow[] | null) =>
  plan === null ? null : plan.map(({ change, nights }) => ({ changePercent: change * 100, nights }));

const reportWeather = (it: StageWeather): NonNullable<Comparison['weather']>['before'] => ({
  nights: it.nights,
  meanOutdoorC: it.outsideTemperature,
  meanDifferenceK: it.difference,
  windMS: it.windSpeed,
  irradianceWM2: it.irradiance,
});

const reportDegreeDays = ({ degreeDays, baseTemperature }: DegreeDays) => ({
  baseC: baseTemperature,
  kelvinDays: degreeDays,
  place: 'United Kingdom',
});

const reportYear = ({ degreeDays, day, notes }: AnnualFigures) => ({
  degreeDays: reportDegreeDays(degreeDays),
  designDay: { insideC: day.insideTemperature, outsideC: day.outsideTemperature },
  notes: notes.map(say),
});

const reportAnnual = (year: AnnualFigures): StageResult['annual'] => ({
  heatDemandKWhPerYear: year.heatDemand && estimateInKWh(year.heatDemand),
  heatLoadW: year.heatLoad,
  ...reportYear(year),
});

/** The largest share first. */
const reportDoubts = (shares: DoubtShares): StageResult['doubts'] =>
  doubtSources.map((source) => ({ source, share: shares[source] })).toSorted((a, b) => b.share - a.share);

/** Null as well when an element has no transmittance, so that there is no heat loss; the warnings say why. */
function reportDesign(design: Design, year: AnnualFigures | null): Assessment['design'] {
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
    heatDemandKWhPerYear: year?.heatDemand ? estimateInKWh(year.heatDemand) : null,
    heatLoadW: year?.heatLoad ?? null,
    annual: year && reportYear(year),
    ranges: {
      heatLossWK: ranges.heatLoss,
      heatLossAsTestedWK: ranges.heatLossAsTested,
      fabricWK: ranges.fabric,
      bridgesWK: ranges.bridges,
      ventilationWK: ranges.ventilation,
      elementsWK: [...ranges.elements],
    },
    elements: design.elements.map(reportElement),
    notes: [...design.findings, ...(year === null ? [{ code: 'no-standard-year' } as const] : [])].map(say),
  };
}

function reportElement(element: ElementDesign): NonNullable<Assessment['design']>['elements'][number] {
  const { name, area, transmittance, heatLoss, to, findings } = element;
  return { name, areaM2: area, uValue: transmittance, heatLossWK: heatLoss, to, notes: findings.map(say) };
}

function reportStage(
  evidence: StageEvidence,
  foretold: readonly ForetoldNight[],
  grid: Grid,
  zone: string,
): StageResult {
  const { stage, pooled, estimates, tier, headline, gap, candidates, next, notes } = evidence;
  return {
    name: stage.name,
    from: isoWithOffset(stage.from, zone),
    to: isoWithOffset(stage.to, zone),
    nights: stage.nights.map((night) => ({
      ...reportNight(night, grid, zone),
      ...reportForetold(foretold.find(({ date }) => date === night.night.date)),
    })),
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
    ...(evidence.agreement !== null && { agreement: reportAgreement(evidence.agreement) }),
    ...(evidence.surfaces.length > 0 && { surfaces: evidence.surfaces.map(reportSurface) }),
    ...reportWhereToLook(evidence.whereToLook),
    ...(evidence.apart !== null && { apart: reportApart(evidence.apart) }),
    gap: gap && reportGap(gap),
    annual: evidence.annual && reportAnnual(evidence.annual),
    nightsToShow: reportPlan(evidence.nightsToShow),
    next: next.map(say),
    ...(candidates.length > 0 && { furtherTests: candidates.map(reportTest) }),
    notes: notes.map(say),
  };
}

const reportTest = ({
  test,
  ratio,
  decides,
}: Candidate): NonNullable<StageResult['furtherTests']>[number] => {
  const heated = test.kind === 'heated-night' ? test : null;
  return {
    test: test.kind,
    moreNights: test.kind === 'more-nights' ? test.nights : null,
    powerW: heated?.power ?? null,
    durationH: heated === null ? null : inHours(heated.duration),
    warmestC: heated?.peak ?? null,
    ratio,
    chanceToDecide: decides,
    text: testWords({ test }),
  };
};

const reportAgreement = ({ agree, groups, apart, notes }: Agreement): StageResult['agreement'] => ({
  agree,
  groups: groups.map((group) => [...group]),
  apart: apart.map(({ lower, higher, sharing, causes }) => ({
    lower: [...lower],
    higher: [...higher],
    sharing: [...sharing],
    causes: causes.map(say),
  })),
  notes: notes.map(say),
});

const reportApart = (it: LeakageApart): StageResult['apart'] =>
  it.kind === 'told apart' ? { fabricWK: it.fabric, leakageWK: it.leakage } : null;

function reportGap({ ratio, drawn, verdict, detail }: Gap): NonNullable<StageResult['gap']> {
  if (detail === null) return { ratio, drawnWK: drawn, verdict };
  const { excess, elements, mean, notes } = detail;
  return {
    ratio,
    drawnWK: drawn,
    verdict,
    excessWK: excess,
    elements: elements.map(reportElementGap),
    meanUValue: mean === null ? null : mean.measured,
    notes: notes.map(say),
  };
}

const reportElementGap = ({
  name,
  drawn,
  alone,
  bare,
  evenly,
  explanations,
}: ElementGap): NonNullable<NonNullable<StageResult['gap']>['elements']>[number] => ({
  name,
  uValueDrawn: drawn,
  uValueAlone: alone,
  uValueEvenly: evenly,
  couldExplainPercent: explanations.map(({ fault, transmittance, share }) => ({
    cause: fault,
    percent: 100 * share,
    uValue: transmittance,
    text: sayExplanation(fault, share, transmittance),
  })),
  notes: alone === null ? [say({ code: 'element-cannot-carry', name, ...bare })] : [],
});

function reportWhereToLook({
  places,
  notes,
}: WhereToLook): Pick<StageResult, 'whereToLook' | 'whereToLookNotes'> {
  if (places.length === 0) return {};
  return { whereToLook: places.map(reportLook), whereToLookNotes: notes.map(say) };
}

function reportLook(look: Look): NonNullable<StageResult['whereToLook']>[number] {
  const { place, file, kind, figure, expected, inWind, chance, notes } = look;
  return {
    place,
    file,
    kind,
    ...(kind === 'room' && { ratio: figure }),
    ...((kind === 'void' || kind === 'surface' || kind === 'room-level') && { index: figure }),
    ...(kind === 'void-moisture' && { excessGM3: inGrams(figure) }),
    expected,
    inWind: inWind && {
      change: inWind.change,
      calmMS: inWind.calm,
      windyMS: inWind.windy,
      nights: inWind.nights,
      chance: inWind.chance,
    },
    chance,
    notes: notes.map(say),
  };
}

const inGrams = ({ value, low, high }: Estimate): Estimate => ({
  value: value * 1000,
  low: low * 1000,
  high: high * 1000,
});

const reportSurface = (hint: SurfaceHint): NonNullable<StageResult['surfaces']>[number] => ({
  logger: hint.file,
  room: hint.room,
  element: hint.element,
  uValueWM2K: hint.transmittance,
  accepted: hint.accepted,
  designUValue: hint.designTransmittance,
  notes: hint.notes.map(say),
});

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

/** The fall over the whole window [K]. */
function reportForetold(night: ForetoldNight | undefined): Pick<NightResult, 'foretoldDropK'> {
  if (night === undefined) return {};
  const { temperature, coolest, warmest } = night;
  const fall = (to: Float64Array) => temperature[0] - to[to.length - 1];
  return { foretoldDropK: { value: fall(temperature), low: fall(warmest), high: fall(coolest) } };
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
