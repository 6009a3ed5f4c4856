/** Size of every text in a chart, in pixels; nothing in the program is smaller. */
export const textSize = 13;

/**
 * A generous width for a text in the sans face: charts are pure functions and cannot measure, so room is
 * kept for a semi-bold character of 0.56 em.
 */
export function textWidth(text: string, size = textSize): number {
  return text.length * size * 0.56;
}

/** Shortens a text to fit a width, with an ellipsis. */
export function fitted(text: string, width: number, size = textSize): string {
  if (textWidth(text, size) <= width) return text;
  const keep = Math.max(1, Math.floor(width / (size * 0.56)) - 1);
  return `${text.slice(0, keep).trimEnd()}…`;
}

/**
 * Moves labels apart along one axis, as little as will do: each keeps at least `gap` from the next, the
 * order of the wished places is kept, and all stay between `from` and `to` as long as there is room.
 * Pools neighbours that would touch and centres each pool on the mean of its wishes.
 */
export function spread(wishes: readonly number[], gap: number, from: number, to: number): number[] {
  const order = wishes.map((wish, index) => ({ wish, index })).sort((a, b) => a.wish - b.wish || a.index - b.index);
  const pools: { members: number[]; sum: number; start: number }[] = [];
  const startOf = (sum: number, size: number) => {
    const span = (size - 1) * gap;
    return Math.max(from, Math.min(sum / size - span / 2, to - span));
  };
  for (const { wish, index } of order) {
    let pool = { members: [index], sum: wish, start: startOf(wish, 1) };
    for (let above = pools.at(-1); above && above.start + above.members.length * gap > pool.start; above = pools.at(-1)) {
      pools.pop();
      const members = [...above.members, ...pool.members];
      const sum = above.sum + pool.sum;
      pool = { members, sum, start: startOf(sum, members.length) };
    }
    pools.push(pool);
  }
  const places = wishes.slice();
  for (const pool of pools) pool.members.forEach((member, place) => (places[member] = pool.start + place * gap));
  return places;
}
