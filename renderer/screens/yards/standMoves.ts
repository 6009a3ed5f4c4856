/** The order after the one at `from` is put where the one at `to` stands; the same list where nothing moves. */
export function movedTo<Item>(order: readonly Item[], from: number, to: number): readonly Item[] {
  const one = order[from];
  const place = Math.max(0, Math.min(order.length - 1, to));
  if (one === undefined || place === from) return order;
  const rest = order.toSpliced(from, 1);
  return rest.toSpliced(place, 0, one);
}

/** Rows in an order moved by hand, as long as it still names exactly the rows that are there. */
export function inOrder<Row extends { readonly id: number }>(rows: readonly Row[], order: readonly number[] | null): readonly Row[] {
  if (order === null || order.length !== rows.length) return rows;
  const byId = new Map(rows.map((row) => [row.id, row]));
  const placed = order.flatMap((id) => byId.get(id) ?? []);
  return placed.length === rows.length ? placed : rows;
}
