/** The first layout: houses with their files, readings by day, and what was found of them. */
export const migration001 = `
CREATE TABLE house (
  number      INTEGER PRIMARY KEY,
  id          TEXT    NOT NULL UNIQUE,
  name        TEXT    NOT NULL,
  time_zone   TEXT    NOT NULL,
  json        BLOB    NOT NULL,          -- house.json as it was brought, byte for byte
  invented    INTEGER NOT NULL CHECK (invented IN (0, 1)),
  away        INTEGER NOT NULL DEFAULT 0 CHECK (away IN (0, 1)),
  content     TEXT    NOT NULL           -- SHA-256 over house.json and the files' names and hashes
) STRICT;
CREATE UNIQUE INDEX one_demonstration ON house (invented) WHERE invented = 1;

CREATE TABLE file (
  house       INTEGER NOT NULL REFERENCES house ON DELETE CASCADE,
  name        TEXT    NOT NULL,
  bytes       INTEGER NOT NULL,
  sha256      TEXT    NOT NULL,
  content     BLOB    NOT NULL,
  UNIQUE (house, name)
) STRICT;

CREATE TABLE channel (
  number      INTEGER PRIMARY KEY,
  house       INTEGER NOT NULL REFERENCES house ON DELETE CASCADE,
  file        TEXT    NOT NULL,
  column_name TEXT    NOT NULL,
  room        TEXT,
  place       TEXT    NOT NULL,
  quantity    TEXT    NOT NULL,
  spacing_s   REAL    NOT NULL,          -- median; 0 with a single reading
  first_s     REAL    NOT NULL,
  last_s      REAL    NOT NULL
) STRICT;
CREATE INDEX channel_of_house ON channel (house);

-- One row per channel and UTC day (days since 1970); values in SI.
CREATE TABLE day (
  channel     INTEGER NOT NULL REFERENCES channel ON DELETE CASCADE,
  day         INTEGER NOT NULL,
  n           INTEGER NOT NULL,
  min         REAL    NOT NULL,
  max         REAL    NOT NULL,
  sum         REAL    NOT NULL,
  hours       BLOB    NOT NULL,          -- see hourBlob.ts
  PRIMARY KEY (channel, day)
) STRICT, WITHOUT ROWID;

-- The readings apart, so that the coarse view does not page through them.
CREATE TABLE day_readings (
  channel     INTEGER NOT NULL REFERENCES channel ON DELETE CASCADE,
  day         INTEGER NOT NULL,
  readings    BLOB    NOT NULL,          -- see dayBlob.ts
  UNIQUE (channel, day)
) STRICT;

-- What the last assessment came to, and the hash of all that it rests on.
CREATE TABLE outcome (
  house       INTEGER PRIMARY KEY REFERENCES house ON DELETE CASCADE,
  rests_on    TEXT    NOT NULL,
  kind        TEXT    NOT NULL CHECK (kind IN ('assessed', 'not assessed', 'cancelled')),
  problems    TEXT,                      -- JSON; only when not assessed
  answer      TEXT,                      -- JSON; only when assessed, like the assessment
  assessment  TEXT
) STRICT;

CREATE TABLE night (
  house       INTEGER NOT NULL REFERENCES house ON DELETE CASCADE,
  date        TEXT    NOT NULL,
  sunset_s    REAL    NOT NULL,
  sunrise_s   REAL    NOT NULL,
  used        INTEGER NOT NULL CHECK (used IN (0, 1)),
  curve       TEXT    NOT NULL,          -- JSON
  UNIQUE (house, date)
) STRICT;

-- Things that are done once in the life of a database.
CREATE TABLE done_once (what TEXT PRIMARY KEY) STRICT;
`;
