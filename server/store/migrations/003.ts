/** The third layout: links of a house for those who live in it, and until when a house is kept. */
export const migration003 = `
CREATE TABLE link (
  number      INTEGER PRIMARY KEY,
  house       INTEGER NOT NULL REFERENCES house ON DELETE CASCADE,
  hash        TEXT    NOT NULL UNIQUE,   -- SHA-256 of what stands in the link; that itself is stored nowhere
  scope       TEXT    NOT NULL CHECK (scope IN ('see', 'add')),
  whose       TEXT    NOT NULL,
  made_s      REAL    NOT NULL,
  until_s     REAL    NOT NULL
) STRICT;
CREATE INDEX link_of_house ON link (house);

ALTER TABLE house ADD COLUMN keep_until TEXT; -- a date in the house's zone; null while nothing was agreed
`;
