import type { ShedCount } from '#shared/contract/order.ts';
import type { Entry } from '#core/journal/kinds.ts';
import type { Place } from '#core/journal/bodyParts.ts';
import type { Names } from '#core/journal/kindRules.ts';

type Movement = { item: string; quantity: number; from: Place; to: Place };

/** What is where: each movement leaves one place and reaches another; supplier and scrap lie outside and are not counted. */
export function shedCounts(entries: readonly Entry[], names: Names, latest = 50): ShedCount {
  const counts = new Map<string, Map<string, number>>();
  const movements: ShedCount['movements'] = [];
  const called = (place: Place) => (typeof place === 'string' ? place : names.yard(place.yard).code);
  for (const entry of entries) {
    const movement = movementOf(entry);
    if (movement === null) continue;
    const item = itemName(movement.item);
    const places = counts.get(item) ?? new Map<string, number>();
    counts.set(item, places);
    for (const [place, sign] of [[movement.from, -1], [movement.to, 1]] as const) {
      if (place === 'supplier' || place === 'scrap') continue;
      places.set(called(place), (places.get(called(place)) ?? 0) + sign * movement.quantity);
    }
    movements.push({ day: entry.day, item, quantity: movement.quantity, from: called(movement.from), to: called(movement.to), note: entry.body.note ?? null });
  }
  const places = [...new Set([...counts.values()].flatMap((held) => [...held.keys()]))].toSorted((a, b) => (a === 'shed' ? -1 : b === 'shed' ? 1 : a < b ? -1 : 1));
  const items = [...counts].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([item, held]) => ({
    item,
    counts: places.map((place) => ({ place, count: held.get(place) ?? 0 })),
    total: places.reduce((sum, place) => sum + (held.get(place) ?? 0), 0),
  }));
  return { places, items, movements: movements.slice(-latest).reverse() };
}

/** A stock row moves equipment; a purchase moves it only where it says where to. */
function movementOf(entry: Entry): Movement | null {
  if (entry.kind === 'stock') return entry.body;
  if (entry.kind === 'purchase' && entry.body.to !== undefined) return { item: entry.body.item, quantity: entry.body.quantity ?? 1, from: 'supplier', to: entry.body.to };
  return null;
}

/** What the trade also calls the parts of a hive. */
const otherNames: Readonly<Record<string, string>> = {
  deep: 'deep box', 'deep super': 'deep box', 'deep hive body': 'deep box', medium: 'medium super', 'medium box': 'medium super', bottom: 'bottom board',
  reducer: 'entrance reducer', excluder: 'queen excluder', 'hive stand': 'stand', 'telescoping cover': 'outer cover',
};

/** One spelling of an item: lower case, single spaces, the singular that people also write in the plural, one name for a part. */
export function itemName(typed: string): string {
  const name = typed.trim().toLowerCase().replace(/\s+/g, ' ').replace(/(x|ch|sh|ss)es$/, '$1').replace(/(?<!s)s$/, '');
  return Object.hasOwn(otherNames, name) ? (otherNames[name] ?? name) : name;
}
