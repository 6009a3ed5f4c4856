import { closeSync, existsSync, openSync, readSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { refuse, type Fault } from '#shared/faults.ts';
import { damaged } from './databaseFault.ts';
import { bookVersion } from './migrate.ts';

/** "Outy" in ASCII, kept in the file's header so that any program can tell whose it is. */
export const applicationId = 0x4f757479;

/**
 * Looks at a file before any database code touches it: a zero-byte file, a folder, another program's database
 * or a newer book is named as what it is. Null when the file may be opened.
 */
export function checkHeader(path: string): Fault | null {
  const name = basename(path);
  if (!existsSync(path)) return refuse('file-missing', `There is no file ${name} at that place.`, { mend: 'Check the folder, or look whether the book was moved or renamed.' });
  const stat = statSync(path);
  if (stat.isDirectory()) return refuse('not-a-book', `${name} is a folder, not a book.`, { mend: 'Choose the file that ends in .outyard.' });
  if (stat.size === 0) return refuse('not-a-book', `${name} is empty: not an Outyard book.`, { mend: 'Choose another file; nothing was changed.' });
  const header = Buffer.alloc(100);
  const handle = openSync(path, 'r');
  try {
    if (readSync(handle, header, 0, 100, 0) < 100) return notOurs(name);
  } finally {
    closeSync(handle);
  }
  if (header.toString('latin1', 0, 16) !== 'SQLite format 3\u0000') return notOurs(name);
  if (header.readUInt32BE(68) !== applicationId) return notOurs(name);
  const version = header.readUInt32BE(60);
  if (version > bookVersion) {
    return refuse('newer-book', `${name} was written by a newer Outyard (form ${version}; this one knows ${bookVersion}).`, { mend: 'Update Outyard and open it again; nothing was changed.' });
  }
  // Write and read version of the file format: a rollback journal (1) or a log (2), both alike. Another write version would open for reading only.
  const [writes, reads] = [header[18], header[19]];
  if (writes !== reads || (writes !== 1 && writes !== 2)) return damaged(path);
  // Write bits are looked at by themselves because an administrator may write to any file, and should not here.
  if ((stat.mode & 0o222) === 0) return refuse('read-only', `${name} is write-protected.`, { mend: 'Take the write protection off, or copy the file and open the copy. Nothing was changed.' });
  return null;
}

function notOurs(name: string): Fault {
  return refuse('not-a-book', `${name} is not an Outyard book.`, { mend: 'Choose a file that ends in .outyard; nothing was changed.' });
}
