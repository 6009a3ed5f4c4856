import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columns } from '#shared/entryForms.ts';
import { memoryStore } from '#core/book/memoryStore.ts';
import { importBytes } from '#core/desk/importFile.ts';
import { readCsv } from '#core/exchange/readCsv.ts';
import { exported, faultOf, imported, previewed } from '#tests/journal/trialBook.ts';
import { fileText, rows } from './fileText.ts';

const header = 'date,entry,yard,colony,origin,note';
const good = '2025-04-01,install,OO,G1,nuc,Zeile mit ß';
const utf16 = (text: string, mark: Buffer) => Buffer.concat([mark, Buffer.from(text, 'utf16le')]);

describe('a file that cannot be read as a whole', () => {
  test.each<[string, Uint8Array, string]>([
    ['an empty file', Buffer.alloc(0), 'is empty'],
    ['blank lines only', Buffer.from('\n\r\n  \n'), 'nothing but blank lines'],
    ['a picture', Buffer.from('89504e470d0a1a0a0000000d49484452', 'hex'), 'not a text file'],
    ['Latin-1', Buffer.from(`${header}\n${good}\n`, 'latin1'), 'may be Latin-1'],
    ['UTF-16, little end first', utf16(`${header}\n${good}\n`, Buffer.from([0xff, 0xfe])), 'UTF-16'],
    ['UTF-16, big end first', utf16(`${header}\n${good}\n`, Buffer.from([0, 0])).swap16().fill(0xfe, 0, 1).fill(0xff, 1, 2), 'UTF-16'],
    ['UTF-16 without its mark', Buffer.from(`${header}\n${good}\n`, 'utf16le'), 'not a text file'],
    ['no header', Buffer.from(`${good}\n`), 'no header row'],
    ['prose', Buffer.from('Dear neighbour,\nthe bees are well.\n'), 'no header row'],
    ['semicolons', Buffer.from(`${header.replaceAll(',', ';')}\n`), 'semicolons'],
    ['a column twice', Buffer.from(`${header},Colony\n${good},G2\n`), 'the column “colony” twice'],
    ['a quotation mark never closed', Buffer.from(`${header}\n2025-04-01,note,,,,"never\n${good}\n`), 'cannot be read near line'],
    ['more than 64 MiB', Buffer.alloc(64 * 1024 * 1024 + 1, 97), 'larger than 64 MiB'],
  ])('%s', async (_, bytes, sentence) => {
    const store = memoryStore();
    const fault = await faultOf(() => importBytes(store, bytes, 'walk.csv', 'month-first'));
    expect(fault).toMatchObject({ code: 'file-unreadable', sentence: expect.stringContaining(sentence) });
    expect(fault?.sentence.startsWith('walk.csv')).toBe(true);
    expect(fault?.mend).toMatch(/[.…]$/);
    expect(await store.position()).toBe(0);
  });

  test('random bytes never throw', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        const answer = readCsv(bytes, 'walk.csv');
        if (!answer.ok) expect(answer.code).toBe('file-unreadable');
      }),
      { numRuns: 500 },
    );
  });
});

describe('a file that is read', () => {
  test.each<[string, string]>([
    ['with a byte-order mark', `\uFEFF${header}\n${good}\n`],
    ['with CRLF', `${header}\r\n${good}\r\n`],
    ['with CR', `${header}\r${good}\r`],
    ['without a last line end', `${header}\n${good}`],
    ['with a header in capitals and blanks', `${header.toUpperCase().replaceAll(',', ' , ')}\n${good}\n`],
    ['with empty columns at the end', `${header},,\n${good},,\n`],
    ['with an unknown column that stays empty', `${header},weather\n${good},\n`],
    ['with columns in another order', `note,origin,colony,yard,entry,date\nZeile mit ß,nuc,G1,OO,install,2025-04-01\n`],
    ['with short rows', `${header},price\n${good}\n`],
  ])('%s', async (_, text) => {
    const found = await previewed(memoryStore(), text);
    expect([found.read, found.toSortOut]).toEqual([1, []]);
    expect(found.entries[0]?.body).toMatchObject({ label: 'G1', origin: 'nuc', note: 'Zeile mit ß' });
  });

  test('with its header only', async () => {
    const found = await previewed(memoryStore(), `${header}\n`);
    expect([found.read, found.entries, found.repeats, found.toSortOut]).toEqual([0, [], [], []]);
  });

  test('a cell beyond the header, and one under an unknown column, are named and nothing else is lost', async () => {
    const found = await previewed(memoryStore(), `${header},weather\n${good},\n2025-04-02,note,,,,calm,,\n2025-04-03,note,,,,calm,,surplus\n2025-04-04,note,,,,calm,sunny\n`);
    expect(found.toSortOut).toMatchObject([{ line: 4, column: null, value: 'surplus' }, { line: 5, column: 'weather', value: 'sunny' }]);
    expect([found.read, found.entries.length]).toEqual([4, 2]);
  });

  test('a formula is set aside, a plus, a minus and an at sign in a note are not', async () => {
    const found = await previewed(memoryStore(), fileText(rows('2025-04-01 note | note==HYPERLINK("x")', '2025-04-02 note | note=+1 box', '2025-04-03 note | note=-1 box', '2025-04-04 note | note=@home')));
    expect(found.toSortOut).toMatchObject([{ line: 2, column: 'note', sentence: expect.stringContaining('formula') }]);
    expect(found.entries).toHaveLength(3);
  });

  test('a cell of ten million letters is set aside, shown short', async () => {
    const found = await previewed(memoryStore(), `${header}\n${good}\n2025-04-02,note,,,,${'x'.repeat(10_000_000)}\n2025-04-03,note,,,,calm\n`);
    expect(found.toSortOut).toMatchObject([{ line: 3, column: 'note', sentence: expect.stringContaining('10000000 characters') }]);
    expect(found.toSortOut[0]?.value.length).toBeLessThan(100);
    expect(found.entries).toHaveLength(2);
  });

  test('200,000 rows in bounded time and memory, all of them entered and repeated', async () => {
    const lines = [header, good];
    for (let at = 0; lines.length <= 200_000; at += 1) lines.push(`2025-${String(4 + (at % 8)).padStart(2, '0')}-${String(1 + (at % 28)).padStart(2, '0')},inspection,,G1,,look ${at}`);
    const bytes = Buffer.from(lines.join('\n'), 'utf8');
    const store = memoryStore();
    const started = performance.now();
    const heap = process.memoryUsage().heapUsed;
    const found = await importBytes(store, bytes, 'large.csv', 'month-first');
    const grown = (process.memoryUsage().heapUsed - heap) / bytes.length;
    expect([found.read, found.entries.length, found.toSortOut.length]).toEqual([200_000, 200_000, 0]);
    // Measured 4.3 s and 45 times the file; a quadratic step or a copy per row would be far beyond both.
    expect(performance.now() - started).toBeLessThan(45_000);
    expect(grown).toBeLessThan(200);
  });
});

const cell = fc.oneof(
  fc.constantFrom('', '', '', 'G1', 'G2', 'OO', '2025-04-19', '2025-02-30', 'install', 'inspection', 'split', 'loss', 'combine', 'mites', 'nuc', '3', '-1', '4,5', '1e5', '=1', 'yes', 'lb', 'a\nb', '"', 'x,y', "'", ';'),
  fc.string({ unit: 'grapheme', maxLength: 12 }),
);
const anyFile = fc.array(fc.array(cell, { minLength: 1, maxLength: columns.length + 2 }), { minLength: 1, maxLength: 25 });
const quoted = (text: string) => `"${text.replaceAll('"', '""')}"`;

test('garbage in the cells never throws, never half-enters, and every refusal names a line of the file', async () => {
  await fc.assert(
    fc.asyncProperty(anyFile, fc.shuffledSubarray([...columns], { minLength: columns.length }), async (table, heads) => {
      const lines = [heads.join(','), ...table.map((cells) => cells.map(quoted).join(','))];
      const text = `${lines.join('\n')}\n`;
      const store = memoryStore();
      const base = fileText(rows('2025-01-01 install | yard=OO | colony=G1 | origin=nuc'));
      await imported(store, base);
      const found = await imported(store, text);
      expect(found.entries.length + found.repeats.length + found.toSortOut.length).toBe(found.read);
      const last = text.split('\n').length;
      const named = [...found.toSortOut.map(({ line }) => line), ...found.repeats];
      for (const line of named) expect(line > 1 && line < last, String(line)).toBe(true);
      expect(new Set(named).size).toBe(named.length);
      for (const { sentence, column } of found.toSortOut) {
        expect(sentence).toMatch(/\S.*[.]$/s);
        if (column !== null) expect(heads as string[]).toContain(column);
      }
      const kept = await store.projectionText();
      await store.rebuild();
      expect(await store.projectionText()).toBe(kept);
      const again = await imported(store, text);
      expect([again.entries.length, again.toSortOut.length]).toEqual([0, found.toSortOut.length]);
      const out = await exported(store);
      expect((await imported(memoryStore(), out)).entries.length).toBe(found.entries.length + 1);
      await store.close();
    }),
    { numRuns: 150 },
  );
});
