import { chmodSync, copyFileSync, mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { applicationId } from '#core/book/header.ts';
import { bookVersion } from '#core/book/migrate.ts';
import { closeDatabase, createDatabase, openDatabase } from '#core/book/openDatabase.ts';
import { sqliteStore } from '#core/book/sqliteStore.ts';
import { Book } from '#core/desk/openBook.ts';
import { foldVersion } from '#core/journal/colonyState.ts';
import { exported, sha256 } from '#tests/journal/trialBook.ts';
import { codeOf, scratchFolder, trialDesk, writeBook } from './trialFile.ts';

let folder = '';
let remove = () => {};
let path = '';
beforeEach(async () => {
  ({ folder, remove } = scratchFolder());
  path = join(folder, 'home.outyard');
  await writeBook(path);
});
afterEach(() => remove());

const files = () => readdirSync(folder).toSorted();
const hash = (of = path) => sha256(readFileSync(of));

describe('an open book', () => {
  test('holds what was asked of the connection, also after a write and on opening again', () => {
    for (const turn of [1, 2]) {
      const database = openDatabase(path);
      const held = () => Object.fromEntries(['journal_mode', 'synchronous', 'fullfsync', 'foreign_keys', 'trusted_schema', 'cell_size_check', 'busy_timeout', 'locking_mode'].map((name) => [name, database.pragma(name, { simple: true })]));
      const wanted = { journal_mode: 'wal', synchronous: 2, fullfsync: 1, foreign_keys: 1, trusted_schema: 0, cell_size_check: 1, busy_timeout: 5000, locking_mode: 'exclusive' };
      expect(held()).toMatchObject({ ...wanted, busy_timeout: expect.anything() });
      database.prepare('INSERT INTO draft VALUES (?, ?)').run(`turn ${turn}`, 'typed');
      expect(held()).toMatchObject({ ...wanted, busy_timeout: expect.anything() });
      expect([database.pragma('application_id', { simple: true }), database.pragma('user_version', { simple: true })]).toEqual([applicationId, bookVersion]);
      closeDatabase(database);
    }
    expect(files()).toEqual(['home.outyard']);
  });

  test('has strict tables only, and an index for every reference', () => {
    const database = openDatabase(path);
    const tables = database.pragma('table_list') as { schema: string; name: string; strict: number }[];
    const own = tables.filter(({ schema, name }) => schema === 'main' && !name.startsWith('sqlite_'));
    expect(own.length).toBeGreaterThan(8);
    for (const { name, strict } of own) {
      expect(strict, name).toBe(1);
      const firstColumns = (database.pragma(`index_list(${name})`) as { name: string }[]).map((index) => (database.pragma(`index_info(${index.name})`) as { name: string }[])[0]?.name);
      const key = (database.pragma(`table_info(${name})`) as { name: string; pk: number }[]).filter(({ pk }) => pk === 1).map((column) => column.name);
      for (const { from } of database.pragma(`foreign_key_list(${name})`) as { from: string }[]) expect([...firstColumns, ...key], `${name}.${from}`).toContain(from);
    }
    closeDatabase(database);
  });

  test.each(['2023-02-29', '2024-2-9', '2024-13-01', 'yesterday', '', '2024-05-01 12:00'])('refuses an entry of the day “%s”', (day) => {
    const database = openDatabase(path);
    expect(() => database.prepare("INSERT INTO entry VALUES (1000, 1, ?, 1000, 'note', '{}', NULL)").run(day)).toThrow('entry_day');
    closeDatabase(database);
  });

  test.each([
    ["INSERT INTO entry VALUES (1000, 1, '2024-05-01', 1, 'note', '{', NULL)", 'entry_body'],
    ["INSERT INTO gesture VALUES (1000, '2024-05-01', 'guess', 't', NULL)", 'gesture_kind'],
    ["INSERT INTO mark VALUES (1000, 1, 1, 'remove', 'r')", 'mark_what'],
    ["INSERT INTO yard VALUES (1000, 'OO', 'twice', NULL, NULL)", 'yard.code'],
    ["INSERT INTO yard VALUES (1000, 'ZZ', 'z', -1, NULL)", 'yard_room'],
    ["INSERT INTO yard VALUES (1000, 'ZZ', 'z', 'many', NULL)", 'cannot store TEXT'],
    ["INSERT INTO entry VALUES (1000, 999, '2024-05-01', 1, 'note', '{}', NULL)", 'FOREIGN KEY'],
    ["UPDATE colony SET start_day = '2024-02-30'", 'colony_start'],
    ["UPDATE colony SET state = 'x'", 'colony_state'],
    ["UPDATE entry SET day = '2024-05-02'", 'the journal only grows'],
    ['DELETE FROM entry', 'the journal only grows'],
    ["UPDATE gesture SET title = 'x'", 'the journal only grows'],
    ['DELETE FROM gesture', 'the journal only grows'],
  ])('refuses “%s”', (statement, words) => {
    const database = openDatabase(path);
    expect(() => database.exec(statement)).toThrow(words);
    closeDatabase(database);
  });

  test('refuses to change or remove a mark', () => {
    const database = openDatabase(path);
    database.exec("INSERT INTO mark VALUES (1, 1, 1, 'strike', 'r')");
    expect(() => database.exec("UPDATE mark SET reason = 'x'")).toThrow('the journal only grows');
    expect(() => database.exec('DELETE FROM mark')).toThrow('the journal only grows');
    closeDatabase(database);
  });
});

describe('a file that is no book, or none for us', () => {
  const damage = (change: (bytes: Buffer) => void) => {
    const bytes = readFileSync(path);
    change(bytes);
    writeFileSync(path, bytes);
  };
  test.each<[string, () => void, string]>([
    ['a file of no bytes', () => writeFileSync(path, ''), 'not-a-book'],
    ['a short file', () => writeFileSync(path, 'SQLite format 3\0'), 'not-a-book'],
    ['a picture', () => writeFileSync(path, Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), Buffer.alloc(500, 7)])), 'not-a-book'],
    ['another program’s database', () => damage((bytes) => bytes.writeUInt32BE(0x12345678, 68)), 'not-a-book'],
    ['a newer book', () => damage((bytes) => bytes.writeUInt32BE(bookVersion + 1, 60)), 'newer-book'],
    ['a book of version 0 that has its tables', () => damage((bytes) => bytes.writeUInt32BE(0, 60)), 'damaged-book'],
    ['a book cut in the middle of a page', () => truncateSync(path, 9000), 'damaged-book'],
    ['a book cut after its first page', () => truncateSync(path, 4096), 'damaged-book'],
    ['a book cut to its header', () => truncateSync(path, 100), 'damaged-book'],
    ['a book with zeros for its last pages', () => damage((bytes) => bytes.fill(0, bytes.length / 2)), 'damaged-book'],
    ['a write-protected book', () => chmodSync(path, 0o444), 'read-only'],
  ])('%s is refused, and its bytes are left as they were', async (_, make, code) => {
    make();
    const before = hash();
    expect(codeOf(() => openDatabase(path))).toBe(code);
    expect([hash(), files()]).toEqual([before, ['home.outyard']]);
    const { answer, log, desk } = trialDesk(folder);
    const fault = await answer('book.open', { path });
    expect(fault).toMatchObject({ ok: false, code });
    if (!fault.ok) expect([fault.sentence.startsWith('home.outyard'), fault.mend !== undefined]).toEqual([true, true]);
    expect(log.filter((line) => line.includes('defect'))).toEqual([]);
    await desk.close();
    expect(hash()).toBe(before);
  });

  test('a folder and a file that is not there', () => {
    mkdirSync(join(folder, 'folder.outyard'));
    expect(codeOf(() => openDatabase(join(folder, 'folder.outyard')))).toBe('not-a-book');
    expect(codeOf(() => openDatabase(join(folder, 'gone.outyard')))).toBe('file-missing');
    expect(files()).not.toContain('gone.outyard');
  });

  test('another program’s database beside its log is not touched either', () => {
    const other = join(folder, 'other.outyard');
    const database = new Sqlite(other);
    database.pragma('journal_mode = WAL');
    database.exec('CREATE TABLE t (x); INSERT INTO t VALUES (1)');
    const before = [hash(other), hash(`${other}-wal`)];
    expect(codeOf(() => openDatabase(other))).toBe('not-a-book');
    expect([hash(other), hash(`${other}-wal`)]).toEqual(before);
    database.close();
  });

  test('a new book does not take the place of one that is there', () => {
    const before = hash();
    expect(codeOf(() => createDatabase(path))).toBe('file-exists');
    expect(hash()).toBe(before);
  });

  test('a new book in a folder that is a file', () => {
    expect(codeOf(() => createDatabase(join(path, 'inside.outyard')))).toBe('file-missing');
  });

  test('any flipped byte: the book opens or is refused with its sentence, and a refused one is left as it was', async () => {
    const sound = readFileSync(path);
    const refused = new Map<string, number>();
    const other = join(folder, 'flipped.outyard');
    const position = fc.oneof(fc.nat({ max: 99 }), fc.nat({ max: 4095 }), fc.nat({ max: sound.length - 1 }));
    await fc.assert(
      fc.asyncProperty(position, fc.integer({ min: 1, max: 255 }), async (at, mask) => {
        const bytes = Buffer.from(sound);
        bytes[at] = (bytes[at] ?? 0) ^ mask;
        writeFileSync(other, bytes);
        const code = codeOf(() => closeDatabase(openDatabase(other)));
        if (code !== null) {
          refused.set(code, (refused.get(code) ?? 0) + 1);
          expect(['not-a-book', 'newer-book', 'damaged-book']).toContain(code);
          expect(readFileSync(other).equals(bytes), `byte ${at} ^ ${mask}: the refused file was changed`).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
    expect(refused.get('damaged-book')).toBeGreaterThan(20);
  });

  test('any bit of the header flipped', () => {
    const sound = readFileSync(path);
    const other = join(folder, 'flipped.outyard');
    const codes = new Map<string, number>();
    for (let bit = 0; bit < 800; bit += 1) {
      const bytes = Buffer.from(sound);
      bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      writeFileSync(other, bytes);
      const code = codeOf(() => closeDatabase(openDatabase(other)));
      if (code === null) continue;
      codes.set(code, (codes.get(code) ?? 0) + 1);
      expect(readFileSync(other).equals(bytes), `bit ${bit}: the refused file was changed`).toBe(true);
    }
    // Magic text and application id are 20 bytes; the version's 32 bits are newer books but for the two that make it an older one.
    expect([codes.get('not-a-book'), codes.get('newer-book')]).toEqual([160, 30]);
    expect([...codes.keys()].toSorted()).toEqual(['damaged-book', 'newer-book', 'not-a-book']);
  });

  test('a flipped byte that opens is never a crash at the desk', async () => {
    const sound = readFileSync(path);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 4096, max: sound.length - 1 }), fc.integer({ min: 1, max: 255 }), async (at, mask) => {
        const bytes = Buffer.from(sound);
        bytes[at] = (bytes[at] ?? 0) ^ mask;
        const other = join(folder, 'flipped.outyard');
        writeFileSync(other, bytes);
        const { answer, desk } = trialDesk(folder);
        for (const ask of [() => answer('book.open', { path: other }), () => answer('export.journal', {}), () => answer('losses.review', { united: 'lost' }), () => answer('book.check', {})]) {
          const found = await ask();
          if (!found.ok) expect(found.sentence).not.toBe('');
        }
        await desk.close();
      }),
      { numRuns: 60 },
    );
  });
});

test('the books of earlier versions open', async () => {
  const museum = new URL('./museum/', import.meta.url);
  const books = readdirSync(museum).filter((name) => name.endsWith('.outyard'));
  expect(books).toEqual(['0001-journal.outyard', '0002-yards.outyard', '0003-papers.outyard']);
  for (const name of books) {
    const copy = join(folder, name);
    copyFileSync(new URL(name, museum), copy);
    // Books from before the fold kept what was seen are folded anew when they are opened, once.
    const before = sqliteStore(openDatabase(copy), copy);
    const [first, folded] = [await before.projectionText(), (await before.settings()).get('fold')];
    expect(first.includes('temper'), name).toBe(folded !== undefined);
    await before.close();
    await (await Book.open(copy)).store.close();
    const store = sqliteStore(openDatabase(copy), copy);
    expect(await store.findings()).toEqual([]);
    const [kept, text] = [await store.projectionText(), await exported(store)];
    expect(text).toContain('2024-05-01,inspection,,G1');
    expect([kept.includes('temper'), (await store.settings()).get('fold')]).toEqual([true, String(foldVersion)]);
    await store.rebuild();
    expect(await store.projectionText()).toBe(kept);
    const papers = [...(await store.papers('season note'))];
    expect(papers).toEqual(name.startsWith('0003') ? [['2024', '"Fewer splits"']] : []);
    const [details, stands] = [[...(await store.yardDetails())], [...(await store.stands())]];
    if (name.startsWith('0001')) expect([details, stands]).toEqual([[], []]);
    else expect([details, stands]).toEqual([[[1, { access: 'Gate code at the farm', notes: null, registration: 'OV-117', renewal: '2027-03-31' }]], [[1, [4, 1]]]]);
    await store.close();
  }
});
