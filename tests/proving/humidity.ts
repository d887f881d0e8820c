/** Water vapour in air, and in what a room is made of. */

const gasConstant = 461.5; // of water vapour [J/(kg·K)]

/**
 * Vapour that air can hold [kg/m³].
 *
 * @param temperature [°C]
 * @see Magnus form over water, coefficients of D. Sonntag, Z. Meteorologie 70 (1990) 340-344
 */
export const saturation = (temperature: number) =>
  (611.2 * Math.exp((17.62 * temperature) / (243.12 + temperature))) / (gasConstant * (temperature + 273.15));

/** What a room holds and gives off of moisture. */
export interface RoomMoisture {
  /** Drying plaster, people: given off steadily [kg/s]. */
  readonly source: number;
  /** Volume flow at which air and stores exchange vapour [m³/s]. */
  readonly exchange: number;
  /** Water that the stores take up from 0 to 100 % relative humidity [kg]. */
  readonly capacity: number;
}

export interface MoistureState {
  /** In the air [kg/m³]. */
  vapour: number;
  /** Of the stores, 0 to 1. */
  storeHumidity: number;
}

/**
 * One implicit step of a room's moisture; the vapour of the air that comes in is the last step's.
 *
 * @param inflow       air that comes in, all sources together [m³/s]
 * @param inflowVapour vapour carried by it [kg/s]
 */
export function stepMoisture(
  room: RoomMoisture,
  state: MoistureState,
  volume: number,
  temperature: number,
  inflow: number,
  inflowVapour: number,
  step: number,
): void {
  const full = saturation(temperature);
  const kept = volume / step;
  state.vapour =
    (kept * state.vapour + inflowVapour + room.source + room.exchange * full * state.storeHumidity) /
    (kept + inflow + room.exchange);
  state.vapour = Math.min(state.vapour, full);
  state.storeHumidity += (step * room.exchange * (state.vapour - full * state.storeHumidity)) / room.capacity;
}
