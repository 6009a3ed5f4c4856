import type { EntryId } from '#shared/brands.ts';
import type { PlacedOrder } from '#shared/contract/placed.ts';
import { addDays, dayFromIso, dayInWords, type Day } from '#shared/days.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { itemName } from '#core/stock/itemName.ts';

type OrderedKind = PlacedOrder['kind'];

/** How each kind of bees is called in the item of a purchase row. */
const beeItems: Readonly<Record<string, OrderedKind>> = { package: 'package', nuc: 'nuc', queen: 'queen', colony: 'colony', 'full colony': 'colony' };

/** A row of ordering says so at the head of its note, so that it is known again wherever the row is brought in. */
const orderedNote = /^ordered\b/i;
const deliveryDays = /\bdelivery (\d{4}-\d{2}-\d{2})?(?: ?to (\d{4}-\d{2}-\d{2}))?/i;
const deliveredNote = /^delivered (\d+(?:\.\d+)?) (.+) from (.+?)\.?$/i;

/** Days after the last day of delivery on which an order is still counted on. */
const grace = 30;
/** Without a day of delivery: as long as a season. */
const longest = 365;

/** True for a purchase row that is an order and no delivery yet. */
export function isOrdering(entry: Entry): boolean {
  return entry.kind === 'purchase' && entry.body.to === undefined && orderedNote.test(entry.body.note ?? '');
}

export function orderingNote(from: Day | null, until: Day | null): string {
  return from === null && until === null ? 'Ordered' : `Ordered, delivery${from === null ? '' : ` ${from}`}${until === null ? '' : ` to ${until}`}`;
}

export function deliveryNote(quantity: number, item: string, seller: string): string {
  return `Delivered ${quantity} ${item} from ${seller}`;
}

interface Arrival {
  readonly day: Day;
  readonly quantity: number;
}

/**
 * Orders by the journal's standing entries, newest first, each with what arrived of it. Arrivals tick off the oldest
 * order of the same seller and item that is not filled. Bees noted as delivered and bees hived are the same bees, so
 * the larger of the two counts.
 */
export function placedOrders(entries: readonly Entry[], plans: ReadonlyMap<EntryId, string>, today: Day): (PlacedOrder & { readonly standing: number })[] {
  const groups = new Map<string, Entry[]>();
  for (const entry of entries) {
    if (!isOrdering(entry) || entry.kind !== 'purchase') continue;
    const key = groupKey(entry.body.supplier ?? null, itemName(entry.body.item));
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  const found: (PlacedOrder & { standing: number })[] = [];
  for (const orders of groups.values()) {
    const [first] = orders;
    if (first?.kind !== 'purchase') continue;
    const item = itemName(first.body.item);
    const kind = beeItems[item] ?? 'equipment';
    const seller = first.body.supplier ?? null;
    const noted = fill(orders, arrivals(entries, (entry) => notedOf(entry, item, seller)));
    const entered = fill(orders, arrivals(entries, (entry) => enteredOf(entry, kind, item, seller)));
    orders.forEach((entry, at) => {
      if (entry.kind !== 'purchase') return;
      const quantity = entry.body.quantity ?? 1;
      const arrived = Math.max(noted[at] ?? 0, entered[at] ?? 0);
      const left = quantity - arrived;
      const days = deliveryDays.exec(entry.body.note ?? '');
      const delivery: [Day | null, Day | null] = [dayFromIso(days?.[1] ?? ''), dayFromIso(days?.[2] ?? '')];
      const last = delivery[1] ?? delivery[0];
      const awaited = left > 0 && today <= (last === null ? addDays(entry.day, longest) : addDays(last, grace));
      found.push({
        entry: entry.id, day: entry.day, seller, kind, item, quantity, price: entry.body.price ?? null, delivery, arrived, left, awaited,
        plan: plans.get(entry.id) ?? null, standing: entered[at] ?? 0, sentence: words(quantity, arrived, left, last, awaited, today),
      });
    });
  }
  return found.toSorted((a, b) => (a.day < b.day ? 1 : a.day > b.day ? -1 : b.entry - a.entry));
}

/** What is on its way: colonies, queens and pieces of equipment that no colony, queen or shed shows yet. */
export interface OnOrder {
  readonly colonies: number;
  readonly packages: number;
  readonly queens: number;
  readonly equipment: ReadonlyMap<string, number>;
}

export function onOrder(orders: ReturnType<typeof placedOrders>): OnOrder {
  const open = orders.filter(({ awaited, arrived, standing }) => awaited || arrived > standing);
  const sum = (kinds: readonly OrderedKind[]) => open.filter(({ kind }) => kinds.includes(kind)).reduce((total, { quantity, standing }) => total + Math.max(0, Math.round(quantity - standing)), 0);
  const equipment = new Map<string, number>();
  for (const { kind, item, left } of open) if (kind === 'equipment' && left > 0) equipment.set(item, (equipment.get(item) ?? 0) + left);
  return { colonies: sum(['package', 'nuc', 'colony']), packages: sum(['package']), queens: sum(['queen']), equipment };
}

function words(quantity: number, arrived: number, left: number, last: Day | null, awaited: boolean, today: Day): string {
  if (left <= 0) return `All ${quantity} have come.`;
  const some = arrived === 0 ? 'Nothing has come yet' : `${arrived} of ${quantity} have come, ${left} are still to come`;
  if (!awaited) return `${some}; it is long past its day and no longer counted on. Enter the delivery, or strike the order.`;
  if (last === null) return `${some}.`;
  return last < today ? `${some}; they were to come by ${dayInWords(last)}. Ask the seller.` : `${some}; to come by ${dayInWords(last)}.`;
}

function groupKey(seller: string | null, item: string): string {
  return `${seller?.trim().toLowerCase() ?? ''}|${item}`;
}

function arrivals(entries: readonly Entry[], count: (entry: Entry) => number): Arrival[] {
  return entries.flatMap((entry) => {
    const quantity = count(entry);
    return quantity > 0 ? [{ day: entry.day, quantity }] : [];
  });
}

/** What arrived of each order: the oldest first. */
function fill(orders: readonly Entry[], came: readonly Arrival[]): number[] {
  const filled = orders.map(() => 0);
  for (const { day, quantity } of came) {
    let rest = quantity;
    orders.forEach((order, at) => {
      if (order.kind !== 'purchase' || order.day > day || rest <= 0) return;
      const takes = Math.min(rest, (order.body.quantity ?? 1) - (filled[at] ?? 0));
      filled[at] = (filled[at] ?? 0) + takes;
      rest -= takes;
    });
  }
  return filled;
}

function notedOf(entry: Entry, item: string, seller: string | null): number {
  if (entry.kind !== 'note') return 0;
  const found = deliveredNote.exec(entry.body.note.trim());
  return found !== null && itemName(found[2] ?? '') === item && sameSeller(found[3], seller) ? Number(found[1]) : 0;
}

function enteredOf(entry: Entry, kind: OrderedKind, item: string, seller: string | null): number {
  switch (entry.kind) {
    case 'install':
      return (entry.body.origin === kind || (entry.body.origin === 'bought colony' && kind === 'colony')) && sameSeller(entry.body.supplier, seller) ? 1 : 0;
    case 'requeen':
      return kind === 'queen' && sameSeller(entry.body.supplier, seller) ? 1 : 0;
    case 'purchase':
      return kind === 'equipment' && entry.body.to !== undefined && itemName(entry.body.item) === item && sameSeller(entry.body.supplier, seller) ? (entry.body.quantity ?? 1) : 0;
    case 'stock': {
      if (kind !== 'equipment' || entry.body.from !== 'supplier' || itemName(entry.body.item) !== item) return 0;
      // A stock row has no seller; only a note of delivery may name another one.
      const named = deliveredNote.exec(entry.body.note?.trim() ?? '')?.[3];
      return named === undefined || sameSeller(named, seller) ? entry.body.quantity : 0;
    }
    default:
      return 0;
  }
}

function sameSeller(named: string | undefined, seller: string | null): boolean {
  return (named?.trim().toLowerCase() ?? '') === (seller?.trim().toLowerCase() ?? '');
}
