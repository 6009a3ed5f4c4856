import { beforeEach, expect, test } from 'vitest';
import type { Store } from '#core/book/store.ts';
import { memoryStore } from '#core/book/memoryStore.ts';
import { acts, exported, imported, previewed, standingEntries } from '#tests/journal/trialBook.ts';
import { fileText, row, rows } from './fileText.ts';

const season = rows(
  '2025-04-01 install | yard=OO | colony=G1 | origin=package',
  '2025-05-01 inspection | colony=G1 | frames_bees=8 | note=line one\nline two',
  '2025-05-02 split | colony=G1 | new_colony=G2',
  '2025-06-01 loss | colony=G2',
);

let store: Store;
beforeEach(() => {
  store = memoryStore();
});

test('a file imported twice changes nothing', async () => {
  await imported(store, fileText(season));
  const [text, position] = [await exported(store), await store.position()];
  const again = await imported(store, fileText(season));
  expect([again.read, again.entries.length, again.repeats, again.toSortOut, again.living]).toEqual([4, 0, [2, 3, 5, 6], [], 1]);
  expect([await exported(store), await store.position()]).toEqual([text, position]);
});

test('a repeat is told by what the cells say, not by how they are written', async () => {
  await imported(store, fileText(season));
  const again = await previewed(store, 'entry,colony,yard,date,origin,note,frames_bees\nInstall,G1,oo,4/1/2025,PACKAGE,,\ninspection, G1 ,,2025-05-01,,"line one\r\nline two",8.0\n');
  expect([again.entries.length, again.repeats, again.toSortOut]).toEqual([0, [2, 3], []]);
});

test('a repeat within the file is listed, the first row is taken, also of rows that cannot be', async () => {
  const found = await previewed(store, fileText([...season, ...season.slice(1, 2), row('2025-13-01 note | note=n'), row('2025-13-01 note | note=n'), row('2025-05-05 inspection | colony=G9'), row('2025-05-05 inspection | colony=G9')]));
  expect([found.read, found.entries.length]).toEqual([9, 4]);
  expect(found.repeats).toEqual([7, 10, 12]);
  expect(found.toSortOut.map(({ line }) => line)).toEqual([9, 11]);
});

test('a row whose cells stand outside the known columns is a repeat like any other', async () => {
  const found = await previewed(store, 'date,entry,note,weather\n2025-05-01,note,calm,sunny\n2025-05-01,note,calm,sunny\n2025-05-01,note,calm,rain\n');
  expect([found.read, found.entries.length, found.repeats]).toEqual([3, 0, [3]]);
  expect(found.toSortOut).toMatchObject([{ line: 2, column: 'weather', value: 'sunny' }, { line: 4, column: 'weather', value: 'rain' }]);
});

test('line numbers are the file’s own, with quoted line breaks, blank lines and any line end', async () => {
  for (const end of ['\n', '\r\n', '\r']) {
    const text = ['date,entry,yard,colony,origin,note', '2025-04-01,install,OO,G1,nuc,"one', 'two', 'three"', '', '2025-04-02,inspection,,G9,,"a', 'b"', ',,,,,', '2025-04-03,inspection,,G8,,'].join(end);
    const found = await previewed(memoryStore(), text);
    expect(found.toSortOut.map(({ line, value }) => [line, value])).toEqual([[6, 'G9'], [9, 'G8']]);
    expect(found.read).toBe(3);
    expect(found.entries[0]?.body.note).toBe('one\ntwo\nthree');
  }
});

test('days are read in the book’s own order', async () => {
  const text = 'date,entry,note,end_date\n4/5/2025,note,slashes,\n4.5.2025,note,dots,\n2025-05-04,note,iso,\n19/4/2025,note,big first,\n4/19/2025,note,big second,\n';
  const monthFirst = await previewed(store, text, 'month-first');
  expect(monthFirst.entries.map(({ day, body }) => [day, body.note])).toEqual([['2025-04-05', 'slashes'], ['2025-04-19', 'big second'], ['2025-05-04', 'dots'], ['2025-05-04', 'iso']]);
  expect(monthFirst.toSortOut).toMatchObject([{ line: 5, column: 'date', value: '19/4/2025' }]);
  const dayFirst = await previewed(store, text, 'day-first');
  expect(dayFirst.entries.map(({ day, body }) => [day, body.note])).toEqual([['2025-04-19', 'big first'], ['2025-05-04', 'slashes'], ['2025-05-04', 'dots'], ['2025-05-04', 'iso']]);
  expect(dayFirst.toSortOut).toMatchObject([{ line: 6, column: 'date', value: '4/19/2025' }]);
});

test('earlier records find their place in a book with later ones', async () => {
  await imported(store, fileText([...season, row('2025-09-01 install | yard=OO | colony=G2 | origin=swarm')]));
  const found = await imported(store, fileText(rows(
    '2025-05-20 inspection | colony=G2 | frames_bees=3',
    '2025-03-31 inspection | colony=G1',
    '2025-06-02 inspection | colony=G2',
    '2025-03-01 install | yard=OO | colony=G1 | origin=nuc',
    '2025-03-01 install | yard=OO | colony=G7 | origin=nuc',
    '2025-03-20 loss | colony=G7',
  )));
  expect(found.toSortOut).toMatchObject([
    { line: 3, column: 'colony', value: 'G1', sentence: expect.stringContaining('begins only on 1 April 2025') },
    { line: 4, column: 'colony', value: 'G2', sentence: expect.stringContaining('was recorded lost on 1 June 2025') },
    { line: 5, column: 'colony', value: 'G1', sentence: expect.stringContaining('another cannot take it on 1 April 2025') },
  ]);
  expect([found.read, found.entries.length, found.repeats.length]).toEqual([6, 3, 0]);
  const kept = await store.projectionText();
  await store.rebuild();
  expect(await store.projectionText()).toBe(kept);
});

test('a label is free again once its colony has ended, and the old record stays its own', async () => {
  const found = await imported(store, fileText([...season, row('2025-06-01 install | yard=LB | colony=G2 | origin=nuc'), row('2025-07-01 inspection | colony=G2')]));
  expect(found.toSortOut).toEqual([]);
  expect((await store.statesByLabel(['G2'])).map(({ origin, how, looks }) => [origin, how, looks.length])).toEqual([['split', 'lost', 0], ['nuc', 'alive', 1]]);
});

test('yards are made by installing rows alone, whatever the order of the rows', async () => {
  const found = await imported(store, fileText(rows('2025-05-01 move | colony=G1 | to_yard=far', '2025-06-01 move | colony=G1 | to_yard=Hill', '2025-04-01 install | yard=OO | colony=G1 | origin=nuc', '2025-07-01 install | yard=Far | colony=G2 | origin=nuc')));
  expect(found.newYards.map(({ code }) => code)).toEqual(['OO', 'Far']);
  expect(found.toSortOut).toMatchObject([{ line: 3, column: 'to_yard', value: 'Hill' }]);
  expect((await store.yards()).map(({ code }) => code)).toEqual(['Far', 'OO']);
});

test('a yard is not made by a row that is itself set aside', async () => {
  const found = await imported(store, fileText(rows('2025-04-01 install | yard=OO | colony=G1 | origin=nuc', '2025-04-02 install | yard=Typo | colony=G1 | origin=nuc')));
  expect([found.newYards.map(({ code }) => code), found.toSortOut.length]).toEqual([['OO'], 1]);
});

test.each(['shed', 'Supplier', 'scrap', 'all'])('a yard is not called “%s”, which means something else', async (yard) => {
  const found = await previewed(store, fileText([row(`2025-04-01 install | yard=${yard} | colony=G1 | origin=nuc`)]));
  expect(found.toSortOut).toMatchObject([{ line: 2, column: 'yard', value: yard, sentence: expect.stringContaining('means something else') }]);
});

test('an import that was undone can be entered anew, and brought back it is not entered twice', async () => {
  const file = fileText(season);
  await imported(store, file);
  const text = await exported(store);
  await acts.undo(store);
  expect([await standingEntries(store), await store.states()]).toEqual([[], []]);
  expect((await previewed(store, file)).entries).toHaveLength(4);
  await acts.redo(store);
  expect(await exported(store)).toBe(text);
  expect((await previewed(store, file)).repeats).toHaveLength(4);
  await acts.undo(store);
  expect((await imported(store, file)).entries).toHaveLength(4);
  expect(await exported(store)).toBe(text);
});

test('a struck row does not come back by importing its file again, nor after undo and redo of the strike', async () => {
  const file = fileText(season);
  await imported(store, file);
  const seen = (await standingEntries(store)).find((entry) => entry.kind === 'inspection');
  if (seen === undefined) throw new Error('the inspection is not there');
  await acts.strike(store, seen.id);
  expect((await previewed(store, file)).entries).toEqual([]);
  await acts.undo(store);
  await acts.redo(store);
  expect((await standingEntries(store)).some((entry) => entry.kind === 'inspection')).toBe(false);
  expect((await previewed(store, file)).entries).toEqual([]);
});

test('a corrected row does not come back beside its correction', async () => {
  const file = fileText(season);
  await imported(store, file);
  const seen = (await standingEntries(store)).find((entry) => entry.kind === 'inspection');
  if (seen === undefined) throw new Error('the inspection is not there');
  await acts.replace(store, seen.id, row('2025-05-01 inspection | colony=G1 | frames_bees=9'));
  await acts.undo(store);
  await acts.redo(store);
  expect((await previewed(store, file)).entries).toEqual([]);
});

test('what was typed at the desk with any line end comes back from its export as the same', async () => {
  await imported(store, fileText(season));
  await acts.enter(store, [{ date: '2025-05-03', entry: 'note', note: 'one\r\ntwo\rthree' }]);
  const text = await exported(store);
  expect((await previewed(store, text)).entries).toEqual([]);
  const other = memoryStore();
  await imported(other, text);
  expect(await exported(other)).toBe(text);
});

test('signs that no file can carry are refused at the desk, not lost on the way out', async () => {
  await imported(store, fileText(season));
  for (const note of ['nul \u0000 sign', 'half a pair \ud800']) {
    await expect(acts.enter(store, [{ date: '2025-05-03', entry: 'note', note }])).rejects.toThrow('cannot be kept');
  }
});
