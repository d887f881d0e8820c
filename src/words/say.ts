/**
 * Every code's sentence, in plain English with the figures in it. A code without a sentence does not compile.
 * Read them aloud before you change them.
 */
import type { Message, Where } from '../assessment.ts';
import type { NightReason } from '../cooling/index.ts';
import type { FabricFinding } from '../fabric/index.ts';
import type { NextStep, StageNote } from '../gap/index.ts';
import type { HeatLossNote } from '../heatloss/index.ts';
import type { HouseProblem } from '../houseFile.ts';
import type { DoubtKind, LogFinding } from '../logs/index.ts';
import type { RecordFinding } from '../record/index.ts';
import { count, dayOfYear, days, decimal, duration, energy, kelvins, percent, power } from './figures.ts';
import { methodNames } from './names.ts';

export type Finding =
  | HouseProblem
  | LogFinding
  | RecordFinding
  | FabricFinding
  | NightReason
  | HeatLossNote
  | StageNote
  | NextStep;

interface Sentence {
  readonly text: string;
  readonly remedy?: string;
}

type Sentences = { readonly [C in Finding['code']]: (it: Extract<Finding, { code: C }>) => Sentence };

const lines = (numbers: readonly number[], total: number) =>
  `${numbers.length === 1 ? 'line' : 'lines'} ${numbers.join(', ')}${total > numbers.length ? ', …' : ''}`;
const list = (names: readonly string[]) => names.map((name) => `“${name}”`).join(', ');
const nightsOf = (dates: readonly string[]) => `${dates.length === 1 ? 'night' : 'nights'} of ${days(dates)}`;
const because = (why: string | null) => (why ? `: ${why}` : '');

/** What a heater left on in a building site asks for, said wherever a heated night is proposed. */
export const heaterCautions =
  'Electric heat only, never an unflued flame; a heater with a thermostat cut-out, on its own uncoiled lead, well ' +
  'clear of insulation and sheeting; a working smoke alarm; combustion appliances and flues left alone. Do not leave ' +
  'it unattended where local rules or the insurer forbid it.';

const refusals: Readonly<Record<Extract<Finding, { code: 'archive-refused' }>['why'], string>> = {
  encrypted: 'it asks for a password',
  'too large': 'what is inside is larger than any log',
  'path out of the folder': 'a name in it leads out of its folder',
  broken: 'it is damaged or not complete',
  'no log inside': 'there is no file in it',
  office: 'it is a spreadsheet or document, not a log',
};

const doubts: Readonly<Record<DoubtKind, string>> = {
  'power-on': 'a sensor that had not yet begun to measure',
  'false-zero': 'a zero among readings nowhere near it',
  stuck: 'the same value for much longer than this sensor ever rests',
  spike: 'far off the readings before and after',
};

const sentences: Sentences = {
  // house.json
  'json-broken': ({ what }) => ({
    text: `The file is not valid JSON here: ${what}.`,
    remedy: 'Look for a missing comma, bracket or quote at this place or just before it.',
  }),
  'key-unknown': ({ key, nearest, known }) => ({
    text: `“${key}” is not a key here.`,
    remedy:
      nearest === null ? `Keys that may stand here: ${known.join(', ')}.` : `Did you mean “${nearest}”?`,
  }),
  'key-missing': ({ expected }) => ({ text: 'This key is missing.', remedy: `Give ${expected}.` }),
  'value-unexpected': ({ found, expected }) => ({ text: `Found ${found}.`, remedy: `Give ${expected}.` }),

  // files and logs
  'file-missing': () => ({
    text: 'house.json names this file, but it is not in the folder.',
    remedy: 'Put the file there, or take its entry out. The rest was assessed without it.',
  }),
  'exports-conflict': ({ count: n, first }) => ({
    text: `${count(n, 'instant')} have another value in a later export; “${first}” was believed.`,
    remedy: 'To believe the later one, name it as “file” and the other one in “continuedIn”.',
  }),
  'readings-put-back': ({ count: n }) => ({
    text: `${count(n, 'reading')} that looked wrong are used, because house.json puts them back.`,
  }),
  'file-empty': () => ({ text: 'The file is empty.', remedy: 'Export it from the logger again.' }),
  'file-not-text': () => ({
    text: 'This is not a text file with readings.',
    remedy: 'Export the log as CSV and use that file.',
  }),
  'archive-refused': ({ why }) => ({
    text: `The archive was not opened: ${refusals[why]}.`,
    remedy: 'Bring the log itself, as CSV or text.',
  }),
  'archive-several-logs': ({ names }) => ({
    text: `The archive holds several logs: ${list(names)}.`,
    remedy: 'Bring them one by one, so that each can be told where it hung.',
  }),
  'control-bytes': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} with signs that no text holds, as a power cut leaves them: ${lines(at, n)}.`,
    remedy: 'Export the log again if readings are missing there.',
  }),
  'readings-doubted': ({ why, count: n, lines: at }) => ({
    text: `${count(n, 'reading')} ${n === 1 ? 'is' : 'are'} kept out: ${doubts[why]} (${lines(at, n)}).`,
    remedy: 'If it was real, name the time in the logger’s “putBack” in house.json.',
  }),
  gaps: ({ count: n, longest, lines: at }) => ({
    text: `${count(n, 'gap')}, the longest ${duration(longest)}, after ${lines(at, n)}.`,
  }),
  'irregular-spacing': () => ({ text: 'The readings are not evenly spaced.' }),
  'coarse-steps': ({ step }) => ({
    text: `The logger shows only steps of ${kelvins(step)}; small falls are hard to see with it.`,
  }),
  'no-time-column': () => ({
    text: 'No column of times was found.',
    remedy: 'Name it in house.json: "columns": { "time": "…" } beside the file.',
  }),
  'start-not-told': () => ({
    text: 'The times count from a start, and the file does not say when that was or in what steps.',
    remedy: 'Export the log with date and time, or with its start and interval above the header.',
  }),
  'column-not-found': ({ wanted, headers }) => ({
    text: `There is no column “${wanted}”.`,
    remedy: `The file has ${list(headers)}.`,
  }),
  'no-readings': () => ({
    text: 'The file has a header but no readings.',
    remedy: 'Export it from the logger again.',
  }),
  'no-known-column': ({ headers }) => ({
    text: 'No column could be told to be a temperature or another known quantity.',
    remedy: `Name it in house.json: "columns": { "temperature": "…" }. The file has ${list(headers)}.`,
  }),
  'rows-left-out': ({ count: n, lines: at, why }) => ({
    text: `${count(n, 'row')} left out for want of ${why === 'no time' ? 'a time' : why === 'no value' ? 'a value' : 'the right number of fields'}: ${lines(at, n)}.`,
  }),
  'summary-left-out': ({ count: n, lines: at }) => ({
    text: `${count(n, 'line')} at the end that sum the record up were left out: ${lines(at, n)}.`,
  }),
  'columns-moved': ({ count: n, lines: at, notRead }) => ({
    text:
      `The header comes again with other columns (${lines(at, n)}); the rows below were put back in the first order` +
      `${notRead.length > 0 ? `, and ${list(notRead)} not read` : ''}.`,
  }),
  'rows-repeated': ({ count: n, lines: at }) => ({
    text: `${count(n, 'repeated row')} counted once: ${lines(at, n)}.`,
  }),
  'values-conflict': ({ count: n, lines: at }) => ({
    text: `${count(n, 'instant')} with two different values; the first was kept: ${lines(at, n)}.`,
    remedy: 'Take the wrong rows out of the file if the first is not the right one.',
  }),
  'rows-out-of-order': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} out of order were sorted: ${lines(at, n)}.`,
  }),
  'local-time-missing': ({ count: n, lines: at, timeZone }) => ({
    text: `${count(n, 'row')} stand in the hour that the spring clock change leaves out in ${timeZone}: ${lines(at, n)}.`,
    remedy:
      'If the logger does not change its clock, say so: "timeZone": "UTC" (or its fixed zone) beside the file.',
  }),
  'date-order-unknown': ({ taken }) => ({
    text: `The file does not tell whether the day or the month comes first; it was read ${taken}.`,
    remedy: 'Say it: "read": { "dateOrder": "day-first" } or "month-first" beside the file.',
  }),
  'serial-days-guessed': ({ taken }) => ({
    text: `The times are a spreadsheet’s days; they were counted from ${taken}, and are four years and a day off if they count from ${taken === 1900 ? 1904 : 1900}.`,
    remedy: 'Compare the first date with what you know; export the log with written dates if it is wrong.',
  }),
  'zone-ambiguous': ({ said, taken }) => ({
    text: `“${said}” stands for several time zones of the world; ${taken} was taken.`,
    remedy: 'Say it: "timeZone": "…" beside the file.',
  }),
  'clock-reset': ({ count: n, lines: at }) => ({
    text: `${count(n, 'row')} with a date years away from all others, as a logger gives after a change of battery, were left out: ${lines(at, n)}.`,
  }),
  'temperature-unit-guessed': ({ taken }) => ({
    text: `The file does not name the unit of its temperatures; they were taken as ${taken === 'K' ? 'kelvin' : `°${taken}`}.`,
    remedy: 'Say it: "read": { "unit": "C" } or "F" beside the file.',
  }),
  'doubled-hour-once': ({ count: n, lines: at, timeZone }) => ({
    text: `The record runs through the autumn clock change of ${timeZone}, but has the doubled hour only once (${count(n, 'row')}, ${lines(at, n)}): its clock may not change.`,
    remedy:
      'If the logger does not change its clock, say so: "timeZone": "UTC" (or its fixed zone) beside the file.',
  }),
  'unit-doubted': ({ stated, taken }) => ({
    text: `The file says °${stated}, but no air at a house has these values in it: they look like °F. They were taken as °${taken}.`,
    remedy: 'Say which it is: "read": { "unit": "F" } or "C" beside the file.',
  }),
  'quantity-guessed': ({ taken }) => ({
    text: `The header does not say what this column holds; from its values it was taken as ${taken}.`,
    remedy: `Name it in house.json: "columns": { "${taken}": "…" } beside the file.`,
  }),
  'all-zero-column-left-out': () => ({ text: 'This column is zero all through and was left out.' }),
  'sentinels-left-out': ({ value, count: n, lines: at }) => ({
    text: `${count(n, 'value')} of ${value} mean “no reading” and were left out: ${lines(at, n)}.`,
  }),
  'no-temperature-in-file': () => ({
    text: 'No temperature was found in this file.',
    remedy: 'Name its column: "columns": { "temperature": "…" } beside the file.',
  }),
  'logger-too-short': () => ({
    text: 'Fewer than two readings remain of this logger; it was left out.',
    remedy: 'Check the file, and what "leaveOut" takes away.',
  }),
  'several-columns-first-taken': ({ quantity, columns }) => ({
    text: `Several columns hold ${quantity} (${list(columns)}); the first was taken.`,
    remedy: `Name the right one: "columns": { "${quantity}": "…" } beside the file.`,
  }),
  'no-heat-in-file': ({ kind }) => ({
    text: `No ${kind === 'meter' ? 'meter reading' : kind} was found in this file.`,
    remedy: `Name its column: "columns": { "${kind}": "…" } beside the file.`,
  }),
  'heat-not-usable': () => ({
    text: 'These readings of heat are more than two hours apart or outside the record, so no night and no day can be told from them.',
    remedy:
      'Log the meter at least hourly; for a heated night give "from", "to" and "energyKWh" read by eye.',
  }),
  'meter-ran-backwards': ({ count: n }) => ({
    text: `The meter stepped back ${count(n, 'time')}: it was reset or exchanged. What it counted then is not known.`,
  }),
  'outside-from-weather': () => ({
    text: 'No logger was outside; the outdoor temperature is the weather file’s.',
    remedy: 'A logger in the shade beside the house is nearer to the truth than a distant station.',
  }),
  'key-not-used-yet': () => ({ text: 'This key is accepted, but nothing reads it in this version yet.' }),

  // design
  'openings-assumed': ({ opening }) => ({
    text: `The openings of this slightly ventilated space are not stated; ${Math.round(opening * 1e6)} mm² per metre was taken.`,
    remedy: 'Give "openingMm2PerM".',
  }),
  'air-layer-thick': ({ thickness, taken }) => ({
    text: `An air space of ${Math.round(thickness * 1000)} mm is thicker than ISO 6946 covers; it counts as ${Math.round(taken * 1000)} mm.`,
  }),
  'bridges-cross': ({ count: n }) => ({
    text: `${n} layers are bridged; their timbers were taken to cross each other at random.`,
  }),
  'combined-method-out-of-range': ({ ratio, limit }) => ({
    text: `The two limits of the resistance differ by a factor of ${decimal(ratio, 2)}, above the ${limit} of ISO 6946: take this U-value with caution.`,
    remedy: 'Have it worked out by a two-dimensional calculation and give the result as "uValue".',
  }),
  'fasteners-without-thickness': () => ({
    text: 'The fasteners go through a layer without a thickness and were left out.',
    remedy: 'Give its "thicknessMm".',
  }),
  'layer-without-mass': () => ({
    text: 'This has no density or specific heat, so it stores nothing in the heat capacity.',
    remedy: 'Give "densityKgM3" and "specificHeatJkgK".',
  }),
  'ground-without-perimeter': () => ({
    text: 'Layers on the ground without the exposed perimeter: the ground itself was left out, so this loss is too high.',
    remedy: 'Give "perimeterM".',
  }),
  'ground-assumed': ({ wallThickness, groundConductivity }) => ({
    text: `A slab on ground by ISO 13370, with walls of ${Math.round(wallThickness * 1000)} mm and ground of ${groundConductivity} W/(mK) assumed.`,
  }),
  'bridges-not-stated': () => ({
    text: 'No thermal bridges are stated, so the designed loss has none.',
    remedy: 'Give "thermalBridges".',
  }),
  'ventilation-not-stated': () => ({
    text: 'No ventilation is stated, so the designed loss has none.',
    remedy: 'Give "ventilation".',
  }),
  'heat-recovery-on-leakage': ({ heatRecovery }) => ({
    text: `Heat recovery of ${percent(heatRecovery)} was taken on air that may leak in beside the unit: the ventilation loss may be too low.`,
  }),
  'partition-without-layers': ({ name }) => ({ text: `“${name}” has no layers and adds no heat capacity.` }),
  'mass-unknown': ({ elements, arealHeatCapacity, relativeSd }) => ({
    text: `The mass of ${list(elements)} is not known; ${Math.round(arealHeatCapacity / 1000)} kJ/(m²K) was taken, give or take ${percent(relativeSd)}.`,
    remedy: 'Give their layers instead of a U-value.',
  }),
  'furniture-left-out': () => ({
    text: 'Without the floor area, furniture and air are not in the heat capacity.',
    remedy: 'Give "floorAreaM2".',
  }),
  'heat-capacity-by-class': ({ arealHeatCapacity, relativeSd }) => ({
    text: `No layers are known: the heat capacity is the “medium” class of ISO 13790, ${Math.round(arealHeatCapacity / 1000)} kJ/K per m² of floor, give or take ${percent(relativeSd)}.`,
    remedy: 'Give the layers of the elements, or "heatCapacity".',
  }),
  'heat-capacity-unknown': () => ({
    text: 'Neither layers nor a floor area are known, so there is no heat capacity and no watts from cooling alone.',
    remedy: 'Give "floorAreaM2", or the layers of the elements.',
  }),

  // nights
  'no-inside-readings': () => ({ text: 'no inside readings that night' }),
  'no-outside-readings': () => ({ text: 'no outdoor readings that night' }),
  'gap-inside': ({ missing }) => ({ text: `${duration(missing)} of inside readings missing` }),
  'gap-outside': ({ missing }) => ({ text: `${duration(missing)} of outdoor readings missing` }),
  'no-cooling-window': () => ({ text: 'heat came in until the end of the night: nothing cooled freely' }),
  'too-short': ({ duration: had, needed }) => ({
    text: `only ${duration(had)} of free cooling once heat had left, ${duration(needed)} needed`,
  }),
  'difference-too-small': ({ difference, needed }) => ({
    text:
      difference < 0
        ? 'it was colder inside than outside'
        : `only ${kelvins(difference)} warmer inside than outside, ${kelvins(needed)} needed`,
  }),
  'heater-on': ({ energy: heat }) => ({ text: `a metered heater gave ${energy(heat)}` }),
  'barely-fell': ({ drop }) => ({ text: `it fell by only ${kelvins(drop)}` }),
  'uneven-fall': ({ rms }) => ({
    text: `the fall is uneven (${kelvins(rms)} off the curve): something was switched or opened`,
  }),
  'put-in-by-hand': ({ why }) => ({ text: `put in by hand${because(why)}` }),
  'left-out-by-hand': ({ why }) => ({ text: `left out by hand${because(why)}` }),

  // heat loss
  'known-bias': ({ readsLowBy }) => ({
    text: `This plain form reads about ${percent(readsLowBy)} low on simulated houses; the interval allows for it.`,
  }),
  'rests-on-capacity': ({ relativeSd }) => ({
    text: `It rests on the heat capacity worked out from the design, taken as known to ${percent(1.96 * relativeSd)} either way.`,
  }),
  'gains-allowed-for': ({ gains }) => ({ text: `${power(gains)} of constant gains were allowed for.` }),
  'heater-weak': ({ share }) => ({
    text: `The house loses ${percent(share)} of what the heater gave: too weak a heater to tell much.`,
    remedy: 'Repeat it with a stronger heater, or on a milder night.',
  }),
  'heater-strong': ({ share }) => ({
    text: `The house loses only ${percent(share)} of what the heater gave: a gentler heater would tell more.`,
  }),
  'borrowed-from-stage': ({ stage }) => ({
    text: `No heat was metered in this stage; the watts are those of “${stage}”, carried over by the ratio of the cooling rates.`,
  }),
  'heated-nights-used': ({ dates }) => ({
    text: `From the heated ${nightsOf(dates)}.`,
  }),
  'days-used': ({ used, leftOut }) => ({
    text: `From ${count(used, 'metered day')}; ${leftOut} left out for gaps, no heat or too small a difference.`,
  }),
  'sun-not-separable': () => ({
    text: 'Sun and temperature difference rose and fell together, so what each did cannot be told well apart.',
  }),
  'no-irradiance': () => ({
    text: 'No irradiance was given, so the sun’s heat is not taken out: the loss reads low.',
    remedy: 'Add a weather file with global irradiance.',
  }),

  // stages
  'night-crosses-stage': ({ dates }) => ({
    text: `The ${nightsOf(dates)} ${dates.length === 1 ? 'crosses the bound of a stage and belongs' : 'cross the bound of a stage and belong'} to neither.`,
  }),
  'no-night-in-stage': () => ({
    text: 'No night of the record falls into this stage.',
    remedy: 'Check its dates.',
  }),
  'too-few-nights': ({ used }) => ({
    text: `${used === 0 ? 'No night' : count(used, 'night')} could be used; a time constant needs at least two.`,
  }),
  'hand-picked': ({ dates }) => ({
    text: `The ${nightsOf(dates)} ${dates.length === 1 ? 'was' : 'were'} judged by hand.`,
  }),
  'stage-not-complete': ({ missing }) => ({
    text: `The house was not complete in this stage${missing.length > 0 ? ` (missing: ${list(missing)})` : ''}, so it gets no verdict against the finished design.`,
  }),
  'stages-overlap': ({ names }) => ({
    text: `The stages ${list(names)} overlap: their shared nights count in both.`,
    remedy: 'Move a bound.',
  }),
  'stage-outside-record': () => ({
    text: 'This stage lies outside the record.',
    remedy: 'Check its dates and the loggers’ clocks.',
  }),
  'compared-with-design-as-tested': () => ({
    text: 'Set beside the design as tested (vents shut, fans off).',
  }),
  'methods-disagree': ({ methods }) => ({
    text: `Two ways to the heat loss contradict each other (${methods.map((it) => methodNames[it]).join('; ')}), so there is no verdict.`,
    remedy:
      'Usual causes: heat that was not metered, sun on a logger, a heated neighbour, mass still drying.',
  }),
  'same-mass-assumed': () => ({ text: 'The ratio takes the heat capacity to be the same in both stages.' }),
  'mass-may-differ': ({ names }) => ({
    text: `${list(names)} differ between the stages, so part of the change may be heat capacity and not heat loss.`,
  }),
  'no-such-night': ({ date }) => ({
    text: `There is no night of ${dayOfYear(date)} in the record.`,
    remedy: 'Check the date under "nights".',
  }),

  // next steps
  'next-wait-for-cold': ({ needed }) => ({
    text: `Nothing can be told from these nights. Nights at least ${kelvins(needed)} colder than inside, heating off from the evening, would tell.`,
  }),
  'next-more-nights': ({ have, needed }) => ({
    text: `${count(have, 'good night')} so far; ${needed} make the cooling rate about as sure as loggers alone can.`,
  }),
  'next-heated-night': () => ({
    text: 'Loggers alone are held back by the heat capacity, however many the nights. One night with a metered electric heater from dusk for about six hours, then off till after sunrise, would tell.',
    remedy: heaterCautions,
  }),
  'next-metered-week': () => ({
    text: 'The metered heat so far is not enough. A week or more with all heating metered would tell.',
    remedy: heaterCautions,
  }),
  'next-give-design': () => ({
    text: 'Without the design there is nothing to set it beside.',
    remedy: 'Give the elements with their areas and U-values or layers under "elements".',
  }),
  'next-give-capacity': () => ({
    text: 'The cooling rate is known, but not the heat capacity that turns it into watts.',
    remedy: 'Give "floorAreaM2", or the layers of the elements.',
  }),
  'next-look-for-loss': () => ({
    text: 'The shell loses more than drawn. Look where it can still be reached: joints at plates and ridge, hatches, pipes and cables through the lining, boards not tight to the timber.',
    remedy: 'Mind ladders and loft joists; leave flues and roof ventilation open.',
  }),
  'next-keep-record': () => ({
    text: 'The shell performs as drawn, within the allowance. Keep the logs with the house’s papers.',
  }),
};

/** The message for a finding: its code, its sentence, and where it was found. */
export function say(finding: Finding): Message {
  const sentence = sentences[finding.code] as (it: Finding) => Sentence;
  const where: Where | undefined = 'where' in finding ? finding.where : undefined;
  return { code: finding.code, ...sentence(finding), ...(where === undefined ? {} : { where }) };
}
