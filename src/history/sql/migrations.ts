/** `EbBl` in ASCII, kept in the file's header (PRAGMA application_id): tells a history from any other database. */
export const APPLICATION_ID = 0x4562426c;

/**
 * Script i brings a file from schema i to schema i + 1 (PRAGMA user_version). A script that was released is never
 * changed. Samples have a table of their own, so that no query on reps or outcomes ever reads a page of them.
 */
export const MIGRATIONS: readonly string[] = [
  `
  CREATE TABLE practice (
    id INTEGER PRIMARY KEY,
    origin TEXT UNIQUE, -- identity of a practice that came from a journal
    driver TEXT NOT NULL,
    utc_ms INTEGER NOT NULL,
    zone TEXT NOT NULL,
    offset_min INTEGER NOT NULL,
    source TEXT NOT NULL,
    foot TEXT NOT NULL,
    footwear TEXT NOT NULL,
    calibration_id TEXT NOT NULL,
    sensor TEXT NOT NULL,
    seed INTEGER
  ) STRICT;
  CREATE INDEX practice_by_driver ON practice (driver, utc_ms);

  CREATE TABLE rep (
    id INTEGER PRIMARY KEY,
    origin TEXT UNIQUE,
    practice_id INTEGER NOT NULL REFERENCES practice (id),
    utc_ms INTEGER NOT NULL,
    zone TEXT NOT NULL,
    offset_min INTEGER NOT NULL,
    car TEXT,
    corner TEXT,
    variant TEXT,
    condition TEXT,
    target_id TEXT NOT NULL,
    target_version TEXT NOT NULL,
    number INTEGER NOT NULL,
    block INTEGER NOT NULL,
    phase TEXT NOT NULL,
    block_order TEXT NOT NULL,
    feedback TEXT NOT NULL,
    self_rating TEXT,
    voided TEXT
  ) STRICT;
  CREATE INDEX rep_by_time ON rep (utc_ms);
  CREATE INDEX rep_by_practice ON rep (practice_id, utc_ms);
  CREATE INDEX rep_by_target ON rep (target_id, utc_ms);

  CREATE TABLE samples (
    rep_id INTEGER PRIMARY KEY REFERENCES rep (id),
    bytes BLOB NOT NULL
  ) STRICT;

  CREATE TABLE outcome (
    rep_id INTEGER NOT NULL REFERENCES rep (id),
    version INTEGER NOT NULL,
    kind TEXT NOT NULL,
    score REAL NOT NULL,
    release_error_level REAL,
    average_error_level REAL,
    peak_error REAL,
    rise_error_s REAL,
    start_of_release_error_s REAL,
    brake_off_error_s REAL,
    reapplications INTEGER,
    json TEXT NOT NULL, -- the whole outcome
    PRIMARY KEY (rep_id, version)
  ) STRICT;
  `,
  `
  ALTER TABLE rep ADD COLUMN live TEXT; -- what a zone of the live car began with, as JSON
  `,
  `
  CREATE TABLE note (
    id INTEGER PRIMARY KEY,
    origin TEXT UNIQUE, -- identity of a note that came from a journal
    utc_ms INTEGER NOT NULL,
    zone TEXT NOT NULL,
    offset_min INTEGER NOT NULL,
    driver TEXT NOT NULL,
    text TEXT NOT NULL, -- empty for a mark
    car TEXT,
    corner TEXT,
    variant TEXT,
    gear INTEGER,
    rep_id INTEGER REFERENCES rep (id)
  ) STRICT;
  CREATE INDEX note_by_corner ON note (corner, utc_ms);
  CREATE INDEX note_by_rep ON note (rep_id);
  `,
  `
  CREATE TABLE measure_pack ( -- the numbers of a practice's reps, made of the rows; see measure-pack.ts
    practice_id INTEGER PRIMARY KEY REFERENCES practice (id),
    bytes BLOB NOT NULL
  ) STRICT;
  CREATE TRIGGER rep_added AFTER INSERT ON rep BEGIN
    DELETE FROM measure_pack WHERE practice_id = new.practice_id;
  END;
  CREATE TRIGGER rep_changed AFTER UPDATE ON rep BEGIN
    DELETE FROM measure_pack WHERE practice_id IN (old.practice_id, new.practice_id);
  END;
  CREATE TRIGGER rep_deleted AFTER DELETE ON rep BEGIN
    DELETE FROM measure_pack WHERE practice_id = old.practice_id;
  END;
  CREATE TRIGGER outcome_added AFTER INSERT ON outcome BEGIN
    DELETE FROM measure_pack WHERE practice_id = (SELECT practice_id FROM rep WHERE id = new.rep_id);
  END;
  CREATE TRIGGER outcome_changed AFTER UPDATE ON outcome BEGIN
    DELETE FROM measure_pack WHERE practice_id IN (SELECT practice_id FROM rep WHERE id IN (old.rep_id, new.rep_id));
  END;
  CREATE TRIGGER outcome_deleted AFTER DELETE ON outcome BEGIN
    DELETE FROM measure_pack WHERE practice_id = (SELECT practice_id FROM rep WHERE id = old.rep_id);
  END;
  `,
  `
  ALTER TABLE rep ADD COLUMN target_change TEXT; -- how the target differed from its file's, as JSON
  `,
  `
  -- an identity for what was written before everything had one; made of the content, so that copies of a file agree
  UPDATE practice SET origin = named.name FROM (
    SELECT id, 'practice-' || utc_ms || '-' || row_number() OVER (PARTITION BY utc_ms, driver ORDER BY id)
      || '-' || driver AS name FROM practice
  ) AS named WHERE named.id = practice.id AND practice.origin IS NULL;
  UPDATE rep SET origin = named.name FROM (
    SELECT rep.id, practice.origin || '/rep-' || rep.number || '-' || rep.utc_ms || '-'
      || row_number() OVER (PARTITION BY rep.practice_id, rep.number, rep.utc_ms ORDER BY rep.id) AS name
      FROM rep JOIN practice ON practice.id = rep.practice_id
  ) AS named WHERE named.id = rep.id AND rep.origin IS NULL;
  UPDATE note SET origin = named.name FROM (
    SELECT id, 'note-' || utc_ms || '-' || row_number() OVER (PARTITION BY utc_ms, driver ORDER BY id)
      || '-' || driver AS name FROM note
  ) AS named WHERE named.id = note.id AND note.origin IS NULL;
  `,
  `
  CREATE TABLE kept_answer ( -- what was worked out of a practice's reps; see kept-answers.ts
    name TEXT PRIMARY KEY,
    practice_id INTEGER NOT NULL REFERENCES practice (id),
    text TEXT NOT NULL
  ) STRICT;
  CREATE TRIGGER rep_added_answer AFTER INSERT ON rep BEGIN
    DELETE FROM kept_answer WHERE practice_id = new.practice_id;
  END;
  CREATE TRIGGER rep_changed_answer AFTER UPDATE ON rep BEGIN
    DELETE FROM kept_answer WHERE practice_id IN (old.practice_id, new.practice_id);
  END;
  CREATE TRIGGER rep_deleted_answer AFTER DELETE ON rep BEGIN
    DELETE FROM kept_answer WHERE practice_id = old.practice_id;
  END;
  CREATE TRIGGER outcome_added_answer AFTER INSERT ON outcome BEGIN
    DELETE FROM kept_answer WHERE practice_id = (SELECT practice_id FROM rep WHERE id = new.rep_id);
  END;
  CREATE TRIGGER outcome_changed_answer AFTER UPDATE ON outcome BEGIN
    DELETE FROM kept_answer WHERE practice_id IN (SELECT practice_id FROM rep WHERE id IN (old.rep_id, new.rep_id));
  END;
  CREATE TRIGGER outcome_deleted_answer AFTER DELETE ON outcome BEGIN
    DELETE FROM kept_answer WHERE practice_id = (SELECT practice_id FROM rep WHERE id = old.rep_id);
  END;
  `,
];
