/** Units of measurement as logs write them, and what they mean in SI. */
import type { Quantity } from '../assessment.ts';

/** SI value = (number + shift) × scale; for a temperature the result is in °C. */
export interface Unit {
  readonly measures: Measure;
  readonly scale: number;
  readonly shift: number;
}

export type Measure =
  | 'temperature'
  | 'humidity'
  | 'vapour'
  | 'speed'
  | 'irradiance'
  | 'power'
  | 'energy'
  | 'volume'
  | 'pressure'
  | 'share'
  | 'voltage'
  /** Light, rain, sound, signal strength and the like: no quantity that is read. */
  | 'other';

export const toSI = (number: number, unit: Unit): number => (number + unit.shift) * unit.scale;

/** The unit that a text such as "°C", "% r.h." or "W/m²" names; undefined when it names none. */
export function unitNamed(text: string): Unit | undefined {
  const trimmed = text.trim();
  if (trimmed.length > LONGEST) return undefined;
  const exact = caseMatters.get(trimmed);
  if (exact !== undefined) return exact;
  const key = trimmed
    .toLowerCase()
    .replaceAll('²', '2')
    .replaceAll('³', '3')
    .replaceAll('℃', 'c')
    .replaceAll('℉', 'f')
    .replace(/degrees?|deg|grad/g, '')
    // "Â" and the replacement sign stand where a degree sign went through the wrong encoding
    .replace(/[\s°º˚_.^*·⋅â\ufffd]/g, '')
    .replaceAll('⁻¹', '-1')
    .replaceAll('⁻²', '-2')
    .replaceAll('⁻³', '-3');
  return units.get(key);
}

/** A unit as people write it: "°C", "%", "km/h"; null for one that the house alone knows. */
export const nameOfUnit = (unit: Unit): string | null => SPELT.get(unit) ?? null;

/** The units in which a column of this quantity may be when nothing names one, the likeliest first. */
export const usualUnits = (quantity: Quantity): readonly Unit[] =>
  USUAL[quantity].split(' ').flatMap((name) => unitNamed(name) ?? []);

/** What the unit of a quantity must measure. */
export const measureOf: Readonly<Record<Quantity, Measure>> = {
  temperature: 'temperature',
  dewPoint: 'temperature',
  humidity: 'humidity',
  absoluteHumidity: 'vapour',
  windSpeed: 'speed',
  irradiance: 'irradiance',
  power: 'power',
  energy: 'energy',
  meter: 'energy',
  pressure: 'pressure',
  carbonDioxide: 'share',
  voltage: 'voltage',
};

const USUAL: Readonly<Record<Quantity, string>> = {
  temperature: 'C F K',
  dewPoint: 'C F K',
  humidity: '% fraction',
  absoluteHumidity: 'g/m3',
  windSpeed: 'm/s',
  irradiance: 'W/m2',
  power: 'W',
  energy: 'kWh',
  meter: 'kWh',
  pressure: 'hPa Pa kPa mmHg inHg',
  carbonDioxide: 'ppm',
  voltage: 'V',
};

const LONGEST = 24;

/** Measure, names in lower case without blanks, degree signs and dots; scale; shift. */
const TABLE: readonly (readonly [Measure, string, number, number?])[] = [
  ['temperature', 'c celsius celcius centigrade cel', 1],
  ['temperature', 'f fahrenheit', 5 / 9, -32],
  ['temperature', 'k kelvin', 1, -273.15],
  ['humidity', 'fraction', 1],
  ['humidity', '% percent pct %rh rh% %hr %rf %rv %ur %relh relh rh prozent porciento pourcent %relf', 0.01],
  ['vapour', 'g/m3 gm-3 g/cbm', 1e-3],
  ['vapour', 'kg/m3', 1],
  ['speed', 'm/s ms-1 mps m/sec mtr/s', 1],
  ['speed', 'km/h kmh kph kmh-1 km/hr', 1 / 3.6],
  ['speed', 'ft/s fps', 0.3048],
  ['speed', 'mph mi/h', 0.44704],
  ['speed', 'kn kt kts knot knots', 1852 / 3600],
  ['irradiance', 'w/m2 wm2 wm-2 w/sqm w/qm watt/m2 watts/m2', 1],
  ['irradiance', 'kw/m2 kwm-2', 1e3],
  ['power', 'w watt watts', 1],
  ['power', 'kw', 1e3],
  ['energy', 'wh', 3.6e3],
  ['energy', 'kwh', 3.6e6],
  ['energy', 'j', 1],
  ['energy', 'kj', 1e3],
  ['energy', 'gj', 1e9],
  ['volume', 'm3 cbm', 1],
  ['pressure', 'pa', 1],
  ['pressure', 'hpa mbar mb millibar', 100],
  ['pressure', 'kpa', 1e3],
  ['pressure', 'bar', 1e5],
  ['pressure', 'mmhg torr', 101325 / 760],
  ['pressure', 'inhg', 3386.389],
  ['pressure', 'psi', 6894.757],
  ['share', 'ppm ppmv', 1e-6],
  ['share', 'vol%', 0.01],
  ['voltage', 'v volt volts', 1],
  ['voltage', 'mv', 1e-3],
  ['other', 'lx lux klx mm mm/h dbm db rpm hz l/h l/min m3/h ppb µg/m3 μg/m3 ug/m3 ma uv', 1],
];

const units: ReadonlyMap<string, Unit> = new Map(
  TABLE.flatMap(([measures, names, scale, shift = 0]) => {
    const unit = { measures, scale, shift };
    return names.split(' ').map((name): [string, Unit] => [name, unit]);
  }),
);

/** Mega, which lower case would make milli. */
const caseMatters: ReadonlyMap<string, Unit> = new Map([
  ['MWh', { measures: 'energy', scale: 3.6e9, shift: 0 }],
  ['MJ', { measures: 'energy', scale: 1e6, shift: 0 }],
  ['MW', { measures: 'power', scale: 1e6, shift: 0 }],
]);

/** The first name of each line of the table, spelt as it should be. */
const SPELT: ReadonlyMap<Unit, string> = new Map(
  [
    '°C °F K fraction % g/m³ kg/m³ m/s km/h ft/s mph kn W/m² kW/m² W kW Wh kWh J kJ GJ m³ Pa hPa kPa bar mmHg inHg',
    'psi ppm vol% V mV MWh MJ MW',
  ]
    .join(' ')
    .split(' ')
    .flatMap((name): [Unit, string][] => {
      const unit = unitNamed(name);
      return unit === undefined ? [] : [[unit, name]];
    }),
);
