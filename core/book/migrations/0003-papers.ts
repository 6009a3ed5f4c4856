/**
 * What is kept beside the journal and is none of its truth: notes on a season, rows that wait to be sorted out,
 * offers, plans. One row is one such paper; `kind` says which room reads it, `body` is that room's own JSON.
 */
export const papers = {
  number: 3,
  name: 'papers',
  statements: [
    `CREATE TABLE paper (
      kind TEXT NOT NULL,
      key TEXT NOT NULL,
      body TEXT NOT NULL CONSTRAINT paper_body CHECK (json_valid(body)),
      PRIMARY KEY (kind, key)
    ) STRICT, WITHOUT ROWID`,
  ],
} as const;
