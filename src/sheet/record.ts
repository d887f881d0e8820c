/** The technical record: every night, every way, every assumption, every file, so that it can be checked in ten years. */
import type { Assessment, Message, StageResult } from '../assessment.ts';
import type { House } from '../house.ts';
import { againstDrawnSentence, foretoldSentence, lastNight } from '../words/answer.ts';
import { figures } from '../words/index.ts';
import { atLength } from './atLength.ts';
import { oneNight } from './drawing/oneNight.ts';
import { filesPart } from './filesPart.ts';
import { html, type Markup, named } from './html.ts';
import type { SheetInput } from './input.ts';
import { loggersPart } from './loggersPart.ts';
import { nightTables } from './nightTables.ts';
import { list, messages, paragraph, part } from './pieces.ts';
import * as words from './sheetWords.ts';
import { ways } from './ways.ts';

export const recordPart = (input: SheetInput): Markup =>
  html`${lastNightPart(input)}${nightTables(input.assessment.stages)}${ways(input.assessment.stages)}${loggersPart(input.house, input.assessment)}${assumed(input.assessment)}${siteNotes(input.house)}${part(
    words.titles.method,
    list([...words.method, words.allowance(figures.percent(input.house.allowance ?? ALLOWANCE))]),
  )}${filesPart(input)}${part(words.titles.limits, list(words.limits))}`;

/** What house.json has when it says nothing: see `allowance` in `house.ts`. */
const ALLOWANCE = 0.15;

function lastNightPart({ house, assessment, curves }: SheetInput): Markup | null {
  const night = lastNight(assessment);
  const curve = curves.find(({ date }) => date === night?.date);
  if (night === null || curve === undefined || curve.time.length === 0) return null;
  return part(
    `${words.titles.lastNight}, ${figures.dayOfYear(night.date)}`,
    oneNight(curve, night, house.location.timeZone),
    paragraph(words.fittedCurve, 'small lesser'),
    paragraph([foretoldSentence(night), againstDrawnSentence(night)].filter((it) => it !== null).join(' ')),
  );
}

function assumed({ design, stages, warnings }: Assessment): Markup | null {
  const ofDesign = design === null ? [] : [...design.notes, ...design.elements.flatMap(({ notes }) => notes)];
  return part(words.titles.assumed, messages([...warnings, ...ofDesign, ...notesOf(stages)]));
}

/** What goes for every stage is said of none. */
function notesOf(stages: readonly StageResult[]): Message[] {
  const all = stages.map(({ name, notes, annual }) => ({
    name,
    notes: [...notes, ...(annual?.notes ?? [])],
  }));
  const inEvery = (it: Message) => all.every(({ notes }) => notes.some(({ text }) => text === it.text));
  return atLength(all).flatMap(({ name, notes }) =>
    notes.map((it) => (inEvery(it) ? it : { ...it, text: `“${name}”: ${it.text}` })),
  );
}

const siteNotes = ({ notes = [] }: House): Markup | null =>
  part(
    words.titles.siteNotes,
    notes.length === 0
      ? null
      : html`<ul>${notes.map(({ at, text }) => html`<li>${figures.dayOfYear(at)}${at.length > 10 ? `, ${at.slice(11, 16)}` : ''}: ${named(text)}</li>\n`)}</ul>`,
  );
