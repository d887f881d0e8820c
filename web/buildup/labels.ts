/** What the keys of an element are called on this page, in its fields and in whatever is said of them. */
export const labels = {
  areaM2: 'Area, m²',
  uValue: 'U-value, W/(m²K)',
  gValue: 'Sun let through (g), 0 to 1',
  orientationDeg: 'Faces, degrees from north',
  tiltDeg: 'Tilt, degrees',
  temperatureFactor: 'Share of the cold beyond, 0 to 1',
  perimeterM: 'Exposed perimeter, m',
  wallThicknessMm: 'Walls around it, mm',
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
} as const;

const name = new RegExp(`"?\\b(${Object.keys(labels).join('|')})\\b"?`, 'g');

/** A sentence of house.json in the words of this page. */
export const labelled = (sentence: string): string =>
  sentence.replace(name, (_, key: keyof typeof labels) => `“${labels[key]}”`);
