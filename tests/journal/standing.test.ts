import { beforeEach, expect, test } from 'vitest';
import type { Cells } from '#shared/entryForms.ts';
import type { Store } from '#core/book/store.ts';
import { founding } from './anyRows.ts';
import { acts, exported, faultOf, standingEntries, trialBook } from './trialBook.ts';

let store: Store;
beforeEach(async () => {
  store = await trialBook();
  await acts.enter(store, founding);
});

async function idOf(kind: string, at = 0) {
  const found = (await standingEntries(store)).filter((entry) => entry.kind === kind)[at];
  if (found === undefined) throw new Error(`no ${kind} stands`);
  return found.id;
}

const enter = (...rows: Cells[]) => acts.enter(store, rows);

test('a back-dated row about two colonies may be late for only one of them', async () => {
  await enter({ date: '2024-06-01', entry: 'inspection', colony: 'G1', frames_bees: '8' });
  await enter({ date: '2024-05-01', entry: 'split', colony: 'G2', new_colony: 'N5' });
  // 2 May lies before G1's last record and after all of G2's.
  expect(await faultOf(() => enter({ date: '2024-05-02', entry: 'combine', colony: 'G2', into: 'G1' }))).toBeNull();
  const kept = await store.projectionText();
  await store.rebuild();
  expect(await store.projectionText()).toBe(kept);
});

test('the first entry of a colony with daughters is not struck from under them, and each entry in the way is named', async () => {
  await enter({ date: '2024-05-01', entry: 'split', colony: 'G1', new_colony: 'N5' }, { date: '2024-05-20', entry: 'split', colony: 'N5', new_colony: 'N6' });
  const fault = await faultOf(async () => acts.strike(store, await idOf('install')));
  expect(fault).toMatchObject({ code: 'refused', sentence: expect.stringContaining('split') });
  expect(await exported(store)).toContain('N6');
});

test('an entry that began a colony is not replaced by a split of that colony from itself', async () => {
  const fault = await faultOf(async () => acts.replace(store, await idOf('install'), { date: '2024-02-20', entry: 'split', colony: 'G1', new_colony: 'G1' }));
  expect(fault).toMatchObject({ code: 'refused', rows: [{ column: 'colony', value: 'G1' }] });
});

test('a replaced first entry keeps the colony, its records and its label’s new spelling', async () => {
  await enter({ date: '2024-05-01', entry: 'inspection', colony: 'G1', frames_bees: '8' });
  await acts.replace(store, await idOf('install'), { date: '2024-02-19', entry: 'install', yard: 'LB', colony: 'G10', origin: 'nuc' });
  const text = await exported(store);
  expect(text).toContain('2024-02-19,install,LB,G10,nuc');
  expect(text).toContain('2024-05-01,inspection,,G10');
  await acts.undo(store);
  expect(await exported(store)).toContain('2024-05-01,inspection,,G1,');
});

test('the day of an end may be moved on, and it stays the end of the same colony when its label is carried again', async () => {
  await enter({ date: '2024-05-01', entry: 'loss', colony: 'G1', cause: 'robbing' });
  await acts.replace(store, await idOf('loss'), { date: '2024-05-20', entry: 'loss', colony: 'G1', cause: 'robbing' });
  expect(await exported(store)).toContain('2024-05-20,loss,,G1');
  await enter({ date: '2024-06-01', entry: 'install', yard: 'OO', colony: 'G1', origin: 'nuc' });
  await acts.replace(store, await idOf('loss'), { date: '2024-05-30', entry: 'sale', colony: 'G1' });
  const before = await exported(store);
  expect(before).toContain('2024-05-30,sale,,G1');
  const fault = await faultOf(async () => acts.replace(store, await idOf('sale'), { date: '2024-06-03', entry: 'loss', colony: 'G1' }));
  expect(fault?.sentence).toContain('G1');
  expect(await exported(store)).toBe(before);
});

test('a round is refused whole, each refusal at its own row', async () => {
  await enter({ date: '2024-06-01', entry: 'install', yard: 'OO', colony: 'N6', origin: 'nuc' });
  const before = await exported(store);
  const fault = await faultOf(() =>
    enter(
      { date: '2024-05-01', entry: 'inspection', colony: 'nobody' },
      { date: '2024-05-02', entry: 'install', yard: 'OO', colony: 'N6', origin: 'nuc' },
      { date: '2024-05-03', entry: 'inspection', colony: 'G1', frames_bees: '4' },
    ),
  );
  expect(fault?.rows?.map(({ line, column }) => [line, column])).toEqual([[0, 'colony'], [1, 'colony']]);
  expect(await exported(store)).toBe(before);
});

test('the queen who moves with a split keeps her year, mark and name, whichever was written first', async () => {
  await enter({ date: '2024-05-10', entry: 'split', colony: 'G1', new_colony: 'N5', queen: 'moves', new_queen: 'cell', queen_year: '2024' });
  await enter({ date: '2024-05-01', entry: 'queen', colony: 'G1', what: 'marked' });
  const [mother, daughter] = [(await store.statesByLabel(['G1']))[0], (await store.statesByLabel(['N5']))[0]];
  expect(daughter?.reigns).toMatchObject([{ year: 2023, marked: true, until: null, queen: mother?.reigns[0]?.queen }]);
  expect(mother?.reigns).toMatchObject([{ ending: 'moved with a split', until: '2024-05-10' }, { year: 2024, marked: false, until: null }]);
});

test('supers never come off that were not on, also by a back-dated row', async () => {
  await enter({ date: '2024-05-01', entry: 'supers on', colony: 'G1', box: 'medium', count: '2' }, { date: '2024-07-01', entry: 'supers off', colony: 'G1', box: 'medium', count: '2' });
  const fault = await faultOf(() => enter({ date: '2024-06-01', entry: 'supers off', colony: 'G1', box: 'medium', count: '1' }));
  expect(fault).toMatchObject({ code: 'refused', rows: [{ column: 'date' }] });
  expect(fault?.sentence).toMatch(/1 July 2024.*only 1 is recorded/s);
});

test('a colony ends once', async () => {
  await enter({ date: '2024-07-01', entry: 'loss', colony: 'G1', cause: 'mites' });
  for (const kind of ['loss', 'sale', 'gift', 'absconded', 'inspection']) {
    expect((await faultOf(() => enter({ date: '2024-07-01', entry: kind, colony: 'G1', note: kind })))?.sentence).toContain('was recorded lost on 1 July 2024');
  }
  // Before its end it may still be looked at.
  expect(await faultOf(() => enter({ date: '2024-06-30', entry: 'inspection', colony: 'G1' }))).toBeNull();
  expect((await faultOf(() => enter({ date: '2024-06-30', entry: 'absconded', colony: 'G1' })))?.sentence).toContain('would contradict the entry of kind “loss”');
});

test('a strike is not undone into an entry that was written again meanwhile', async () => {
  const seen: Cells = { date: '2024-05-01', entry: 'inspection', colony: 'G1', frames_bees: '8' };
  await enter(seen);
  const { gesture } = await acts.strike(store, await idOf('inspection'));
  await enter(seen);
  expect(await faultOf(() => acts.undo(store, gesture))).toMatchObject({ code: 'refused', sentence: expect.stringContaining('entered again meanwhile') });
  expect((await standingEntries(store)).filter((entry) => entry.kind === 'inspection')).toHaveLength(1);
});

test('a replacement by the same cells can be undone and brought back', async () => {
  const seen: Cells = { date: '2024-05-01', entry: 'inspection', colony: 'G1', frames_bees: '8' };
  await enter(seen);
  const text = await exported(store);
  await acts.replace(store, await idOf('inspection'), seen);
  await acts.undo(store);
  await acts.redo(store);
  expect(await exported(store)).toBe(text);
});

test('an act taken back first does not come back when the strike of its entry is taken back after it', async () => {
  const store = await trialBook();
  const made = await acts.enter(store, founding.slice(0, 1));
  const [entry] = await standingEntries(store);
  if (entry === undefined) throw new Error('nothing was entered');
  const struck = await acts.strike(store, entry.id);
  await acts.undo(store, made.gesture);
  await acts.undo(store, struck.gesture);
  expect([await standingEntries(store), await store.states()]).toEqual([[], []]);
  // Brought back in the other order: the strike first, which strikes nothing yet, then what it struck.
  await acts.redo(store);
  await acts.redo(store);
  expect(await standingEntries(store)).toEqual([]);
  await acts.undo(store, struck.gesture);
  expect((await standingEntries(store)).map(({ id }) => id)).toEqual([entry.id]);
});

test('what was brought back is undone again by the act that brought it back, and only once', async () => {
  const store = await trialBook();
  await acts.enter(store, [{ date: '2026-04-20', entry: 'install', yard: 'OO', colony: 'G1', origin: 'package' }]);
  await acts.undo(store);
  const back = await acts.redo(store);
  expect(await standingEntries(store)).toHaveLength(1);
  await acts.undo(store, back.gesture);
  expect(await standingEntries(store)).toEqual([]);
  expect((await faultOf(() => acts.undo(store, back.gesture)))?.sentence).toContain('was undone already');
  await acts.redo(store);
  expect(await standingEntries(store)).toHaveLength(1);
  await store.close();
});
