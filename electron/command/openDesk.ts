import { existsSync, rmSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import type { Answer } from '#shared/faults.ts';
import { booksFolder, dataFolder } from '#electron/folders.ts';
import { readClock, readMoment } from '#electron/keeper/clock.ts';
import { logFile } from '#electron/keeper/logFile.ts';
import { program } from '#electron/program.ts';
import { surroundings } from '#electron/surroundings.ts';
import { pathOf } from './files.ts';
import { asCommandError, CommandError } from './verb.ts';

/** The desk, in this process; refusals are thrown as `CommandError`. */
export interface CommandDesk {
  ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>>;
}

/** Works at a desk whose books lie in `folder`, and closes it whatever happens. */
export async function atDesk<Result>(folder: string | null, work: (desk: CommandDesk) => Promise<Result>): Promise<Result> {
  // Loaded only now, so that help and a word that is wrong are answered at once.
  const { createDesk } = await import('#core/desk/desk.ts');
  const around = surroundings();
  const desk = createDesk({ folder: folder ?? booksFolder(around), program, now: readClock, moment: readMoment, log: logFile(dataFolder(around)) });
  try {
    return await work({
      async ask<Name extends OperationName>(name: Name, input: InputOf<Name>) {
        const answer = (await desk.call(name, input)) as Answer<OutputOf<Name>>;
        if (!answer.ok) throw asCommandError(answer);
        return answer.value;
      },
    });
  } finally {
    await desk.close();
  }
}

/** Works in the book of that file; `make` says whether a missing one is created there. */
export async function atBook<Result>(
  given: string | undefined,
  make: boolean,
  work: (desk: CommandDesk) => Promise<Result>,
): Promise<Result> {
  if (given === undefined) throw new CommandError('Which book?', 'Name it with --book FILE.outyard.');
  const path = pathOf(given);
  const isNew = make && !existsSync(path);
  try {
    return await atDesk(dirname(path), async (desk) => {
      if (isNew) await makeBook(desk, path);
      else await desk.ask('book.open', { path });
      return work(desk);
    });
  } catch (error) {
    // The empty book that was made for what then could not be read.
    if (isNew && error instanceof CommandError) for (const ending of ['', '-wal', '-shm']) rmSync(path + ending, { force: true });
    throw error;
  }
}

async function makeBook(desk: CommandDesk, path: string): Promise<void> {
  if (!path.endsWith('.outyard')) throw new CommandError(`A book’s file ends in .outyard, and ${basename(path)} does not.`, 'Name it so.');
  const status = await desk.ask('book.create', { name: basename(path, '.outyard') });
  if (status.book?.path !== path) {
    throw new CommandError(`The book was made as ${status.book?.path ?? '(nowhere)'}, not as ${path}.`, 'Use a plainer file name, or go on with that one.');
  }
}
