/** The sentences of all loggers together: what is missing, what they show beside one another and beside the sun. */
import type { Where } from '../assessment.ts';
import type { RecordFinding } from '../record/index.ts';
import type { ClockError, Offer } from '../sense/index.ts';
import { count, decimal, duration, kelvins, percent, power, temperature } from './figures.ts';
import { list, type SentencesFor } from './sentence.ts';

const DAY = 86_400; // [s]

export const aboutLoggers: SentencesFor<RecordFinding> = {
  'file-missing': () => ({
    text: 'house.json names this file, but it is not in the folder.',
    remedy: 'Put the file there, or take its entry out. The rest was assessed without it.',
  }),
  'file-not-taken': ({ why }) => ({
    text: `This could not be taken in: it is ${why}.`,
    remedy: {
      'a folder': 'Name a file in it.',
      'too large': 'Split the record, or export it at a longer interval.',
      unreadable: 'See that it may be read, and that no other program holds it.',
    }[why],
  }),
  'file-still-written': () => ({
    text: 'The file changed while it was read: its end may be missing.',
    remedy: 'Wait until the logger or the copy has finished, then do it again.',
  }),
  'exports-conflict': ({ count: n, first }) => ({
    text: `${count(n, 'instant')} have another value in a later export; “${first}” was believed.`,
    remedy: 'To believe the later one, name it as “file” and the other one in “continuedIn”.',
  }),
  'not-the-same-logger': ({ common, conflicts, first }) => ({
    text: `For ${conflicts} of ${count(common, 'instant')} that “${first}” has too, the value is another: this is not the same logger, and it was left out.`,
    remedy: 'Take it out of “continuedIn”, and give it an entry of its own.',
  }),
  'unit-as-other-files': ({ taken }) => ({
    text: `No unit is given; read as °${taken}, as another file of this house can only be read.`,
    remedy: 'Say “read”: { "unit": "C" } or "F" beside it in house.json.',
  }),
  'span-without-effect': ({ key, from }) => ({
    text: `The “${key}” that begins ${from} has no reading to act on.`,
    remedy: 'Check its times.',
  }),
  'readings-put-back': ({ count: n }) => ({
    text: `${count(n, 'reading')} that looked wrong are used, because house.json puts them back.`,
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
    text: `The meter stepped back, or up by more than a house can draw, ${count(n, 'time')}: it was reset or exchanged. What it counted then is not known, and only that is left out.`,
  }),
  'outside-from-weather': () => ({
    text: 'No logger was outside; the outdoor temperature is the weather file’s.',
    remedy: 'A logger in the shade beside the house is nearer to the truth than a distant station.',
  }),
  'inside-logged': ({ stated }) => ({
    text: `A constant inside temperature of ${temperature(stated)} is stated, but loggers were inside: they are believed, and the constant is not used.`,
  }),
  'heat-unit-doubted': ({ read, stated, likelier, strongest, expected }) => ({
    text: `${stated ? `In ${read}, as house.json says,` : `Read in ${read},`} its strong hours come to ${power(strongest)}, where the house loses about ${power(expected)} in the cold: it may be in ${likelier}${stated ? ', as the file says' : ''}. Until ${stated ? 'that is settled' : 'you say so'}, this heat is not used.`,
    remedy: stated
      ? `Say "unit": "${likelier}" beside it in house.json, or put the unit right in the file’s header if that is wrong.`
      : `Say "unit": "${likelier}" beside it in house.json, or "unit": "${read}" if that is right.`,
  }),
  'heat-shorter-than-record': ({ without, of }) => ({
    text: `This heat was logged for ${count(Math.round((of - without) / DAY), 'day')} of the record’s ${Math.round(of / DAY)}; the heat of the others is not known, and they are left out of the daily balance.`,
    remedy: 'If a later export has them, name it under “continuedIn”.',
  }),

  // seen together
  'loggers-swapped': ({ other, warmerBy, days: n }) => ({
    text: `This logger should stand outside and “${name(other)}” inside, but over ${count(Math.round(n), 'day')} it is ${kelvins(warmerBy)} warmer and steadier: the two may be swapped.`,
    remedy: 'If so, swap their “place” in house.json.',
  }),
  'logger-placed-elsewhere': ({ place, looksLike, fromOwn, fromOther, days: n }) => ({
    text: `It should be ${places[place]}, but over ${count(Math.round(n), 'day')} it reads like one ${looksLike}: ${kelvins(Math.abs(fromOther))} from those, ${kelvins(Math.abs(fromOwn))} from its own.`,
    remedy: `If so, set its “place” to “${looksLike}”.`,
  }),
  'logger-in-sun': ({ sure, fromHour, toHour, height, highest, sunnyDays, days: n }) => ({
    text: `${sure ? 'The sun reaches it' : 'The sun may reach it, or something else that is warm,'} between ${hour(fromHour)} and ${hour(toHour)}: on ${sunnyDays} of ${count(Math.round(n), 'day')} it rises about ${kelvins(height)}, at most ${kelvins(highest)}, above what it should. Nights are little troubled.`,
    remedy: 'Hang it in the shade, or name the hours under its “leaveOut”.',
  }),
  'logger-carried': ({ end, quantity, furthest, usual }) => ({
    text: `At the ${end} of its log it does not seem to be in its place: up to ${quantity === 'temperature' ? kelvins(furthest) : percent(furthest)} off, where it usually keeps within ${quantity === 'temperature' ? kelvins(usual) : percent(usual)}. It may have been carried about.`,
    remedy: 'If so, name the time under its “leaveOut”.',
  }),
  'logger-stopped': ({ value, from, to, peersMoved }) => ({
    text: `It shows ${temperature(value)} without a change for ${duration(to - from)}, while the others of its place moved by ${kelvins(peersMoved)}: it may have stopped measuring.`,
    remedy: 'If so, name the time under its “leaveOut”.',
  }),
  'same-recording': ({ other, shift, compared, agree }) => ({
    text: `${agree} of ${count(compared, 'reading')} are those of “${name(other)}”${shift === 0 ? '' : `, ${duration(Math.abs(shift))} ${shift > 0 ? 'earlier' : 'later'}`}: one recording under two names.`,
    remedy: 'Bring the file of the other logger, or take one entry out.',
  }),
  'clock-off-sun': ({ parts, offers }) => ({
    text: `It measures daylight while the sun is down: its clock seems to be ${clockErrors(parts)}.`,
    remedy: `If so, ${offered(offers)}. If its means are stamped at the start of their hour, say so under “read” instead.`,
  }),
  'clock-off-peers': ({ parts, majority, offers }) => ({
    text: `It sees at another hour what the ${majority ? 'others see' : 'other sees'}: its clock seems to be ${clockErrors(parts)}${majority ? '' : ', or the other’s the other way'}.`,
    remedy: `If so, ${offered(offers)}.`,
  }),
  'clock-off-rhythm': ({ warmestHour, offers }) => ({
    text: `By its clock it is warmest outdoors at ${hour(warmestHour)}, which no place is: the clock seems to be hours off.`,
    remedy: `If so, ${offered(offers)}.`,
  }),
  'co-location-offset': ({ offset, standardError }) => ({
    text: `Side by side with the others it read ${kelvinsFine(offset)} (± ${kelvinsFine(1.96 * standardError)}) ${offset < 0 ? 'low' : 'high'}; that is taken off.`,
  }),
  'co-location-too-short': ({ duration: lasted }) => ({
    text: `The loggers lay side by side for ${duration(lasted)} after the first hour, too short to tell what each is off; nothing was taken off.`,
    remedy: 'Leave them side by side for at least three hours, better a night.',
  }),
  'co-location-apart': ({ offset }) => ({
    text: `While all were to lie side by side it read ${kelvinsFine(offset)} ${offset < 0 ? 'lower' : 'higher'} than the others: they cannot have lain together. Nothing was taken off.`,
    remedy: 'Check the times under “coLocation”.',
  }),
  'co-location-too-few': () => ({
    text: 'Fewer than two loggers have readings while they were to lie side by side; nothing was taken off.',
    remedy: 'Check the times under “coLocation”.',
  }),
  'co-location-brief': ({ duration: lasted }) => ({
    text: `The loggers lay side by side for ${duration(lasted)} only after the first hour.`,
    remedy: 'A night side by side tells more surely what each is off.',
  }),
  'co-location-unsteady': ({ range }) => ({
    text: `While the loggers lay side by side it changed by ${kelvins(range)}, and loggers answer to that at different speeds.`,
  }),
  'co-location-absent': ({ files }) => ({
    text: `These did not lie beside the others: ${list(files)}. What they are off is not known.`,
  }),
};

const places = {
  inside: 'inside',
  outside: 'outside',
  void: 'in a void',
  surface: 'on a surface',
  adjacent: 'next door',
} as const;

const name = ({ file, column }: Where) => (column === undefined ? (file ?? '') : `${file}, ${column}`);

/** "7:30" of an hour with its parts. */
const hour = (hours: number) => {
  const minutes = Math.round(hours * 60) % 1440;
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`;
};

const kelvinsFine = (difference: number) => `${decimal(Math.abs(difference), 2)} K`;

const clockErrors = (parts: readonly ClockError[]) =>
  parts
    .map(({ correction, low, high }) => {
      const [off, least, most] = [correction, low, high].map((it) => Math.round(it / 60));
      return `${Math.abs(off)} minutes ${off > 0 ? 'slow' : 'fast'} (${Math.min(Math.abs(least), Math.abs(most))} to ${Math.max(Math.abs(least), Math.abs(most))})`;
    })
    .join(', then ');

const offered = (offers: readonly Offer[]) =>
  offers
    .map((offer) => {
      if ('clockOffsetMin' in offer) return `set its “clockOffsetMin” to ${offer.clockOffsetMin}`;
      if ('timeZone' in offer) return `set its “timeZone” to “${offer.timeZone}”`;
      return 'place' in offer ? `set its “place” to “${offer.place}”` : 'add the time to its “leaveOut”';
    })
    .join(', or ');
