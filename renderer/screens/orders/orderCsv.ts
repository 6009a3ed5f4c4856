import type { OrderAnswer } from '#shared/contract/decision.ts';
import { csvText } from '../../parts/csv.ts';
import { bySeller } from './bySeller.ts';

const dollars = (cents: number | null) => (cents === null ? null : Math.round(cents) / 100);

/** The order, a line for each thing to order. */
export function orderCsv(answer: OrderAnswer): string {
  const rows = bySeller(answer).flatMap(({ seller, lines }) =>
    lines.map((line) => [seller, line.words, line.quantity, line.packSize, dollars(line.each), dollars(line.total), dollars(line.deposit), line.orderBy, line.delivery[0], line.delivery[1], line.reason]));
  return csvText(['seller', 'what', 'quantity', 'in_a_pack', 'price_each', 'price_together', 'deposit', 'order_by', 'delivery_from', 'delivery_until', 'reason'], rows);
}

/** The equipment, a line for each part. */
export function partsCsv(answer: OrderAnswer): string {
  const rows = answer.equipment.map((part) => [
    part.item, part.need, part.onHives, part.fromDeadOuts, part.toMend, part.shed, part.yards, part.onOrder, part.have, part.order, part.packs.map(({ packs, packSize }) => `${packs} x ${packSize}`).join('; '), part.notOffered, part.reason,
  ]);
  return csvText(['item', 'need', 'on_hives', 'from_dead_outs', 'to_mend', 'shed', 'yards', 'on_order', 'have', 'order', 'packs', 'on_no_offer', 'reason'], rows);
}
