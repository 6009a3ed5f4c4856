/** The first `limit` of all items by `compare`, in that order, and how many there are; costs one pass, not a sort of everything. */
export function bestOf<Item>(items: Iterable<Item>, limit: number, compare: (a: Item, b: Item) => number): { rows: Item[]; total: number } {
  const rows: Item[] = [];
  let total = 0;
  for (const item of items) {
    total += 1;
    const last = rows.at(-1);
    if (rows.length >= limit && last !== undefined && compare(item, last) >= 0) continue;
    let place = rows.length;
    for (let before = rows[place - 1]; before !== undefined && compare(item, before) < 0; before = rows[place - 1]) place -= 1;
    rows.splice(place, 0, item);
    if (rows.length > limit) rows.pop();
  }
  return { rows, total };
}
