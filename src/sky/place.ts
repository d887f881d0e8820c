/** Where a house stands, as `house.json` has it: the one thing here in degrees. */
export interface Place {
  /** [degrees], north positive */
  readonly latitude: number;
  /** [degrees], east positive */
  readonly longitude: number;
  /** IANA zone, such as "Europe/London" */
  readonly timeZone: string;
}
