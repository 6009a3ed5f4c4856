import { basename } from 'node:path';
import Sqlite from 'better-sqlite3';
import { refuse, type Fault } from '#shared/faults.ts';

/** An expected failure of the file under the book, by the database's own code; null for anything else. */
export function databaseFault(error: unknown, path: string): Fault | null {
  if (!(error instanceof Sqlite.SqliteError)) return null;
  const name = basename(path);
  const code = error.code;
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) {
    return refuse('locked', `${name} is open in another window.`, { mend: 'Close it there first; nothing was changed.' });
  }
  if (code === 'SQLITE_FULL' || code === 'SQLITE_IOERR_WRITE') {
    return refuse('disk-full', 'The disk is full, so nothing was entered. What was saved before is safe.', { mend: 'Free some space, then enter it again.' });
  }
  if (code.startsWith('SQLITE_READONLY') || code === 'SQLITE_PERM') {
    return refuse('read-only', `${name} cannot be written.`, { mend: 'Check the rights of the file and its folder. Nothing was changed.' });
  }
  if (code.startsWith('SQLITE_CANTOPEN')) {
    return refuse('file-missing', `${name} cannot be opened.`, { mend: 'Check that the folder is there and may be written.' });
  }
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB') {
    return damaged(path);
  }
  return null;
}

export function damaged(path: string): Fault {
  return refuse('damaged-book', `${basename(path)} is damaged. Nothing was changed.`, { mend: 'Put the file aside as it is, and open an earlier copy.' });
}
