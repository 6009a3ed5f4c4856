import { yearOfNumber } from './calendar.ts';
import { entryRow } from './demoOperation.ts';
import type { Equipment } from './shed.ts';
import type { World } from './world.ts';

/** What is gone through in the shed in the middle of November. */
const countedItems = ['deep box', 'deep frame', 'medium super', 'bottom board', 'inner cover', 'outer cover', 'queen excluder'] as const satisfies readonly Equipment[];

/** What was never written down and comes to light at the count: below 0 it is missing. */
export const unwritten: Readonly<Record<number, { readonly item: (typeof countedItems)[number]; readonly change: number; readonly words: string }>> = {
  2022: { item: 'medium super', change: -3, words: 'three broken in the truck and not written down' },
  2023: { item: 'inner cover', change: -1, words: 'one used as a table' },
  2024: { item: 'bottom board', change: 2, words: 'two built from the old pallets' },
  2025: { item: 'deep frame', change: -6, words: 'six chewed by mice' },
};

/** The yearly count: a row for each item, of none where book and shed agree. */
export function countShed(world: World): void {
  if (world.monthDay !== '11-14') return;
  const found = unwritten[yearOfNumber(world.day)];
  const rows = countedItems.map((item) => {
    const had = world.shed.count('shed', item);
    const change = found?.item === item ? Math.max(found.change, -had) : 0;
    world.shed.adjust(item, change);
    // What is gone is bought again, so that the count changes nothing of the seasons after it.
    if (change < 0) world.buyEquipment(item, -change);
    const note = `counted ${had + change}, the book had ${had}${change === 0 ? '' : `; ${found?.words ?? ''}`}`;
    return entryRow(world.day, 'stock', { item, quantity: Math.abs(change), from: change > 0 ? 'supplier' : 'shed', to: change > 0 ? 'shed' : 'scrap', note });
  });
  world.desk.enter(world.day, 22 * 60 + 40, 'Shed counted', rows);
  if (yearOfNumber(world.day) === 2026) {
    const mend = entryRow(world.day, 'stock', { item: 'medium super, to mend', quantity: 4, from: 'shed', to: 'shed', note: 'loose corners, for the workshop' });
    world.desk.enter(world.day, 22 * 60 + 41, 'Supers to mend', [mend]);
  }
}

/** Three eight-frame hives with their supers were there before the book; what else is in the shed was bought for it. */
export function takeStockOfOldHives(world: World): void {
  const old: readonly [string, number][] = [
    ['deep box, 8-frame', 3], ['deep frame', 24], ['bottom board, 8-frame', 3], ['inner cover, 8-frame', 3], ['outer cover, 8-frame', 3],
    ['entrance reducer, 8-frame', 3], ['feeder, 8-frame', 3], ['stand', 3], ['medium super, 8-frame', 9], ['medium frame', 72],
  ];
  world.desk.enter(world.day, 22 * 60 + 30, 'Equipment there from before', old.map(([item, quantity]) => entryRow(world.day, 'stock', { item, quantity, from: 'supplier', to: 'shed', note: 'there from before' })));
}
