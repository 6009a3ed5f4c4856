import { readdirSync, realpathSync, statSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import type { BookStatus } from '#shared/contract/book.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { demoBook, openDemo } from './buildDemo.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { Book, bookPath } from './openBook.ts';

type Names = 'book.status' | 'book.create' | 'book.open' | 'book.demo' | 'book.close' | 'book.check' | 'book.settings' | 'yard.keep';

export const bookHandlers: Handlers<Names> = {
  'book.status': (_, context) => status(context),
  'book.create': async ({ name }, context) => {
    const path = bookPath(context.options.folder, name);
    await context.setBook(await Book.create(path, new Map([['name', name]])));
    return status(context);
  },
  'book.open': async ({ path }, context) => {
    const full = isAbsolute(path) ? path : join(context.options.folder, path);
    if (!isOpen(full, context)) await context.setBook(await Book.open(full));
    return status(context);
  },
  'book.demo': async ({ which }, context) => {
    const demo = demoBook(which, context.options.folder);
    if (!isOpen(demo.path, context)) await context.setBook(await openDemo(demo));
    return status(context);
  },
  'book.close': async (_, context) => {
    await context.setBook(null);
    return status(context);
  },
  'book.check': async (_, context) => {
    const { store } = context.open();
    const findings = await store.findings();
    const before = await store.projectionText();
    const { entries } = await store.counts();
    let refoldEqual = false;
    if (findings.length === 0) {
      await store.rebuild();
      refoldEqual = before === (await store.projectionText());
    }
    return { sound: findings.length === 0 && refoldEqual, findings, entries, refoldEqual };
  },
  'book.settings': async (input, context) => {
    const { store } = context.open();
    await store.keepSettings(new Map(Object.entries(input).filter((pair): pair is [string, string] => pair[1] !== undefined)));
    return status(context);
  },
  'yard.keep': async (input, context) => {
    const book = context.open();
    const yards = await book.store.yards();
    const same = (a: string, b: string) => a.toLowerCase() === b.toLowerCase();
    const twin = yards.find((yard) => yard.id !== input.id && (same(yard.code, input.code) || same(yard.name, input.name) || same(yard.name, input.code) || same(yard.code, input.name)));
    if (twin !== undefined) throw new FaultError(refuse('refused', `There is already a yard called ${twin.name} (${twin.code}).`, { field: 'code', mend: 'Give this one another code and name.' }));
    if (['shed', 'supplier', 'scrap', 'all'].includes(input.code.toLowerCase())) throw new FaultError(refuse('refused', `“${input.code}” means something else in the shed account.`, { field: 'code', mend: 'Give the yard another code.' }));
    if (input.id !== undefined && !yards.some((yard) => yard.id === input.id)) throw new FaultError(refuse('unknown', 'That yard is not in this book.'));
    const next = await book.store.nextIds();
    const id = input.id ?? (next.yard as (typeof yards)[number]['id']);
    await book.store.keepYard({ id, code: input.code, name: input.name, room: input.room, minutes: input.minutes });
    const found = (await book.view()).yards.find((yard) => yard.id === id);
    if (found === undefined) throw new Error(`yard ${id} was kept and is not there`);
    return found;
  },
};

/** The same book again, by whatever spelling of its path, would meet its own lock. */
function isOpen(path: string, context: DeskContext): boolean {
  const open = context.book()?.path;
  return open !== undefined && (open === path || realPath(open) === realPath(path));
}

function realPath(path: string): string {
  try {
    return realpathSync(path);
  } catch {
    // A file that is not there is nobody's other spelling.
    return path;
  }
}

async function status(context: DeskContext): Promise<BookStatus> {
  const { options } = context;
  const book = context.book();
  const clock = options.now().day;
  return { book: book === null ? null : await book.view(), today: book === null ? clock : await book.today(clock), folder: options.folder, books: listBooks(options.folder), program: options.program };
}

function listBooks(folder: string): BookStatus['books'] {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    // A folder that is not there yet holds no books; starting one makes it.
    return [];
  }
  return names
    .filter((name) => name.endsWith('.outyard'))
    .flatMap((name) => {
      const path = join(folder, name);
      const stat = statSync(path, { throwIfNoEntry: false });
      return stat === undefined || !stat.isFile() ? [] : [{ name: name.slice(0, -'.outyard'.length), path, modified: stat.mtime.toISOString().slice(0, 16).replace('T', ' ') }];
    })
    .toSorted((a, b) => (a.modified < b.modified ? 1 : -1));
}
