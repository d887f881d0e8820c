/**
 * The second layout: original files apart, each once, and a version of the house for each time that something was
 * kept of it; how logs of a layout were read; instants of doubted readings.
 */
export const migration002 = `
CREATE TABLE original (
  sha256      TEXT    PRIMARY KEY,       -- of content
  bytes       INTEGER NOT NULL,
  content     BLOB    NOT NULL
) STRICT;
INSERT INTO original SELECT sha256, bytes, content FROM file WHERE true ON CONFLICT DO NOTHING;

-- The newest version of a house is the house; going back is deleting it.
CREATE TABLE version (
  number      INTEGER PRIMARY KEY,
  house       INTEGER NOT NULL REFERENCES house ON DELETE CASCADE,
  kept_s      REAL,                      -- not known of what the first layout held
  json        BLOB    NOT NULL           -- house.json as it was brought, byte for byte
) STRICT;
CREATE INDEX version_of_house ON version (house);
INSERT INTO version (house, json) SELECT number, json FROM house ORDER BY number;
ALTER TABLE house DROP COLUMN json;

ALTER TABLE file RENAME TO file_001;
CREATE TABLE file (
  version     INTEGER NOT NULL REFERENCES version ON DELETE CASCADE,
  name        TEXT    NOT NULL,
  sha256      TEXT    NOT NULL REFERENCES original,
  UNIQUE (version, name)
) STRICT;
CREATE INDEX file_of_original ON file (sha256);
INSERT INTO file (version, name, sha256)
  SELECT version.number, name, sha256 FROM file_001 JOIN version USING (house) ORDER BY file_001.rowid;
DROP TABLE file_001;

-- Days with readings that something speaks against.
CREATE TABLE day_doubts (
  channel     INTEGER NOT NULL REFERENCES channel ON DELETE CASCADE,
  day         INTEGER NOT NULL,
  instants    BLOB    NOT NULL,          -- see dayBlob.ts
  UNIQUE (channel, day)
) STRICT;

-- How a person last had logs of one layout read.
CREATE TABLE layout (
  signature   TEXT    PRIMARY KEY,       -- see layout.ts
  answers     TEXT    NOT NULL,          -- JSON
  kept_s      REAL    NOT NULL
) STRICT;
`;
