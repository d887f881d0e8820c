/** How much more vapour is inside than outside, by what a building is used for. */

/**
 * 1 storage; 2 offices, dwellings with normal occupancy and ventilation; 3 buildings of unknown occupancy;
 * 4 sports halls, kitchens, canteens. Class 5 (laundries, breweries, pools) has no upper bound: measure there.
 */
export type HumidityClass = 1 | 2 | 3 | 4;

/** Upper bound of the excess at 0 °C outside and below. ISO 13788:2012, Annex A, figure A.2 (MEMORY). */
const upperBounds: Readonly<Record<HumidityClass, { readonly pressure: number; readonly density: number }>> =
  {
    1: { pressure: 270, density: 2e-3 },
    2: { pressure: 540, density: 4e-3 },
    3: { pressure: 810, density: 6e-3 },
    4: { pressure: 1080, density: 8e-3 },
  };
/** Outside temperature [°C] from which windows stand open and nothing is left of the excess. */
const noExcessFrom = 20;

export interface MoistureExcess {
  /** Of the vapour [Pa]. */
  readonly pressure: number;
  /** Of the absolute humidity [kg/m³]. */
  readonly density: number;
}

/**
 * Upper bound of the moisture excess inside: whole at 0 °C outside and below, falling in a line to nothing at
 * 20 °C.
 *
 * @param outsideTemperature monthly mean [°C]
 * @see ISO 13788:2012, Annex A
 */
export function moistureExcess(humidityClass: HumidityClass, outsideTemperature: number): MoistureExcess {
  const { pressure, density } = upperBounds[humidityClass];
  const part = Math.min(1, Math.max(0, 1 - outsideTemperature / noExcessFrom));
  return { pressure: pressure * part, density: density * part };
}
