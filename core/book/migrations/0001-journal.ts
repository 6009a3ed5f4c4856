/**
 * The first schema. Journal tables (gesture, entry, mark) only ever grow: triggers refuse to change or remove
 * a row. STRICT tables, named checks, an index for every foreign key.
 */
export const journal = {
  number: 1,
  name: 'journal',
  statements: [
    `CREATE TABLE meta (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT`,
    `CREATE TABLE gesture (
      id INTEGER PRIMARY KEY,
      at TEXT NOT NULL,
      kind TEXT NOT NULL CONSTRAINT gesture_kind CHECK (kind IN ('enter', 'import', 'strike', 'replace', 'undo', 'redo')),
      title TEXT NOT NULL,
      undoes INTEGER REFERENCES gesture (id) ON DELETE RESTRICT
    ) STRICT`,
    `CREATE INDEX gesture_undoes ON gesture (undoes)`,
    `CREATE TABLE yard (
      id INTEGER PRIMARY KEY,
      code TEXT NOT NULL CONSTRAINT yard_code UNIQUE,
      name TEXT NOT NULL,
      room INTEGER CONSTRAINT yard_room CHECK (room >= 0),
      minutes INTEGER CONSTRAINT yard_minutes CHECK (minutes >= 0)
    ) STRICT`,
    `CREATE TABLE entry (
      id INTEGER PRIMARY KEY,
      gesture_id INTEGER NOT NULL REFERENCES gesture (id) ON DELETE RESTRICT,
      day TEXT NOT NULL CONSTRAINT entry_day CHECK (date(day) IS day),
      place INTEGER NOT NULL,
      kind TEXT NOT NULL,
      body TEXT NOT NULL CONSTRAINT entry_body CHECK (json_valid(body)),
      replaces INTEGER REFERENCES entry (id) ON DELETE RESTRICT
    ) STRICT`,
    `CREATE INDEX entry_gesture ON entry (gesture_id)`,
    `CREATE INDEX entry_order ON entry (day, place)`,
    `CREATE INDEX entry_kind ON entry (kind, day)`,
    `CREATE INDEX entry_replaces ON entry (replaces)`,
    `CREATE TABLE mark (
      id INTEGER PRIMARY KEY,
      entry_id INTEGER NOT NULL REFERENCES entry (id) ON DELETE RESTRICT,
      gesture_id INTEGER NOT NULL REFERENCES gesture (id) ON DELETE RESTRICT,
      what TEXT NOT NULL CONSTRAINT mark_what CHECK (what IN ('strike', 'lift')),
      reason TEXT NOT NULL
    ) STRICT`,
    `CREATE INDEX mark_entry ON mark (entry_id)`,
    `CREATE INDEX mark_gesture ON mark (gesture_id)`,
    `CREATE TABLE draft (key TEXT PRIMARY KEY, body TEXT NOT NULL) STRICT`,
    `CREATE TABLE house_rule (key TEXT PRIMARY KEY, value TEXT NOT NULL CONSTRAINT rule_value CHECK (json_valid(value))) STRICT`,
    `CREATE TABLE struck (
      entry_id INTEGER PRIMARY KEY REFERENCES entry (id) ON DELETE RESTRICT,
      mark_id INTEGER NOT NULL REFERENCES mark (id) ON DELETE RESTRICT
    ) STRICT`,
    `CREATE INDEX struck_mark ON struck (mark_id)`,
    `CREATE TABLE colony_entry (
      colony_id INTEGER NOT NULL,
      entry_id INTEGER NOT NULL REFERENCES entry (id) ON DELETE RESTRICT,
      PRIMARY KEY (colony_id, entry_id)
    ) STRICT, WITHOUT ROWID`,
    `CREATE INDEX colony_entry_entry ON colony_entry (entry_id)`,
    `CREATE TABLE colony (
      id INTEGER PRIMARY KEY,
      label TEXT NOT NULL,
      yard_id INTEGER NOT NULL REFERENCES yard (id) ON DELETE RESTRICT,
      origin TEXT NOT NULL,
      start_day TEXT NOT NULL CONSTRAINT colony_start CHECK (date(start_day) IS start_day),
      end_day TEXT CONSTRAINT colony_end CHECK (date(end_day) IS end_day),
      how TEXT NOT NULL,
      state TEXT NOT NULL CONSTRAINT colony_state CHECK (json_valid(state))
    ) STRICT`,
    `CREATE INDEX colony_label ON colony (label)`,
    `CREATE INDEX colony_yard ON colony (yard_id)`,
    ...['gesture', 'entry', 'mark'].flatMap((table) => [
      `CREATE TRIGGER ${table}_never_changes BEFORE UPDATE ON ${table} BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END`,
      `CREATE TRIGGER ${table}_never_goes BEFORE DELETE ON ${table} BEGIN SELECT RAISE(ABORT, 'the journal only grows'); END`,
    ]),
  ],
} as const;
