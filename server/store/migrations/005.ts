/** The fifth layout: versions that take the readings posted to a house on one day, all of them. */
export const migration005 = `
-- The UTC day (days since 1970) on which its readings were posted; null for what a person brought or changed.
ALTER TABLE version ADD COLUMN posted_day INTEGER;
`;
