import type { Database } from 'better-sqlite3';
import { journal } from './migrations/0001-journal.ts';
import { yards } from './migrations/0002-yards.ts';
import { papers } from './migrations/0003-papers.ts';

export interface Migration {
  readonly number: number;
  readonly name: string;
  readonly statements: readonly string[];
}

/** In rising order; a published one is never changed (tests hold their hashes). */
export const migrations: readonly Migration[] = [journal, yards, papers];

export const bookVersion = migrations.at(-1)?.number ?? 0;

/**
 * Brings a book up to the newest version, each step in one transaction with its number, so that a step that
 * fails or is cut off leaves the version before it whole.
 */
export function migrate(database: Database, steps: readonly Migration[] = migrations): void {
  let at = database.pragma('user_version', { simple: true }) as number;
  for (const step of steps) {
    if (step.number <= at) continue;
    if (step.number !== at + 1) throw new Error(`migration ${step.number} does not follow ${at}`);
    database.transaction(() => {
      for (const statement of step.statements) database.exec(statement);
      const broken = database.pragma('foreign_key_check') as unknown[];
      if (broken.length > 0) throw new Error(`migration ${step.number} leaves ${broken.length} references broken`);
      database.pragma(`user_version = ${step.number}`);
    }).immediate();
    at = step.number;
  }
}
