import { keptPlan, survivalView, type KeptPlan, type SurvivalView } from '#shared/contract/decision.ts';
import { offerBody, type Offer, type OfferBody } from '#shared/contract/offers.ts';
import type { Paper, Store } from '#core/book/store.ts';

export const offerPaper = 'offer';
export const viewPaper = 'survival view';
export const planPaper = 'plan';

/** Offers as they were kept; one that this program cannot read throws, and is never left out in silence. */
export async function readOffers(store: Store): Promise<Offer[]> {
  return [...(await store.papers(offerPaper))].map(([key, body]) => ({ ...offerBody.parse(JSON.parse(body)), key }));
}

export async function readViews(store: Store): Promise<SurvivalView[]> {
  return [...(await store.papers(viewPaper))].map(([, body]) => survivalView.parse(JSON.parse(body)));
}

export async function readPlans(store: Store): Promise<KeptPlan[]> {
  return [...(await store.papers(planPaper))].map(([, body]) => keptPlan.parse(JSON.parse(body)));
}

export function offerPapers(offers: readonly OfferBody[]): Paper[] {
  return offers.map((body, at) => ({ kind: offerPaper, key: numbered('o', at + 1), body: JSON.stringify(body) }));
}

/** The key after the last one; keys keep their order as text. */
export function nextKey(letter: string, keys: Iterable<string>): string {
  const last = [...keys].reduce((most, key) => Math.max(most, Number(key.slice(letter.length)) || 0), 0);
  return numbered(letter, last + 1);
}

function numbered(letter: string, number: number): string {
  return `${letter}${String(number).padStart(5, '0')}`;
}
