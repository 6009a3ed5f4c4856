import type { Minor } from '#shared/brands.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { moneyText } from '#shared/units.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { orderPoint } from '#core/order/orderCurves.ts';
import { offeredWords } from '#core/order/offerCheck.ts';
import { beeItem, orderDeadlines } from '#core/order/orderDeadlines.ts';
import { deliveryNote, orderingNote } from '#core/order/placedOrders.ts';
import { factsOf, springSeed } from './decisionHandlers.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { enterRows } from './enterRows.ts';
import { highsSolver } from './highsSolver.ts';
import { readOffers, readPlans } from './offerPapers.ts';
import { placedIn, planOfOrder } from './placedPapers.ts';

type Names = 'orders.placed' | 'orders.deadlines' | 'orders.place' | 'orders.deliver' | 'order.point';

export const placedHandlers: Handlers<Names> = {
  'orders.placed': async (_, context) => ({ orders: (await placedOf(context)).map(({ standing: _standing, ...order }) => order) }),
  'orders.deadlines': async (_, context) => {
    const { store, today } = await here(context);
    return { lines: orderDeadlines(await readPlans(store), await readOffers(store), await placedOf(context), today) };
  },
  'orders.place': async ({ lines, plan }, context) => {
    const { book, store, today } = await here(context);
    const offers = new Map((await readOffers(store)).map((offer) => [offer.key, offer]));
    const rows = lines.map(({ offer: key, quantity, each: agreed }): Cells => {
      const offer = offers.get(key);
      if (offer === undefined) throw new FaultError(refuse('unknown', 'One of these is on nobody’s offer any more.', { mend: 'Enter the seller’s offer first; nothing was ordered.' }));
      const { what, seller } = offer;
      if (quantity < offer.least) throw new FaultError(refuse('refused', `${seller} sells at least ${offer.least} at a time; ${quantity} were to be ordered.`, { field: key, mend: 'Order more, or change the offer. Nothing was entered.' }));
      if (offer.most !== null && quantity > offer.most) throw new FaultError(refuse('refused', `${seller} offers at most ${offer.most}; ${quantity} were to be ordered.`, { field: key, mend: 'Order fewer, or change the offer. Nothing was entered.' }));
      const offered = offer.steps.findLast(({ from }) => from <= quantity)?.each ?? offer.steps[0]?.each ?? 0;
      const each = agreed ?? offered;
      if (each === 0 && offered !== 0) throw new FaultError(refuse('refused', `${seller} would give ${offeredWords(what)} away: the price is 0.`, { field: key, mend: 'Write the price; if it is free, say so in the offer first. Nothing was entered.' }));
      return {
        date: today, entry: 'purchase', item: what.kind === 'equipment' ? what.item : beeItem(what.kind), supplier: seller,
        quantity: String(what.kind === 'equipment' ? quantity * what.packSize : quantity), price: moneyText((each * quantity) as Minor), note: orderingNote(offer.deliveryFrom, offer.deliveryUntil),
      };
    });
    const sellers = [...new Set(rows.map(({ supplier }) => supplier))].join(', ');
    const answer = await enterRows(store, rows, `Order to ${sellers}`, (await book.settings()).dateOrder, context.options.now().stamp);
    if (plan !== null && (await readPlans(store)).some(({ key }) => key === plan)) {
      const made = await store.entries({ gesture: answer.gesture });
      await store.keepPapers(made.map(({ entry }) => planOfOrder(entry.id, plan)));
    }
    return answer;
  },
  'orders.deliver': async ({ entry, quantity, to }, context) => {
    const { book, store, today } = await here(context);
    const order = (await placedOf(context)).find((one) => one.entry === entry);
    if (order === undefined) throw new FaultError(refuse('unknown', 'That order is not in the book, or was struck.'));
    if (quantity > order.left) throw new FaultError(refuse('refused', `Of ${order.quantity} ordered ${order.left === 0 ? 'all have come' : `${order.left} are still to come`}; ${quantity} are too many.`, { field: 'quantity', mend: 'If the seller sent more, enter the rest as a purchase of its own.' }));
    if (order.kind !== 'equipment' && !Number.isInteger(quantity)) throw new FaultError(refuse('refused', 'Bees come in whole numbers.', { field: 'quantity' }));
    const note = deliveryNote(quantity, order.item, order.seller ?? 'the seller');
    const row: Cells = order.kind === 'equipment'
      ? { date: today, entry: 'stock', item: order.item, quantity: String(quantity), from: 'supplier', to, note }
      : { date: today, entry: 'note', note };
    return enterRows(store, [row], `Delivery from ${order.seller ?? 'the seller'}`, (await book.settings()).dateOrder, context.options.now().stamp);
  },
  'order.point': async ({ question, target, confidence }, context) =>
    orderPoint(question, { target, confidence }, await factsOf(context), await highsSolver(), new SeededRandom(springSeed)),
};

async function here(context: DeskContext) {
  const book = context.open();
  return { book, store: book.store, today: await book.today(context.options.now().day) };
}

async function placedOf(context: DeskContext) {
  const { book, today } = await here(context);
  return placedIn(book, today);
}
