import type { ListedOffer, Offer, OfferBody, Offered } from '#shared/contract/offers.ts';
import { dayInWords, type Day } from '#shared/days.ts';

/** Why an offer cannot be kept, with the field and what would mend it. */
export interface OfferTrouble {
  readonly field: string;
  readonly sentence: string;
  readonly mend: string;
}

/** The first thing wrong with an offer, or null. A price of nothing is only refused until it is said to be meant. */
export function offerTrouble(offer: OfferBody, free: boolean): OfferTrouble | null {
  const { what, steps, least, most } = offer;
  if (what.kind === 'equipment' && what.packSize === 0) return { field: 'what.packSize', sentence: `A pack of ${what.item} with nothing in it cannot be ordered.`, mend: 'Write how many there are in a pack; 1 if they are sold singly.' };
  if (what.kind === 'package' && what.pounds === 0) return { field: 'what.pounds', sentence: 'A package of 0 lb holds no bees.', mend: 'Write its weight in pounds; 3 is usual.' };
  if (what.kind === 'nuc' && what.frames === 0) return { field: 'what.frames', sentence: 'A nuc of 0 frames holds no bees.', mend: 'Write how many frames it has; 4 or 5 is usual.' };
  if (steps.some(({ each }) => each === 0) && !free) return { field: 'steps', sentence: `${offer.seller} would give ${offeredWords(what)} away: the price is 0.`, mend: 'Write the price, or say that it is really free.' };
  for (const [at, step] of steps.entries()) {
    const before = steps[at - 1];
    if (before !== undefined && step.from <= before.from) return { field: 'steps', sentence: `The price from ${step.from} stands after the price from ${before.from}.`, mend: 'List the prices by rising numbers.' };
  }
  const first = steps[0];
  if (first !== undefined && first.from > least) return { field: 'steps', sentence: `At least ${least} are to be ordered, but the first price holds from ${first.from}.`, mend: 'Add the price for fewer, or raise the least number.' };
  if (most !== null && most < least) return { field: 'most', sentence: `At most ${most} are to be had, but at least ${least} must be ordered.`, mend: 'One of the two numbers is wrong.' };
  if (offer.deliveryFrom !== null && offer.deliveryUntil !== null && offer.deliveryUntil < offer.deliveryFrom) return { field: 'deliveryUntil', sentence: `Delivery would end on ${dayInWords(offer.deliveryUntil)}, before it begins on ${dayInWords(offer.deliveryFrom)}.`, mend: 'Exchange the two days.' };
  if (offer.deliveryUntil !== null && offer.deliveryUntil < offer.orderBy) return { field: 'orderBy', sentence: `It could be ordered until ${dayInWords(offer.orderBy)}, after the last delivery on ${dayInWords(offer.deliveryUntil)}.`, mend: 'One of the two days is wrong.' };
  return null;
}

export function offeredWords(what: Offered): string {
  switch (what.kind) {
    case 'package':
      return `${what.pounds} lb packages`;
    case 'nuc':
      return `nucs of ${what.frames} frames`;
    case 'queen':
      return 'mated queens';
    case 'colony':
      return 'full colonies';
    case 'equipment':
      return what.packSize === 1 ? what.item : `${what.item}, ${what.packSize} to a pack`;
  }
}

/** How it is listed on a day: what should be known of it now. */
export function listOffer(offer: Offer, today: Day): ListedOffer {
  const late = offer.orderBy < today;
  return {
    ...offer, words: offeredWords(offer.what), late,
    remarks: [
      ...(late ? [`Orders closed on ${dayInWords(offer.orderBy)}; it is left out of the plan. If ${offer.seller} still takes orders, change the day.`] : []),
      ...(offer.steps.some(({ each }) => each === 0) ? ['It is free.'] : []),
    ],
  };
}
