import type { OrderAnswer } from '#shared/contract/decision.ts';
import type { Day } from '#shared/days.ts';

/** One line of an order to a seller. */
export interface SellerLine {
  readonly offer: string;
  readonly words: string;
  /** As the offer counts: colonies, queens, packs. */
  readonly quantity: number;
  /** Pieces in each; 1 but for packs. */
  readonly packSize: number;
  readonly each: number;
  readonly total: number;
  readonly deposit: number | null;
  readonly orderBy: Day;
  readonly delivery: readonly [Day | null, Day | null];
  readonly reason: string;
}

export interface SellerOrder {
  /** Null where no offer is kept. */
  readonly seller: string | null;
  readonly lines: readonly SellerLine[];
  readonly total: number;
  readonly deposit: number;
  /** The first of the last days. */
  readonly orderBy: Day;
}

/** The answer's lines under their sellers, the soonest last day first. */
export function bySeller({ bees, equipment }: Pick<OrderAnswer, 'bees' | 'equipment'>): SellerOrder[] {
  const lines = new Map<string | null, SellerLine[]>();
  const add = (seller: string | null, line: SellerLine) => lines.set(seller, [...(lines.get(seller) ?? []), line]);
  for (const { offer, seller, words, quantity, each, total, deposit, orderBy, delivery, reason } of bees) add(seller, { offer, words, quantity, packSize: 1, each, total, deposit, orderBy, delivery, reason });
  for (const { item, packs, reason } of equipment) {
    for (const { offer, seller, packSize, packs: quantity, each, total, orderBy } of packs) add(seller, { offer, words: item, quantity, packSize, each, total, deposit: null, orderBy, delivery: [null, null], reason });
  }
  return [...lines]
    .map(([seller, own]) => ({
      seller, lines: own, total: own.reduce((sum, { total }) => sum + total, 0), deposit: own.reduce((sum, { deposit }) => sum + (deposit ?? 0), 0),
      orderBy: own.map(({ orderBy }) => orderBy).reduce((first, one) => (one < first ? one : first)),
    }))
    .toSorted((a, b) => (a.orderBy < b.orderBy ? -1 : a.orderBy > b.orderBy ? 1 : 0));
}
