/**
 * The fourth layout: what the figures of a house rest on, apart from its whole content; results that may hold again;
 * what was seen in a watched folder.
 */
export const migration004 = `
-- SHA-256 over all that the figures rest on: house.json without what is words only, and the files' names and hashes.
-- Of what older layouts held it is the content, so that their results stay.
ALTER TABLE house ADD COLUMN figures TEXT NOT NULL DEFAULT '';
UPDATE house SET figures = content;

-- Assessments of a house as it was: when it is so again, they are its outcome again.
CREATE TABLE former_result (
  number      INTEGER PRIMARY KEY,       -- the latest has the highest
  house       INTEGER NOT NULL REFERENCES house ON DELETE CASCADE,
  rests_on    TEXT    NOT NULL,
  result      TEXT    NOT NULL,          -- an Outcome as JSON
  UNIQUE (house, rests_on)
) STRICT;

-- Files of a watched folder that were dealt with; one that changes has another stamp.
CREATE TABLE watched (
  path        TEXT    PRIMARY KEY,       -- below the watched folder
  stamp       TEXT    NOT NULL,          -- size and time of change
  problems    TEXT    NOT NULL           -- JSON; empty for one that was taken
) STRICT;
`;
