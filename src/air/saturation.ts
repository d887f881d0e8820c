/** How much vapour air can hold. */

/** Pressure at 0 °C [Pa], where both branches meet. ISO 13788:2012, Annex E. */
const atZero = 610.5;
/** θ and exponent of either branch; same place. */
const water = { factor: 17.269, offset: 237.3 } as const;
const ice = { factor: 21.875, offset: 265.5 } as const;

/**
 * Saturation vapour pressure [Pa]: over water from 0 °C up, over ice below.
 *
 * Against the international water and ice equations it is within 0.35 % from -10 to 30 °C, and 0.5 % at
 * -20 °C. Stations and sensors mean the humidity over water in frost too: taken as over ice, as the standard
 * does, air of -10 °C counts as about a tenth drier than it is.
 *
 * @param temperature [°C]
 * @see ISO 13788:2012, Annex E (MEMORY; the branch over water READ second-hand)
 */
export function saturationPressure(temperature: number): number {
  return temperature < 0 ? branch(temperature, ice) : branch(temperature, water);
}

/**
 * Temperature at which air of this vapour pressure is saturated [°C]: its dew point, or frost point below 0 °C.
 *
 * @param pressure of the vapour [Pa], above 0
 * @see ISO 13788:2012, Annex E
 */
export function saturationTemperature(pressure: number): number {
  const { factor, offset } = pressure < atZero ? ice : water;
  const L = Math.log(pressure / atZero);
  return (offset * L) / (factor - L);
}

function branch(temperature: number, { factor, offset }: { factor: number; offset: number }): number {
  return atZero * Math.exp((factor * temperature) / (offset + temperature));
}
