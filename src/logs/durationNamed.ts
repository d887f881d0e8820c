/** Spans of time as people write them: "10 min", "00:10:00", "Elapsed (h)". */

/** [s] of "10 min", "1 h", "600" with `unit` seconds each, "0:10:00" or "2 d 0:10:00"; NaN for anything else. */
export function durationIn(text: string, unit: number): number {
  const clock = /^(?:(\d+)\s*(?:d|days?)?[\s.])?(\d+):([0-5]\d)(?::([0-5]\d(?:[.,]\d+)?))?$/.exec(
    text.trim(),
  );
  if (clock !== null) {
    const [, days = '0', hours, minutes, seconds = '0'] = clock;
    return (
      (Number(days) * 24 + Number(hours)) * 3600 + Number(minutes) * 60 + Number(seconds.replace(',', '.'))
    );
  }
  const [, number, name = ''] = /^(\d+(?:[.,]\d+)?)\s*([a-zà-ÿ]*)\.?$/i.exec(text.trim()) ?? [];
  const per = name === '' ? unit : secondsPer(name);
  return number === undefined || per === null ? Number.NaN : Number(number.replace(',', '.')) * per;
}

/** Seconds in the unit that a word or a header names; null when it names none. */
export function secondsPer(text: string): 1 | 60 | 3600 | 86400 | null {
  const words = text.toLowerCase().match(/[a-zà-ÿ]+/g) ?? [];
  for (const word of words.reverse()) for (const [names, per] of UNITS) if (names.test(word)) return per;
  return null;
}

const UNITS: readonly (readonly [RegExp, 1 | 60 | 3600 | 86400])[] = [
  [/^(s|secs?|seconds?|sekunden?|segundos?|secondes?|secondi|secondo|seconden)$/, 1],
  [/^(m|mins?|minutes?|minuten?|minutos?|minuti|minuto)$/, 60],
  [/^(h|hrs?|hours?|std|stunden?|horas?|heures?|ore|ora|uren|uur)$/, 3600],
  [/^(d|days?|tage?|dias?|días?|jours?|giorni|giorno|dagen|dag)$/, 86400],
];
