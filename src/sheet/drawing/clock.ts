/** Instants and dates as the house's clock and calendar show them: 24 hours, "12 Feb". */

/** The time of day, "21:40". @param instant [s] */
export const clock = (instant: number, timeZone: string) =>
  formatIn(timeZone, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(instant * 1000);

/** The day, "12 Feb". @param instant [s] */
export const dayMonth = (instant: number, timeZone: string) =>
  formatIn(timeZone, { day: 'numeric', month: 'short' }).format(instant * 1000);

/** Day and time, "12 Feb 21:40". @param instant [s] */
export const dayAndClock = (instant: number, timeZone: string) =>
  `${dayMonth(instant, timeZone)} ${clock(instant, timeZone)}`;

/** A date "2027-02-12" as "12 Feb". */
export const shortDate = (date: string) =>
  formatIn('UTC', { day: 'numeric', month: 'short' }).format(Date.parse(date));

/** How far the house's clock is ahead of UTC at an instant [s]. */
export function clockOffset(instant: number, timeZone: string): number {
  const whole = Math.floor(instant);
  const parts = formatIn(timeZone, {
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  }).formatToParts(whole * 1000);
  const read = (type: Intl.DateTimeFormatPartTypes) =>
    Number(parts.find((part) => part.type === type)?.value ?? 0);
  const local = Date.UTC(
    read('year'),
    read('month') - 1,
    read('day'),
    read('hour'),
    read('minute'),
    read('second'),
  );
  return local / 1000 - whole;
}

/** Making a formatter costs a hundred times its use. */
const formats = new Map<string, Intl.DateTimeFormat>();

function formatIn(timeZone: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = timeZone + JSON.stringify(options);
  const made = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', { ...options, timeZone });
  formats.set(key, made);
  return made;
}
