/** The days of one simulated run, counted from its first local midnight. */
export const days = {
  before: { from: 14, to: 28 },
  change: 28.5,
  after: { from: 30, to: 44 },
  /** The thermostat takes over a day before the metered days count. */
  thermostat: 44,
  metered: 45,
} as const;
export const day = 86400;
export const hour = 3600;
