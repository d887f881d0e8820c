/** A date as words, which no order of day and month can turn round. */

const format = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  timeZone: 'UTC',
});

/**
 * "Tue 3 Nov 2026", and with its time "Tue 3 Nov 2026, 14:05 by the house’s clock".
 *
 * @param local as a date field has it, "2026-11-03" or "2026-11-03T14:05", by the house's clock
 */
export function dateWords(local: string): string {
  const date = Date.parse(local.slice(0, 10));
  if (Number.isNaN(date)) return 'No date yet.';
  const clock = local.slice(11, 16);
  const day = format.format(date).replace(',', '');
  return clock === '' ? day : `${day}, ${clock} by the house’s clock`;
}
