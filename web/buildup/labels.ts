/** What the keys of a house are called on this page, in its fields and in whatever is said of them. */
export const labels = {
  areaM2: 'Area, m²',
  uValue: 'U-value, W/(m²K)',
  gValue: 'Sun let through (g), 0 to 1',
  orientationDeg: 'Faces, degrees from north',
  tiltDeg: 'Tilt, degrees',
  temperatureFactor: 'Share of the cold beyond, 0 to 1',
  temperatureC: 'Neighbour’s temperature, °C',
  plusMinusK: 'Give or take, K',
  perimeterM: 'Exposed perimeter, m',
  wallThicknessMm: 'Walls around it, mm',
  fasteners: 'Fasteners through its insulation',
  underfloor: 'The space under it',
  massClass: 'Heaviness, by class',
  soil: 'The ground is',
  airGapLevel: 'Gaps in the insulation',
  thicknessMm: 'Thickness, mm',
  conductivityWmK: 'Conductivity, W/(mK)',
  resistanceM2KW: 'Resistance, m²K/W',
  densityKgM3: 'Density, kg/m³',
  specificHeatJkgK: 'Specific heat, J/(kgK)',
  vapourResistance: 'Vapour factor µ',
  sdM: 'Vapour as air, m',
  openingMm2PerM: 'Openings, mm² per metre',
  emissivity: 'Emissivity of the brighter face',
  widthMm: 'Width, mm',
  spacingMm: 'Centres, mm',
  extraFraction: 'Plates, noggins, 0 to 1',
  reachMm: 'Reaches, mm',
  heightMm: 'Floor above the ground outside, mm',
  wallUValue: 'U-value of the wall below, W/(m²K)',
  windSpeedMS: 'Wind, m/s',
  groundResistanceM2KW: 'Insulation on the ground, m²K/W',
  floorAreaM2: 'Heated floor, m²',
  volumeM3: 'Heated volume, m³',
  thermalBridges: 'How the meeting lines are known',
  lengthM: 'Length, m',
  psiWmK: 'Loss per metre (ψ), W/(mK)',
  psiLengthWK: 'All of them together, W/K',
  yValue: 'Share on every m² (y), W/(m²K)',
  ventilation: 'How the change of air is known',
  airChangesPerHour: 'Air changes per hour',
  plusMinusPercent: 'Give or take, %',
  asTestedAirChangesPerHour: 'Vents shut and fans off, per hour',
  airPermeability50: 'Leakage at 50 Pa, m³/(h·m²)',
  divisor: 'Divisor to everyday',
  divisorLow: 'Divisor, at the least',
  divisorHigh: 'Divisor, at the most',
  shelter: 'From the wind it is',
  storeys: 'Storeys',
  mechanicalAirChangesPerHour: 'Through the unit, per hour',
  heatRecovery: 'Heat given back, 0 to 1',
  dated: 'Dated',
} as const;

export type Labelled = keyof typeof labels;

const all = Object.keys(labels);
/** In quotes it is a key; without them only what is no word of the language as well. */
const keysInText = new RegExp(
  `"(${all.join('|')})"|\\b(${all.filter((key) => /[A-Z0-9]/.test(key)).join('|')})\\b`,
  'g',
);

/** Where a key stands in house.json, which nobody looks for on a page. */
const placesInText = / under "\w+"\."\w+"/g;

/** A sentence of house.json in the words of this page. */
export const labelled = (sentence: string): string =>
  sentence
    .replace(placesInText, '')
    .replace(keysInText, (_, quoted: Labelled | undefined, bare: Labelled) => `“${labels[quoted ?? bare]}”`);
