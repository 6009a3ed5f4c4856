import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders, periodDays } from '#shared/seasons.ts';
import { keptRows } from '#core/desk/keptRows.ts';
import { ledgerBalances, seasonYards } from '#core/losses/seasonLedger.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { balances, yardCounts } from '#core/losses/yardCounts.ts';
import { labelClash } from '#core/journal/refold.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';
import type { Store } from '#core/book/store.ts';
import { anyAct, anyRow, founding, type Act } from './anyRows.ts';
import { acts, exported, faultOf, imported, standingEntries, trialBook } from './trialBook.ts';

const expectedCodes = new Set(['refused', 'nothing-to-enter']);

/** Does the act; true if it changed the book. A refusal must be an expected one. */
async function attempt(store: Store, act: Act): Promise<boolean> {
  const fault = await faultOf(() => doIt(store, act));
  if (fault === null) return act.what !== 'import';
  expect(expectedCodes.has(fault.code), `${fault.code}: ${fault.sentence}`).toBe(true);
  return false;
}

async function doIt(store: Store, act: Act): Promise<unknown> {
  const standing = await standingEntries(store);
  switch (act.what) {
    case 'enter':
      return acts.enter(store, act.rows);
    case 'import':
      return imported(store, writeCsv(act.rows));
    case 'strike': {
      const entry = standing[act.at % Math.max(1, standing.length)];
      return entry === undefined ? null : acts.strike(store, entry.id);
    }
    case 'replace': {
      const entry = standing[act.at % Math.max(1, standing.length)];
      return entry === undefined ? null : acts.replace(store, entry.id, act.cells);
    }
    case 'undo':
      return acts.undo(store);
    case 'undo that': {
      const gestures = await store.gestures();
      const gesture = gestures[act.at % Math.max(1, gestures.length)];
      return gesture === undefined ? null : acts.undo(store, gesture.id);
    }
    case 'redo':
      return acts.redo(store);
    case 'mend':
    case 'set aside': {
      const waiting = (await keptRows(store)).filter(({ state }) => state === 'waiting');
      const row = waiting[act.at % Math.max(1, waiting.length)];
      if (row === undefined) return null;
      return act.what === 'mend' ? acts.mend(store, row.key, act.cells) : acts.setAside(store, row.key);
    }
    case 'enter ready':
      return acts.enterReady(store);
  }
}

async function checkBook(store: Store, periods: readonly (readonly [number, number])[]): Promise<void> {
  const kept = await store.projectionText();
  const states = await store.states();
  expect(JSON.stringify(states)).toBe(JSON.stringify(statesAsOf(await standingEntries(store))));
  await store.rebuild();
  expect(await store.projectionText()).toBe(kept);
  expect(await store.findings()).toEqual([]);

  for (const state of states) for (const count of Object.values(state.supers)) expect(count).toBeGreaterThanOrEqual(0);
  for (const label of new Set(states.map((state) => state.label))) expect(labelClash(states.filter((state) => state.label === label))).toBeNull();

  const yards = (await store.yards()).map((yard) => yard.id);
  for (const [start, length] of periods) {
    const from = addDays(day('2024-01-01'), start);
    for (const counts of yardCounts(states, yards, from, addDays(from, length)).values()) expect(balances(counts), JSON.stringify({ from, length, counts })).toBe(true);
  }
  const asOf = day('2026-11-25');
  for (const season of [2023, 2024, 2025, 2026]) {
    const all = seasonYards(states, await store.yards(), season, asOf, defaultBorders);
    expect(ledgerBalances(all), JSON.stringify({ season, all })).toBe(true);
    const next = seasonYards(states, await store.yards(), season + 1, asOf, defaultBorders);
    // A season begins with what the one before left, but for colonies written down as an opening balance within it.
    all.forEach(({ yard, counts }, at) => {
      const { from, until } = periodDays(season + 1, 'year');
      const openings = states.filter((state) => state.origin === 'opening' && state.start >= from && state.start < until && state.stays[0]?.yard === yard.id).length;
      if (season < 2026) expect(next[at]?.counts.year.opening).toBe(counts.year.closing + openings);
    });
  }
}

const anyActs = fc.array(anyAct, { minLength: 5, maxLength: 30 });
const anyPeriods = fc.array(fc.tuple(fc.nat({ max: 500 }), fc.nat({ max: 400 })), { minLength: 12, maxLength: 12 });

test('after any acts the projections are the fold of what stands, and every yard’s account balances', async () => {
  let changed = 0;
  await fc.assert(
    fc.asyncProperty(anyActs, anyPeriods, async (sequence, periods) => {
      const store = await trialBook();
      await acts.enter(store, founding);
      for (const act of sequence) if (await attempt(store, act)) changed += 1;
      await checkBook(store, periods);
      await store.close();
    }),
    { numRuns: 120 },
  );
  // A generator whose rows are nearly all refused would prove nothing.
  expect(changed).toBeGreaterThan(300);
});

test('the export of any book makes the same book, and changes nothing in its own', async () => {
  await fc.assert(
    fc.asyncProperty(anyActs, async (sequence) => {
      const store = await trialBook();
      await acts.enter(store, founding);
      for (const act of sequence) await attempt(store, act);
      const text = await exported(store);

      const again = await imported(store, text);
      expect([again.entries.length, again.toSortOut.length, again.repeats.length]).toEqual([0, 0, again.read]);
      expect(await exported(store)).toBe(text);

      const other = await trialBook();
      const found = await imported(other, text);
      expect([found.toSortOut, found.repeats, found.entries.length]).toEqual([[], [], found.read]);
      expect(await exported(other)).toBe(text);
      await store.close();
      await other.close();
    }),
    { numRuns: 80 },
  );
});

/** Undoes what stands, the last first, until the desk says that there is nothing left; answers how many acts that were. */
async function undoAll(store: Store): Promise<number> {
  for (let undone = 0; ; undone += 1) {
    const fault = await faultOf(() => acts.undo(store));
    if (fault === null) continue;
    expect(fault).toMatchObject({ code: 'nothing-to-enter', sentence: 'There is nothing to undo.' });
    return undone;
  }
}

test('after any acts, undone and brought back in any order, undo of everything is the empty book', async () => {
  let kept = 0;
  await fc.assert(
    fc.asyncProperty(anyActs, async (sequence) => {
      const store = await trialBook();
      const [text, projections] = [await exported(store), await store.projectionText()];
      await acts.enter(store, founding);
      for (const act of sequence) await attempt(store, act);
      kept += (await keptRows(store)).length;
      await undoAll(store);
      expect(await exported(store)).toBe(text);
      expect(await store.states()).toEqual([]);
      expect((await keptRows(store)).filter(({ state }) => state !== 'taken back')).toEqual([]);
      // Nothing stands, and nothing of what stood is left in a projection but that it is struck.
      expect((await store.projectionText()).split('\n').filter((line) => line.startsWith('colony\t'))).toEqual(projections.split('\n').filter((line) => line.startsWith('colony\t')));
      await checkBook(store, []);
      await store.close();
    }),
    { numRuns: 80 },
  );
  expect(kept).toBeGreaterThan(100);
});

test('undoing everything leads back to the start, and redoing everything to the end', async () => {
  await fc.assert(
    fc.asyncProperty(anyActs, async (sequence) => {
      const store = await trialBook();
      await acts.enter(store, founding);
      const start = await exported(store);
      const startStates = JSON.stringify(await store.states());
      const trail: string[] = [];
      for (const act of sequence) {
        if (act.what === 'undo' || act.what === 'undo that' || act.what === 'redo' || act.what === 'set aside') continue;
        const before = await store.position();
        await attempt(store, act);
        if ((await store.position()) !== before) trail.push(await exported(store));
      }
      for (let left = trail.length; left > 0; left -= 1) {
        expect(await exported(store)).toBe(trail[left - 1]);
        await acts.undo(store);
      }
      expect(await exported(store)).toBe(start);
      expect(JSON.stringify(await store.states())).toBe(startStates);
      for (const text of trail) {
        await acts.redo(store);
        expect(await exported(store)).toBe(text);
      }
      await checkBook(store, []);
      await store.close();
    }),
    { numRuns: 50 },
  );
});

test('a refused row leaves nothing behind', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(anyRow, { minLength: 1, maxLength: 15 }), async (rows: Cells[]) => {
      const store = await trialBook();
      await acts.enter(store, founding);
      for (const row of rows) {
        const [projections, position] = [await store.projectionText(), await store.position()];
        const fault = await faultOf(() => acts.enter(store, [{ date: '2024-09-09', entry: 'note', note: 'goes with it or not at all' }, row]));
        if (fault === null) continue;
        expect(fault.rows?.length).toBeGreaterThan(0);
        expect([await store.projectionText(), await store.position()]).toEqual([projections, position]);
      }
      await store.close();
    }),
    { numRuns: 60 },
  );
});
