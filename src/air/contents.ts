/** What a volume or a mass of moist air contains, by the law of ideal gases. */

/** Gas constants [J/(kgK)]: of vapour as ISO 13788 has it, of dry air as the standard atmosphere. */
const ofVapour = 461.5;
const ofDryAir = 287.05;
/** Molar mass of water over that of dry air [–]. ASHRAE Handbook 2017, chapter 1. */
const massRatio = 0.621945;
const kelvin = (temperature: number) => temperature + 273.15;

/** Pressure of the air at sea level [Pa]. */
export const seaLevelPressure = 101_325;

/**
 * Water in a volume of air [kg/m³].
 *
 * @param temperature [°C]
 * @param pressure    of the vapour [Pa]
 * @see ISO 13788:2012, 3.1 and Annex A: v = p/(461.5·T)
 */
export function absoluteHumidity(temperature: number, pressure: number): number {
  return pressure / (ofVapour * kelvin(temperature));
}

/**
 * Vapour pressure [Pa] of so much water in a volume of air.
 *
 * @param temperature      [°C]
 * @param absoluteHumidity [kg/m³]
 */
export function pressureOfHumidity(temperature: number, absoluteHumidity: number): number {
  return absoluteHumidity * ofVapour * kelvin(temperature);
}

/**
 * Water per mass of dry air [kg/kg].
 *
 * @param pressure    of the vapour [Pa]
 * @param airPressure in all [Pa]
 * @see ASHRAE Handbook 2017, chapter 1, equation 20
 */
export function humidityRatio(pressure: number, airPressure: number = seaLevelPressure): number {
  return (massRatio * pressure) / (airPressure - pressure);
}

/**
 * Density of moist air [kg/m³].
 *
 * @param temperature [°C]
 * @param pressure    of the vapour [Pa]
 * @param airPressure in all [Pa]
 */
export function airDensity(
  temperature: number,
  pressure: number,
  airPressure: number = seaLevelPressure,
): number {
  const T = kelvin(temperature);
  return (airPressure - pressure) / (ofDryAir * T) + pressure / (ofVapour * T);
}

/**
 * Pressure of the standard atmosphere [Pa].
 *
 * @param altitude above the sea [m], up to 11 km
 * @see ASHRAE Handbook 2017, chapter 1, equation 3
 */
export function airPressureAt(altitude: number): number {
  return seaLevelPressure * (1 - 2.25577e-5 * altitude) ** 5.2559;
}
