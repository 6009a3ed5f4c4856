import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Store } from '#core/book/store.ts';
import type { EntryId } from '#shared/brands.ts';
import { consequenceOf } from '#core/desk/mendingHandlers.ts';
import type { Cells } from '#shared/entryForms.ts';
import { anyRow, founding } from './anyRows.ts';
import { acts, exported, faultOf, standingEntries, trialBook } from './trialBook.ts';

/** What a person would call a change: everything but the ids and places of entries. */
function plain(state: ColonyState | undefined): string {
  if (state === undefined) return 'not there';
  return JSON.stringify({
    ...state, startEntry: 0, startPlace: 0, endEntry: 0, endPlace: 0, lastDay: '',
    stays: state.stays.map(({ yard, from, until }) => [yard, from, until]),
    reigns: state.reigns.map(({ year, source, marked, since, until, ending }) => [year, source, marked, since, until, ending]),
  });
}

const statesOf = async (store: Store) => new Map((await store.states()).map((state) => [state.id, structuredClone(state)]));
const idOf = async (store: Store, kind: string) => {
  const found = (await standingEntries(store)).find((entry) => entry.kind === kind);
  if (found === undefined) throw new Error(`no standing ${kind}`);
  return found.id;
};

/** Asks, then does; what was said must be what happens. True if it was allowed. */
async function saidAndDone(store: Store, id: EntryId, cells: Cells | undefined): Promise<boolean> {
  const [before, text, position] = [await statesOf(store), await exported(store), await store.position()];
  const said = await consequenceOf(store, id, cells, 'month-first');
  expect([await exported(store), await store.position()]).toEqual([text, position]);

  const fault = await faultOf(() => (cells === undefined ? acts.strike(store, id) : acts.replace(store, id, cells)));
  expect(said.allowed, fault?.sentence ?? 'it was done').toBe(fault === null);
  expect(said.refusal === null).toBe(said.allowed);
  if (fault !== null) {
    expect(said.refusal?.sentence).toBe(fault.sentence);
    expect((said.refusal?.contradictions.length ?? 0) + (said.refusal?.cells.length ?? 0)).toBe(fault.rows?.length ?? 0);
    return false;
  }
  const after = await statesOf(store);
  const listed = new Map(said.colonies.map((colony) => [colony.id, colony]));
  for (const colony of said.colonies) {
    expect(colony.sentences.length).toBeGreaterThan(0);
    expect([colony.there, colony.end]).toEqual([after.has(colony.id), after.get(colony.id)?.end ?? null]);
  }
  for (const id of new Set([...before.keys(), ...after.keys()])) {
    if (plain(before.get(id)) !== plain(after.get(id))) expect(listed.has(id), `colony ${id}: ${plain(before.get(id))} then ${plain(after.get(id))}`).toBe(true);
  }
  return true;
}

test('a consequence is refused exactly when the act is, and names every colony that then changes', async () => {
  const tally = { allowed: 0, refused: 0 };
  await fc.assert(
    fc.asyncProperty(
      fc.array(anyRow, { minLength: 4, maxLength: 25 }),
      fc.array(fc.record({ at: fc.nat({ max: 1000 }), cells: fc.option(anyRow, { nil: undefined }) }), { minLength: 3, maxLength: 8 }),
      async (rows, mendings) => {
        const store = await trialBook();
        await acts.enter(store, founding);
        for (const row of rows) await faultOf(() => acts.enter(store, [row]));
        for (const { at, cells } of mendings) {
          const standing = await standingEntries(store);
          const entry = standing[at % Math.max(1, standing.length)];
          if (entry !== undefined) tally[(await saidAndDone(store, entry.id, cells)) ? 'allowed' : 'refused'] += 1;
        }
        await store.close();
      },
    ),
    { numRuns: 100 },
  );
  // One-sided runs would prove nothing.
  expect(Math.min(tally.allowed, tally.refused)).toBeGreaterThan(50);
});

test('striking a loss says that the colony is alive', async () => {
  const store = await trialBook();
  await acts.enter(store, [...founding, { date: '2025-02-14', entry: 'loss', colony: 'G1', cause: 'mites' }]);
  const said = await consequenceOf(store, await idOf(store, 'loss'), undefined, 'month-first');
  expect(said).toMatchObject({ allowed: true, colonies: [{ label: 'G1', there: true, end: null, sentences: ['Colony G1 is alive after 14 February 2025.'] }] });
});

test('striking the entry that others rest on lists each of them', async () => {
  const store = await trialBook();
  await acts.enter(store, [
    { date: '2024-05-01', entry: 'install', yard: 'LB', colony: 'N5', origin: 'nuc' },
    { date: '2024-05-20', entry: 'inspection', colony: 'N5', frames_bees: '6' },
    { date: '2024-06-20', entry: 'inspection', colony: 'N5', frames_bees: '8' },
  ]);
  const said = await consequenceOf(store, await idOf(store, 'install'), undefined, 'month-first');
  expect(said.refusal?.contradictions.map(({ day, colonies }) => [day, colonies[0]?.label])).toEqual([['2024-05-20', 'N5'], ['2024-06-20', 'N5']]);
  expect(said.refusal?.mend).toContain('those 2 entries');
});

test('an earlier day for an inspection says which later entries stand', async () => {
  const store = await trialBook();
  await acts.enter(store, [
    ...founding,
    { date: '2024-05-20', entry: 'inspection', colony: 'G1', frames_bees: '6' },
    { date: '2024-06-20', entry: 'feed', colony: 'G1', feed: 'fondant' },
  ]);
  const said = await consequenceOf(store, await idOf(store, 'inspection'), { date: '2024-05-21', entry: 'inspection', colony: 'G1', frames_bees: '7' }, 'month-first');
  expect(said.colonies).toMatchObject([{ label: 'G1', sentences: ['Colony G1 has other figures in its inspections.'], later: 1 }]);
});

test('cells that cannot be read are answered by column', async () => {
  const store = await trialBook();
  await acts.enter(store, [...founding, { date: '2024-05-20', entry: 'mites', colony: 'G1', mites: '3', bees: '300' }]);
  const said = await consequenceOf(store, await idOf(store, 'mites'), { date: '2024-05-20', entry: 'mites', colony: 'G1', mites: 'three', bees: '300' }, 'month-first');
  expect(said.refusal?.cells).toMatchObject([{ column: 'mites' }]);
});
