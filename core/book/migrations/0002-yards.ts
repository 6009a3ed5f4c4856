/**
 * What is known of a yard beside its place in the journal: notes, who to ask, how to get in, its registration;
 * and the order in which its colonies stand. None of it is the journal's truth, so it may be changed in place.
 * `stand.colony_id` refers to no table: colonies are a projection that is rewritten, and their ids are never
 * used again.
 */
export const yards = {
  number: 2,
  name: 'yards',
  statements: [
    `CREATE TABLE yard_detail (
      yard_id INTEGER PRIMARY KEY REFERENCES yard (id) ON DELETE RESTRICT,
      access TEXT,
      notes TEXT,
      registration TEXT,
      renewal TEXT CONSTRAINT yard_renewal CHECK (date(renewal) IS renewal)
    ) STRICT`,
    `CREATE TABLE stand (
      yard_id INTEGER NOT NULL REFERENCES yard (id) ON DELETE RESTRICT,
      colony_id INTEGER NOT NULL,
      place INTEGER NOT NULL CONSTRAINT stand_place CHECK (place >= 0),
      PRIMARY KEY (yard_id, colony_id)
    ) STRICT, WITHOUT ROWID`,
  ],
} as const;
