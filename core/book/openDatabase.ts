import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import Sqlite, { type Database } from 'better-sqlite3';
import { FaultError, refuse } from '#shared/faults.ts';
import { damaged, databaseFault } from './databaseFault.ts';
import { applicationId, checkHeader } from './header.ts';
import { migrate } from './migrate.ts';

/** What every connection holds, set on every opening and read back. */
const held = [
  ['journal_mode', 'WAL', 'wal'],
  ['synchronous', 'FULL', 2],
  ['fullfsync', 'ON', 1],
  ['foreign_keys', 'ON', 1],
  ['trusted_schema', 'OFF', 0],
  ['cell_size_check', 'ON', 1],
] as const;

/** Makes a new book's file; refuses to touch one that is there. Throws a FaultError. */
export function createDatabase(path: string): Database {
  if (existsSync(path)) throw new FaultError(refuse('file-exists', `There is already a book called ${basename(path)}.`, { mend: 'Give the new book another name, or open the one that is there.' }));
  return guarded(path, () => {
    mkdirSync(dirname(path), { recursive: true });
    const database = new Sqlite(path);
    try {
      database.pragma(`application_id = ${applicationId}`);
      prepare(database, path);
    } catch (error) {
      database.close();
      // It was made a moment ago and holds nothing; left behind, it would be taken for a damaged book.
      for (const part of [path, `${path}-wal`, `${path}-shm`]) rmSync(part, { force: true });
      throw error;
    }
    return database;
  });
}

/** Opens a book's file: header first, then lock, pragmas read back, a quick check, migrations. Throws a FaultError. */
export function openDatabase(path: string): Database {
  const refused = checkHeader(path);
  if (refused !== null) throw new FaultError(refused);
  return guarded(path, () => {
    const database = new Sqlite(path, { fileMustExist: true });
    try {
      prepare(database, path);
    } catch (error) {
      database.close();
      throw error;
    }
    return database;
  });
}

/**
 * An exclusive lock is taken and kept: two windows writing one book would each hold stale figures. The lock is
 * the operating system's, so it goes with the process and is never left behind.
 */
function prepare(database: Database, path: string): void {
  try {
    database.pragma('busy_timeout = 250');
    database.pragma('locking_mode = EXCLUSIVE');
    for (const [name, value] of held) database.pragma(`${name} = ${value}`);
    database.exec('BEGIN IMMEDIATE; COMMIT');
    if (database.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new FaultError(damaged(path));
    // A book without a version has no tables yet; with tables, its header is not what it was.
    const tables = database.prepare('SELECT count(*) FROM sqlite_schema').pluck().get();
    if (database.pragma('user_version', { simple: true }) === 0 && tables !== 0) throw new FaultError(damaged(path));
    migrate(database);
  } catch (error) {
    // None of the statements so far can be wrong by themselves: a file format the database does not know, or a
    // version that its tables belie, is damage.
    if (error instanceof Sqlite.SqliteError && error.code === 'SQLITE_ERROR') throw new FaultError(damaged(path));
    throw error;
  }
  for (const [name, , expected] of held) {
    const found = database.pragma(name, { simple: true });
    if (found !== expected) throw new Error(`the book's ${name} is ${String(found)}, not ${String(expected)}`);
  }
  database.pragma('busy_timeout = 5000');
}

export function closeDatabase(database: Database): void {
  if (!database.open) return;
  try {
    database.pragma('optimize');
    database.pragma('wal_checkpoint(TRUNCATE)');
  } catch (error) {
    // On a full disk, say: what was committed stays in the log beside the book and is taken in when it is opened again.
    if (!(error instanceof Sqlite.SqliteError)) throw error;
  } finally {
    database.close();
  }
}

function guarded(path: string, open: () => Database): Database {
  try {
    return open();
  } catch (error) {
    if (error instanceof FaultError) throw error;
    const fault = databaseFault(error, path);
    if (fault !== null) throw new FaultError(fault);
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') throw new FaultError(refuse('read-only', `The folder of ${basename(path)} cannot be written.`, { mend: 'Choose another folder, or check its rights.' }));
    if (code === 'ENOTDIR' || code === 'EEXIST' || code === 'ENOENT') throw new FaultError(refuse('file-missing', `The folder of ${basename(path)} is not there, or is a file.`, { mend: 'Choose another folder.' }));
    throw error;
  }
}

/** A database in memory, for reports on a journal that is in no book. */
export function openScratch(): Database {
  const database = new Sqlite(':memory:');
  database.pragma('foreign_keys = ON');
  migrate(database);
  return database;
}
