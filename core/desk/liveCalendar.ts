import { closeSync, existsSync, fsyncSync, openSync, readFileSync, renameSync, rmSync, statSync, writeSync } from 'node:fs';
import { basename, dirname, isAbsolute, join } from 'node:path';
import { refuse, type Answer } from '#shared/faults.ts';
import { product } from '#core/calendar/writeCalendar.ts';
import { readFollowed, readTold } from './calendarPapers.ts';
import { tellCalendar } from './calendarNow.ts';
import type { DeskOptions } from './desk.ts';
import type { Book } from './openBook.ts';

/*
 * A calendar file that the person chose on this machine is written anew a moment after each change: whole or not at
 * all, in a file beside it that then takes its place, so that a calendar that reads it never meets half a file. A file
 * that cannot be written never stands in the way of the book; the Work page says so.
 */

/** Several changes that follow each other fast are written once. */
const pause = 300;

export interface Followed {
  readonly written: string | null;
  readonly trouble: string | null;
}

const lastOf = new WeakMap<Book, Followed>();

export function followedOf(book: Book): Followed {
  return lastOf.get(book) ?? { written: null, trouble: null };
}

export function liveCalendar(options: DeskOptions) {
  let timer: NodeJS.Timeout | null = null;
  const settle = async (book: Book): Promise<void> => {
    if (timer === null) return;
    clearTimeout(timer);
    timer = null;
    try {
      await writeFollowed(book, options);
    } catch (error) {
      options.log(`the calendar file was not written: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    }
  };
  return {
    /** Something was written; `later` takes a turn at the desk. */
    changed: (later: () => Promise<void>) => {
      timer ??= setTimeout(() => void later(), pause).unref();
    },
    /** Whether a file may be to be written at all: without one no turn is taken for it. What cannot be read is said when it is written. */
    follows: (book: Book): Promise<boolean> => readFollowed(book.store).then((path) => path !== null, () => true),
    /** Writes what is still to be written. */
    settle,
  };
}

/** Writes the file that is followed, if any, and remembers how that went. */
export async function writeFollowed(book: Book, options: DeskOptions): Promise<void> {
  const path = await readFollowed(book.store);
  if (path === null) return;
  const fit = await fitFile(book, path);
  if (!fit.ok) {
    lastOf.set(book, { written: followedOf(book).written, trouble: [fit.sentence, fit.mend].filter(Boolean).join(' ') });
    return;
  }
  const { text } = await tellCalendar(book, options);
  try {
    if (!existsSync(path) || readFileSync(path, 'utf8') !== text) writeWhole(path, text);
    lastOf.set(book, { written: options.now().stamp, trouble: null });
  } catch (error) {
    lastOf.set(book, { written: followedOf(book).written, trouble: `${path} could not be written: ${reason(error)}.` });
  }
}

/** Whether the book may write that file: a calendar of its own, or none yet, in a folder that is there. */
export async function fitFile(book: Book, path: string): Promise<Answer<null>> {
  if (!isAbsolute(path)) return refuse('refused', 'The file’s whole path is needed, from the root or the drive on.', { field: 'path', mend: 'Write it as your file manager shows it.' });
  if (!path.toLowerCase().endsWith('.ics')) return refuse('refused', 'A calendar file’s name ends in .ics.', { field: 'path', mend: 'Name it so.' });
  if (statSync(dirname(path), { throwIfNoEntry: false })?.isDirectory() !== true) return refuse('file-missing', `There is no folder ${dirname(path)} on this machine.`, { field: 'path', mend: 'Choose a folder that is there.' });
  const there = statSync(path, { throwIfNoEntry: false });
  if (there === undefined) return { ok: true, value: null };
  const other = refuse('file-exists', `${basename(path)} is there already and was not written from this book, so it was left as it is.`, { field: 'path', mend: 'Choose another name.' });
  if (!there.isFile()) return other;
  const text = readFileSync(path, 'utf8');
  const uids = [...text.matchAll(/^UID:(.*)$/gm)].map(([, uid]) => (uid ?? '').trim());
  const { book: own } = await readTold(book.store);
  return text.includes(`PRODID:${product}`) && uids.every((uid) => uid.endsWith(`-${own}@outyard`)) ? { ok: true, value: null } : other;
}

function writeWhole(path: string, text: string): void {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    const file = openSync(beside, 'w', 0o600);
    try {
      writeSync(file, text);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
}

function reason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOSPC') return 'the disk is full';
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') return 'this program may not write there';
  return error instanceof Error ? error.message : String(error);
}
