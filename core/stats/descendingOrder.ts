import { halfDayRange } from './halfDays.ts';
import { countBelow } from './survivalSpans.ts';

/**
 * The positions of the keys in descending order, equal ones as they came; the keys must be finite. Each key's place is
 * found once and the positions are dealt out by place, so nothing is compared in pairs. O(n) for times in whole or
 * half days, else O(n log n).
 */
export function descendingOrder(keys: Float64Array): Uint32Array {
  const { places, count } = placesOf(keys);
  return dealtOut(places, count);
}

/** The positions in `order` by ascending group number (from 0, below `groups`), those of one group as they stood. O(n). */
export function groupedOrder(order: Uint32Array, group: Uint32Array, groups: number): Uint32Array {
  const dealt = dealtOut(order.map((position) => group[position] as number), groups);
  return dealt.map((at) => order[at] as number);
}

function dealtOut(places: Uint32Array, count: number): Uint32Array {
  const next = new Uint32Array(count + 1);
  for (let at = 0; at < places.length; at++) {
    const after = (places[at] as number) + 1;
    next[after] = (next[after] as number) + 1;
  }
  for (let place = 1; place < count; place++) next[place] = (next[place] as number) + (next[place - 1] as number);
  const order = new Uint32Array(places.length);
  for (let at = 0; at < places.length; at++) {
    const place = places[at] as number;
    const to = next[place] as number;
    order[to] = at;
    next[place] = to + 1;
  }
  return order;
}

/** The place of each key among the different ones, the greatest 0; some places may stay empty. */
function placesOf(keys: Float64Array): { readonly places: Uint32Array; readonly count: number } {
  const places = new Uint32Array(keys.length);
  const range = halfDayRange(keys);
  if (range !== null) {
    for (let at = 0; at < keys.length; at++) places[at] = 2 * (range.high - (keys[at] as number));
    return { places, count: 2 * (range.high - range.low) + 1 };
  }
  const sorted = keys.slice().sort();
  let different = 0;
  for (let at = 0; at < sorted.length; at++) {
    if (at === 0 || sorted[at] !== sorted[at - 1]) sorted[different++] = sorted[at] as number;
  }
  const levels = sorted.subarray(0, different);
  for (let at = 0; at < keys.length; at++) places[at] = different - 1 - countBelow(levels, keys[at] as number);
  return { places, count: different };
}
