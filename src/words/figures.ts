/** One way to write each quantity: value and unit, with the digits that make sense. Terminal, page and sheet share it. */
import type { Estimate } from '../assessment.ts';

/** The figure with so many significant digits, and never more than whole units below that. */
const significant = (value: number, digits: number): string => {
  if (value === 0) return '0';
  const decimals = Math.max(0, digits - 1 - Math.floor(Math.log10(Math.abs(value))));
  const rounded = Number(value.toPrecision(digits));
  return rounded.toFixed(decimals);
};

/** No more decimals than the interval can bear: one digit below its width, three significant at most. */
const withinInterval = ({ low, high }: Estimate): ((value: number) => string) => {
  const bearable = Math.max(0, 1 - Math.floor(Math.log10(high - low)));
  return (value) => {
    const most = Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9))));
    return value.toFixed(Math.min(bearable, most));
  };
};

/** The interval first, the best single figure in brackets: "88 to 189 W/K (129)". */
const between = (it: Estimate, write: (value: number) => string, unit: string) =>
  `${write(it.low)} to ${write(it.high)}${unit} (${write(it.value)})`;

export const heatLoss = (wattsPerKelvin: number) => `${significant(wattsPerKelvin, 3)} W/K`;
export const heatLossBetween = (it: Estimate) => between(it, withinInterval(it), ' W/K');
export const hours = (value: number) => `${significant(value, 2)} h`;
export const hoursBetween = (it: Estimate) => between(it, (value) => significant(value, 2), ' h');
export const ratio = (value: number) => value.toFixed(2);
export const ratioBetween = (it: Estimate) => between(it, (value) => value.toFixed(2), '');
export const transmittance = (value: number) => `${value.toFixed(2)} W/(m²K)`;
export const temperature = (celsius: number) => `${celsius.toFixed(1)} °C`;
export const kelvins = (difference: number) => `${difference.toFixed(1)} K`;
export const rate = (kelvinsPerHour: number) => `${kelvinsPerHour.toFixed(2)} K/h`;
export const area = (squareMetres: number) => `${significant(squareMetres, 3)} m²`;
export const percent = (share: number) => `${Math.round(share * 100)} %`;
/** A duration given in seconds. */
export const duration = (seconds: number) =>
  seconds < 90 * 60 ? `${Math.round(seconds / 60)} min` : `${(seconds / 3600).toFixed(1)} h`;
export const energy = (joules: number) => `${significant(joules / 3.6e6, 3)} kWh`;
export const power = (watts: number) =>
  watts < 1000 ? `${Math.round(watts)} W` : `${significant(watts / 1000, 2)} kW`;
export const count = (n: number, one: string, many = `${one}s`) => `${n} ${n === 1 ? one : many}`;

/** A date "2027-02-12" as "12 February". */
export const day = (date: string) => dayFormat.format(Date.parse(date));
/** A local time with its offset, "2027-02-13T12:00:00+00:00", as the house's clock shows it: "13 February 2027, 12:00". */
export const moment = (isoWithOffset: string) =>
  `${dayFormat.format(Date.parse(isoWithOffset.slice(0, 10)))} ${isoWithOffset.slice(0, 4)}, ${isoWithOffset.slice(11, 16)}`;

const dayFormat = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', timeZone: 'UTC' });
