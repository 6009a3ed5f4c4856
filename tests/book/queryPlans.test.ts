import { expect, test } from 'vitest';
import type { ColonyId, EntryId, GestureId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import { openScratch } from '#core/book/openDatabase.ts';
import { sqliteStore } from '#core/book/sqliteStore.ts';
import type { Store } from '#core/book/store.ts';

/** The database's own plan for each statement that the read prepares, the real statements and not copies of them. */
async function plansOf(read: (store: Store) => Promise<unknown>): Promise<string[]> {
  const database = openScratch();
  // Nothing is asked of a book without entries.
  database.exec(`INSERT INTO gesture (id, at, kind, title) VALUES (1, '2025-05-01 20:00', 'enter', 'note'); INSERT INTO entry (id, gesture_id, day, place, kind, body) VALUES (1, 1, '2025-05-01', 1, 'stock', '{}')`);
  const prepare = database.prepare.bind(database);
  const statements: string[] = [];
  database.prepare = ((text: string) => {
    statements.push(text);
    return prepare(text);
  }) as typeof database.prepare;
  await read(sqliteStore(database, 'a scratch book'));
  const plans = statements.map((text) => (prepare(`EXPLAIN QUERY PLAN ${text}`).all(...Array.from({ length: text.split('?').length - 1 }, () => null)) as { detail: string }[]).map(({ detail }) => detail).join('; '));
  database.close();
  return plans;
}

const day1 = day('2025-05-01');

test.each<[string, (store: Store) => Promise<unknown>, RegExp[]]>([
  ['states by label', (store) => store.statesByLabel(['G1', 'G2']), [/SEARCH colony USING INDEX colony_label \(label=\?\)/]],
  ['states by id', (store) => store.states([1 as ColonyId]), [/SEARCH colony USING INTEGER PRIMARY KEY/]],
  ['entries of colonies', (store) => store.entriesOf([1 as ColonyId, 2 as ColonyId]), [/SEARCH colony_entry USING PRIMARY KEY \(colony_id=\?\)/, /SEARCH entry USING INTEGER PRIMARY KEY/, /SEARCH struck USING INTEGER PRIMARY KEY/]],
  ['the story of a colony', (store) => store.storyOf(1 as ColonyId), [/SEARCH colony_entry USING PRIMARY KEY \(colony_id=\?\)/, /SEARCH entry USING INTEGER PRIMARY KEY/, /SEARCH struck USING INTEGER PRIMARY KEY/]],
  ['entries of a day', (store) => store.entries({ from: day1, until: day1 }), [/SEARCH entry USING INDEX entry_order \(day>\? AND day<\?\)/, /SEARCH struck USING INTEGER PRIMARY KEY/, /SEARCH mark USING INTEGER PRIMARY KEY/]],
  ['entries by kind', (store) => store.entries({ kinds: ['stock', 'purchase'] }), [/SEARCH entry USING INDEX entry_kind \(kind=\? AND day>\? AND day<\?\)/]],
  ['entries that name no colony', (store) => store.entries({ kinds: ['harvest'], ofNoColony: true }), [/SEARCH entry USING INDEX entry_kind \(kind=\? AND day>\? AND day<\?\)/, /SEARCH colony_entry (EXISTS )?USING (COVERING )?INDEX colony_entry_entry \(entry_id=\?\)/]],
  ['the acts', (store) => store.gestures(), [/SEARCH gesture USING INTEGER PRIMARY KEY \(rowid>\? AND rowid<\?\)/, /SEARCH entry USING INDEX entry_gesture \(gesture_id=\?\)/]],
  ['entries of an act', (store) => store.entries({ gesture: 1 as GestureId }), [/SEARCH entry USING INDEX entry_gesture \(gesture_id=\?\)/]],
  ['entries by id', (store) => store.entries({ ids: [1 as EntryId] }), [/SEARCH entry USING INTEGER PRIMARY KEY/]],
  ['marks of an act', (store) => store.marksOf(1 as GestureId), [/SEARCH mark USING (COVERING )?INDEX mark_gesture \(gesture_id=\?\)/]],
  ['the position', (store) => store.position(), [/SEARCH meta USING INDEX/]],
])('%s go by an index and walk no table', async (_, read, wanted) => {
  const plans = await plansOf(read);
  expect(plans.length).toBeGreaterThan(0);
  const text = plans.join('\n');
  for (const pattern of wanted) expect(text).toMatch(pattern);
  for (const plan of plans) for (const step of plan.split('; ')) expect(step, plan).not.toMatch(/^SCAN (?!CONSTANT)/);
});
