// The steps that make an empty file a store, and an older store one of today. Carried out by migrate.ts; docs/store.md tells of the tables.

export type Migration = {
  /** The version of the store after this step; SQLite keeps it as user_version. */
  readonly to: number;
  readonly does: string;
  readonly sql: string;
};

/** A step that has been released is never changed: what comes after it is a step of its own. */
export const MIGRATIONS: readonly Migration[] = [
  {
    to: 1,
    does: 'scenarios, every revision of each',
    sql: `
      CREATE TABLE scenario (
        name       TEXT    NOT NULL,
        revision   INTEGER NOT NULL CHECK (revision >= 1),
        saved_at   TEXT    NOT NULL,
        media_type TEXT    NOT NULL CHECK (media_type IN ('application/json', 'application/yaml')),
        text       TEXT    NOT NULL,
        PRIMARY KEY (name, revision)
      ) STRICT;`,
  },
  {
    to: 2,
    does: 'work that was asked for, and the keys of its requests',
    sql: `
      CREATE TABLE work (
        number        INTEGER PRIMARY KEY,
        id            TEXT NOT NULL UNIQUE,
        kind          TEXT NOT NULL CHECK (kind IN ('plan', 'fit', 'comparison', 'replan')),
        state         TEXT NOT NULL CHECK (state IN ('waiting', 'running', 'done', 'stopped', 'failed')),
        asked_at      TEXT NOT NULL,
        ended_at      TEXT,
        asked         TEXT NOT NULL,
        answer        TEXT,
        answer_sha256 TEXT,
        CHECK ((answer IS NULL) = (answer_sha256 IS NULL))
      ) STRICT;
      CREATE INDEX work_open ON work (asked_at, number) WHERE state IN ('waiting', 'running');
      CREATE INDEX work_asked_at ON work (asked_at);
      CREATE TABLE request_key (
        key         TEXT NOT NULL PRIMARY KEY,
        fingerprint TEXT NOT NULL,
        saved_at    TEXT NOT NULL,
        location    TEXT NOT NULL
      ) STRICT;
      CREATE INDEX request_key_saved_at ON request_key (saved_at);`,
  },
  {
    to: 3,
    does: 'posted plans, every revision of each day, with their pages',
    sql: `
      CREATE TABLE posted (
        number      INTEGER PRIMARY KEY,
        date        TEXT    NOT NULL,
        revision    INTEGER NOT NULL CHECK (revision >= 1),
        posted_at   TEXT    NOT NULL,
        time_zone   TEXT    NOT NULL,
        scenario    TEXT    NOT NULL,
        plan        TEXT    NOT NULL,
        plan_sha256 TEXT    NOT NULL,
        UNIQUE (date, revision)
      ) STRICT;
      CREATE INDEX posted_plan ON posted (plan_sha256);
      CREATE TABLE posted_page (
        date     TEXT    NOT NULL,
        revision INTEGER NOT NULL,
        number   INTEGER NOT NULL CHECK (number >= 1),
        svg      TEXT    NOT NULL,
        PRIMARY KEY (date, revision, number),
        FOREIGN KEY (date, revision) REFERENCES posted (date, revision)
      ) STRICT;`,
  },
  {
    to: 4,
    does: 'what happened on a day, in the order told',
    sql: `
      CREATE TABLE happened (
        date    TEXT    NOT NULL,
        number  INTEGER NOT NULL CHECK (number >= 1),
        told_at TEXT    NOT NULL,
        event   TEXT    NOT NULL,
        PRIMARY KEY (date, number)
      ) STRICT;`,
  },
];
