/** The sixth layout: the least and the greatest of each day apart from its hours, for the view of many years. */
export const migration006 = `
-- A row of day has 768 bytes of hours: ten years of eight loggers would be 45 MB to go through.
CREATE INDEX day_extremes ON day (channel, day, min, max);
`;
