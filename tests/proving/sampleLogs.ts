/** The CSV files of the demonstration house, in three layouts of our own invention. */
import { saturation } from './humidity.ts';
import { type LoggerKind, ordinaryLogger, type Reading, readLogger, type Trace } from './loggers.ts';
import { random } from './random.ts';
import { at, record, type Sample, seed } from './sample.ts';
import type { Run } from './simulate.ts';
import { type Weather, wander } from './weather.ts';

const quarterHourly: LoggerKind = { ...ordinaryLogger, interval: 900, timeConstant: 600 };

/**
 * Blemishes put in by hand, and all there are:
 * - living.csv holds the row of 2027-01-19 03:20 twice;
 * - bedroom.csv has no temperature in the row of 2027-02-02 11:10;
 * - kitchen.csv lacks the readings from 2027-01-22 01:00 up to 02:45, a gap of two hours;
 * - roof-void.csv ends with a line that sums up.
 */
const blemishes = {
  twice: at('2027-01-19T03:20'),
  empty: at('2027-02-02T11:10'),
  gap: { from: at('2027-01-22T01:00'), to: at('2027-01-22T03:00') },
};

export function sampleLogs({ weather, run }: Sample): Map<string, string> {
  const read = (name: string, kind: LoggerKind, clockError: number, trace: Trace) =>
    readLogger(seed, name, { ...kind, clockError }, trace, record.from, record.to);
  const living = read('living', ordinaryLogger, 25, ofZone(run, 0)).flatMap((reading) =>
    reading.time === blemishes.twice ? [reading, reading] : [reading],
  );
  const kitchen = read('kitchen', quarterHourly, -40, ofZone(run, 1)).filter(
    ({ time }) => time < blemishes.gap.from || time >= blemishes.gap.to,
  );
  const bedroom = read('bedroom', ordinaryLogger, 10, ofZone(run, 2)).map((reading) =>
    reading.time === blemishes.empty ? { ...reading, temperature: Number.NaN } : reading,
  );
  const roofVoid = read('roof void', quarterHourly, 55, ofZone(run, 3));
  const outside = read('outside', quarterHourly, -20, inTheShade(weather));
  const mean = roofVoid.reduce((sum, reading) => sum + reading.temperature, 0) / roofVoid.length;
  return new Map([
    ['living.csv', plainLayout(living)],
    ['bedroom.csv', plainLayout(bedroom)],
    ['kitchen.csv', commaLayout('Kitchen', kitchen)],
    ['outside.csv', commaLayout('Outside, north wall', outside)],
    [
      'roof-void.csv',
      `${commaLayout('Roof void', roofVoid)}Mean of ${roofVoid.length} readings;${comma(mean)};\r\n`,
    ],
    ['weather.csv', stationLayout(weather)],
    ['heater.csv', heaterLayout(run)],
  ]);
}

const ofZone = (run: Run, z: number): Trace => ({
  start: run.start,
  step: run.step,
  temperature: run.airTemperature[z],
  relativeHumidity: run.relativeHumidity[z],
});

/** Shade keeps the sun off, but not all that the ground throws back: 0.0015 K per W/m². */
function inTheShade(weather: Weather): Trace {
  const temperature = weather.airTemperature.map((value, k) => value + 0.0015 * weather.global[k]);
  const relativeHumidity = weather.vapour.map((vapour, k) => vapour / saturation(temperature[k]));
  return { start: weather.start, step: weather.step, temperature, relativeHumidity };
}

/** ISO local time, commas; begins with a byte order mark. */
function plainLayout(readings: readonly Reading[]): string {
  const rows = readings.map(
    ({ time, temperature, relativeHumidity }) =>
      `${iso(time).slice(0, 19)},${Number.isNaN(temperature) ? '' : temperature.toFixed(1)},${percent(relativeHumidity)}`,
  );
  return `\uFEFF${['Time,Temperature (°C),Humidity (%RH)', ...rows, ''].join('\n')}`;
}

/** Preamble, semicolons, decimal commas, day first; Windows line ends. */
function commaLayout(name: string, readings: readonly Reading[]): string {
  const rows = readings.map(
    ({ time, temperature, relativeHumidity }) =>
      `${dayFirst(time)};${comma(temperature)};${percent(relativeHumidity).replace('.', ',')}`,
  );
  return [
    '# Temperature and humidity log (invented)',
    `Logger name: ${name}`,
    'Interval: 15 min',
    '',
    'Date and time;Temperature [°C];Relative humidity [%]',
    ...rows,
    '',
  ].join('\r\n');
}

/** Tabs, UTC, hourly means stamped at the hour's end. The station lies some way off. */
function stationLayout(weather: Weather): string {
  const { start, step } = weather;
  const n = weather.airTemperature.length;
  const away = wander(random(seed, 'station'), n, step, 36 * 3600, 3 * 3600);
  const rows = ['time_utc\tair_temperature_c\twind_speed_m_s\tglobal_irradiance_w_m2'];
  for (let end = record.from; end <= record.to; end += 3600) {
    const last = (end - start) / step;
    const mean = (value: (k: number) => number) => {
      let sum = 0;
      for (let k = last - 3600 / step + 1; k <= last; k++) sum += value(k);
      return (sum * step) / 3600;
    };
    const temperature = mean((k) => weather.airTemperature[k] - 0.3 + 0.4 * away[k]);
    const wind = mean((k) => weather.windSpeed[k]);
    const sun = mean((k) => weather.global[k]);
    rows.push(`${iso(end).slice(0, 19)}Z\t${temperature.toFixed(1)}\t${wind.toFixed(1)}\t${sun.toFixed(0)}`);
  }
  return `${rows.join('\n')}\n`;
}

/** Mean power of the ten minutes that end at the time. */
function heaterLayout(run: Run): string {
  const draws = random(seed, 'heater meter');
  const rows = ['Time,Heater power (W)'];
  const steps = 600 / run.step;
  for (let end = record.from; end <= record.to; end += 600) {
    const last = (end - run.start) / run.step;
    let power = 0;
    for (let k = last - steps + 1; k <= last; k++) power += run.metered[k] / steps;
    rows.push(`${iso(end).slice(0, 19)},${(power * (1 + 0.002 * draws.normal())).toFixed(0)}`);
  }
  return `${rows.join('\n')}\n`;
}

const iso = (time: number) => new Date(time * 1000).toISOString();
const percent = (relativeHumidity: number) => (100 * relativeHumidity).toFixed(1);
const comma = (value: number) => value.toFixed(1).replace('.', ',');

function dayFirst(time: number): string {
  const [year, month, rest] = iso(time).split('-');
  return `${rest.slice(0, 2)}.${month}.${year} ${rest.slice(3, 8)}`;
}
