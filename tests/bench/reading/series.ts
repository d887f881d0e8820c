/** What every reader has to give of a channel. */
export interface Series {
  /** [s since 1970 UTC] */
  readonly time: Float64Array;
  /** The temperature in °C, the humidity in the unit that suits the reader. */
  readonly value: Float64Array;
}
