import type { ColonyId } from '#shared/brands.ts';
import { compareNames } from '#shared/nameOrder.ts';

/** Compares colonies by their place in the yard; those without one come last, by label. */
export function byStand(order: readonly ColonyId[]): (a: { readonly id: ColonyId; readonly label: string }, b: { readonly id: ColonyId; readonly label: string }) => number {
  const places = new Map(order.map((id, place) => [id, place]));
  return (a, b) => {
    const [first, second] = [places.get(a.id), places.get(b.id)];
    if (first !== undefined && second !== undefined) return first - second;
    if (first !== undefined) return -1;
    if (second !== undefined) return 1;
    return compareNames(a.label, b.label) || a.id - b.id;
  };
}

/**
 * The new order of the colonies that stand there, with those of the earlier order that are away now put back
 * behind the colony they stood behind, so that each finds its place when it comes back.
 */
export function withAbsent(earlier: readonly ColonyId[], next: readonly ColonyId[]): ColonyId[] {
  const order = [...next];
  const present = new Set(next);
  earlier.forEach((id, place) => {
    if (present.has(id)) return;
    const behind = earlier[place - 1];
    order.splice(behind === undefined ? 0 : order.indexOf(behind) + 1, 0, id);
  });
  return order;
}
