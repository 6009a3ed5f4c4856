import type { DecisionQuestion, SurvivalView } from '#shared/contract/decision.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { compareSources } from '#core/order/compareSources.ts';
import { decideOrder, type DecisionFacts } from '#core/order/decideOrder.ts';
import { listOffer, offerTrouble } from '#core/order/offerCheck.ts';
import { orderCurves } from '#core/order/orderCurves.ts';
import { onOrder } from '#core/order/placedOrders.ts';
import { paidPrices } from '#core/order/paidPrices.ts';
import { reviewPlans } from '#core/order/reviewPlans.ts';
import { calledPlace } from '#core/stock/places.ts';
import { equipmentAvailable } from '#core/stock/stockTable.ts';
import { shortageSentence } from '#core/stock/stockWords.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { highsSolver } from './highsSolver.ts';
import { nextKey, offerPaper, planPaper, readOffers, readPlans, readViews, viewPaper } from './offerPapers.ts';
import type { Book } from './openBook.ts';
import { placedIn } from './placedPapers.ts';
import { stockBookOf } from './stockAccount.ts';
import { standing } from './standing.ts';

type Names =
  | 'offers.list' | 'offers.keep' | 'offers.drop' | 'order.decide' | 'order.curves' | 'order.compare'
  | 'survival.views' | 'survival.keep' | 'survival.drop' | 'plans.keep' | 'plans.list' | 'plans.read';

/** Springs are drawn from one seed, so that the same book and question always give the same order. */
export const springSeed = 20_270_401;

export const decisionHandlers: Handlers<Names> = {
  'offers.list': async (_, context) => {
    const book = context.open();
    const today = await book.today(context.options.now().day);
    return { offers: (await readOffers(book.store)).map((offer) => listOffer(offer, today)), paid: await paidOf(book) };
  },
  'offers.keep': async ({ key, offer, free }, context) => {
    const book = context.open();
    const trouble = offerTrouble(offer, free);
    if (trouble !== null) throw new FaultError(refuse('refused', trouble.sentence, { field: trouble.field, mend: trouble.mend }));
    const kept = await book.store.papers(offerPaper);
    if (key !== null && !kept.has(key)) throw new FaultError(refuse('unknown', 'That offer is no longer in the book.', { mend: 'Keep it as a new one.' }));
    const own = key ?? nextKey('o', kept.keys());
    await book.store.keepPapers([{ kind: offerPaper, key: own, body: JSON.stringify(offer) }]);
    return { offer: listOffer({ ...offer, key: own }, await book.today(context.options.now().day)) };
  },
  'offers.drop': async ({ key }, context) => {
    const { store } = context.open();
    if (!(await store.papers(offerPaper)).has(key)) throw new FaultError(refuse('unknown', 'That offer is no longer in the book.'));
    await store.keepPapers([{ kind: offerPaper, key, body: null }]);
    return {};
  },
  'order.decide': async (question, context) => decide(question, context),
  'order.curves': async (question, context) => orderCurves(question, await factsOf(context), await highsSolver(), new SeededRandom(springSeed)),
  'order.compare': async (_, context) => compareSources(await factsOf(context)),
  'survival.views': async (_, context) => ({ views: await readViews(context.open().store) }),
  'survival.keep': async (view, context) => {
    const book = context.open();
    if (view.yard !== null && !(await book.picture()).yardList.some(({ id }) => id === view.yard)) throw new FaultError(refuse('unknown', 'That yard is not in the book.', { field: 'yard' }));
    const dated: SurvivalView = { ...view, day: await book.today(context.options.now().day) };
    await book.store.keepPapers([{ kind: viewPaper, key: viewKey(view.yard), body: JSON.stringify(dated) }]);
    return { views: await readViews(book.store) };
  },
  'survival.drop': async ({ yard }, context) => {
    const { store } = context.open();
    await store.keepPapers([{ kind: viewPaper, key: viewKey(yard), body: null }]);
    return { views: await readViews(store) };
  },
  'plans.keep': async ({ question, note }, context) => {
    const { store } = context.open();
    const decision = await decide(question, context);
    const key = nextKey('p', (await store.papers(planPaper)).keys());
    await store.keepPapers([{ kind: planPaper, key, body: JSON.stringify({ key, day: decision.asOf, note, decision }) }]);
    return { key };
  },
  'plans.list': async (_, context) => {
    const book = context.open();
    return reviewPlans(await readPlans(book.store), { states: (await book.picture()).states, entries: await paidEntries(book), today: await book.today(context.options.now().day) });
  },
  'plans.read': async ({ key }, context) => {
    const found = (await readPlans(context.open().store)).find((plan) => plan.key === key);
    if (found === undefined) throw new FaultError(refuse('unknown', 'That plan is not in the book.'));
    return found;
  },
};

function viewKey(yard: number | null): string {
  return yard === null ? 'all' : String(yard);
}

async function decide(question: DecisionQuestion, context: DeskContext) {
  return decideOrder(question, await factsOf(context), await highsSolver(), new SeededRandom(springSeed));
}

async function paidEntries(book: Book) {
  const entries = await book.store.entries({ kinds: ['install', 'requeen', 'purchase'] });
  return standing(entries);
}

async function paidOf(book: Book) {
  return paidPrices(await paidEntries(book));
}

export async function factsOf(context: DeskContext): Promise<DecisionFacts> {
  const book = context.open();
  const { states, yardList, borders, rules, names } = await book.picture();
  const today = await book.today(context.options.now().day);
  const account = await stockBookOf(book, today);
  return {
    states, yards: yardList, borders, rules, asOf: today, today, views: await readViews(book.store), offers: await readOffers(book.store), paid: await paidOf(book),
    there: (item) => equipmentAvailable(account, item),
    stockTrouble: [...account.shortages.values()].map(({ place, item, count, day, entry }) => ({ place: calledPlace(place, names), item, count, day, entry, sentence: shortageSentence(calledPlace(place, names), item, count, day) })),
    onOrder: onOrder(await placedIn(book, today)),
  };
}
