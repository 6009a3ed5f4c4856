import type { Database, Statement } from 'better-sqlite3';
import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, type Compilable } from 'kysely';
import type { Tables } from './tables.ts';

/** Builds queries only; running them is the runner's, because the query builder prepares each statement anew. */
export const build = new Kysely<Tables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

/** Runs built queries on one open database with statements that are prepared once. */
export class SqliteRunner {
  readonly database: Database;
  readonly #statements = new Map<string, Statement>();

  constructor(database: Database) {
    this.database = database;
  }

  all<Row>(query: Compilable<Row>): Row[] {
    const { sql, parameters } = query.compile();
    return this.#prepared(sql).all(...parameters) as Row[];
  }

  first<Row>(query: Compilable<Row>): Row | undefined {
    const { sql, parameters } = query.compile();
    return this.#prepared(sql).get(...parameters) as Row | undefined;
  }

  run(query: Compilable): { lastInsertRowid: number } {
    const { sql, parameters } = query.compile();
    return { lastInsertRowid: Number(this.#prepared(sql).run(...parameters).lastInsertRowid) };
  }

  /** A statement for many rows: built once with the first row's shape, run with each row's values. */
  many<Item>(items: Iterable<Item>, query: (item: Item) => Compilable, values: (item: Item) => unknown[]): void {
    let statement: Statement | null = null;
    for (const item of items) {
      statement ??= this.#prepared(query(item).compile().sql);
      statement.run(...values(item));
    }
  }

  #prepared(sql: string): Statement {
    const kept = this.#statements.get(sql);
    if (kept !== undefined) return kept;
    const statement = this.database.prepare(sql);
    this.#statements.set(sql, statement);
    return statement;
  }
}

/** Lists longer than this are asked for in parts, so that no statement grows without bound. */
export function inParts<Item>(items: readonly Item[], size = 400): Item[][] {
  const parts: Item[][] = [];
  for (let at = 0; at < items.length; at += size) parts.push(items.slice(at, at + size));
  return parts;
}
