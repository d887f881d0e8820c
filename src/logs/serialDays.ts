/** Dates as a spreadsheet stores them: days since 1900 or 1904, the time of day as a fraction. */

export type SerialFrom = 1900 | 1904;

/**
 * Local time of a serial number [s since 1970, as if UTC], to the nearest second; NaN for the day 60 of the 1900
 * system, a 29 February that never was (ECMA-376 Part 1, 18.17.4.1).
 */
export function timeOfSerial(serial: number, from: SerialFrom): number {
  if (from === 1904) return Math.round((serial - EPOCH_1904) * DAY);
  if (serial >= 60 && serial < 61) return Number.NaN;
  return Math.round((serial - EPOCH_1900 + (serial < 60 ? 1 : 0)) * DAY);
}

/**
 * The number in a cell where it is a day of 1990 to 2099 in the system; NaN for any other cell. Only 1904's first
 * days are not told from 1900's: what 1900 cannot explain, 1904 may.
 */
export function serialIn(cell: string, from: SerialFrom): number {
  if (!/^\d{5}([.,]\d+)?$/.test(cell)) return Number.NaN;
  const serial = Number(cell.replace(',', '.'));
  const time = timeOfSerial(serial, from);
  return time >= EARLIEST && time < LATEST ? serial : Number.NaN;
}

/** Whether the numbers go on in even steps of a day or less, as the times of a log do and no meter does. */
export function stepsEvenly(serials: readonly number[]): boolean {
  const steps = serials.slice(1, ENOUGH).map((serial, i) => (serial - serials[i]) * DAY);
  const sorted = [...steps].sort((a, b) => a - b);
  const usual = sorted[sorted.length >> 1];
  if (usual === undefined || usual === 0 || Math.abs(usual) > DAY + TOLERANCE) return false;
  const even = steps.filter((step) => Math.abs(step - usual) <= TOLERANCE).length;
  return even >= 0.6 * steps.length;
}

const DAY = 86400;
/** 1970-01-01 in the two systems. */
const EPOCH_1900 = 25569;
const EPOCH_1904 = 24107;
/** 1990 and 2100 [s since 1970]. */
const EARLIEST = 631_152_000;
const LATEST = 4_102_444_800;
/** Five decimals of a day [s]. */
const TOLERANCE = 2;
const ENOUGH = 60;
