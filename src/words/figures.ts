/** One way to write each quantity: value and unit, with the digits that make sense. Terminal, page and sheet share it. */
import type { Estimate } from '../assessment.ts';

/** The figure with so many decimals, a true minus, and never a zero below zero. */
export function decimal(value: number, decimals: number): string {
  const size = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(size) !== 0 ? `−${size}` : size;
}

/** The power of ten of the first digit: 2 of 128, −1 of 0.3; what is below a billionth is as good as that. */
const magnitude = (value: number) => Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9)));

/** The figure with so many significant digits, and never more than whole units below that. */
const significant = (value: number, digits: number): string =>
  value === 0 ? '0' : decimal(Number(value.toPrecision(digits)), Math.max(0, digits - 1 - magnitude(value)));

/** All three figures of an interval alike: one digit below its width, three significant in the largest at most. */
const withinInterval = ({ value, low, high }: Estimate): ((figure: number) => string) => {
  const largest = Math.max(...[value, low, high].map(Math.abs));
  const decimals = Math.max(0, Math.min(1 - magnitude(high - low), 2 - magnitude(largest)));
  return (figure) => decimal(figure, decimals);
};

/** The interval first, the best single figure in brackets: "88 to 189 W/K (129)". */
const between = (it: Estimate, write: (value: number) => string, unit: string) =>
  `${write(it.low)} to ${write(it.high)}${unit} (${write(it.value)})`;

export const heatLoss = (wattsPerKelvin: number) => `${significant(wattsPerKelvin, 3)} W/K`;
export const heatLossBetween = (it: Estimate) => between(it, withinInterval(it), ' W/K');
/** Whole hours, and below ten of them one decimal. */
export const hours = (value: number) => `${decimal(value, Math.abs(value) < 9.95 ? 1 : 0)} h`;
export const hoursBetween = (it: Estimate) => between(it, withinInterval(it), ' h');
export const ratio = (value: number) => decimal(value, 2);
export const ratioBetween = (it: Estimate) => between(it, ratio, '');
export const transmittance = (value: number) => `${decimal(value, 2)} W/(m²K)`;
export const transmittanceBetween = (it: Estimate) => between(it, (value) => decimal(value, 2), ' W/(m²K)');
export const temperature = (celsius: number) => `${decimal(celsius, 1)} °C`;
export const kelvins = (difference: number) => `${decimal(difference, 1)} K`;
export const rate = (kelvinsPerHour: number) => `${decimal(kelvinsPerHour, 2)} K/h`;
export const area = (squareMetres: number) => `${significant(squareMetres, 3)} m²`;
export const percent = (share: number) => `${decimal(share * 100, 0)} %`;
/** A duration given in seconds. */
export const duration = (seconds: number) =>
  seconds < 90 * 60 ? `${decimal(seconds / 60, 0)} min` : `${decimal(seconds / 3600, 1)} h`;
export const energy = (joules: number) => `${significant(joules / 3.6e6, 3)} kWh`;
export const power = (watts: number) =>
  watts < 1000 ? `${decimal(watts, 0)} W` : `${significant(watts / 1000, 2)} kW`;
export const count = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;

/** "3 February, 4 February and 5 February" */
export const days = (dates: readonly string[]) => listFormat.format(dates.map(day));
/** A date "2027-02-12" as "12 February 2027", where the year may be what matters. */
export const dayOfYear = (date: string) => `${day(date)} ${date.slice(0, 4)}`;
/** A date "2027-02-12" as "12 February". */
export const day = (date: string) => dayFormat.format(Date.parse(date));
/** A local time with its offset, "2027-02-13T12:00:00+00:00", as the house's clock shows it: "13 February 2027, 12:00". */
export const moment = (isoWithOffset: string) =>
  `${dayOfYear(isoWithOffset.slice(0, 10))}, ${isoWithOffset.slice(11, 16)}`;

const dayFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' });
const listFormat = new Intl.ListFormat('en-GB');
