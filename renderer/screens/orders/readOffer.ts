import type { ListedOffer, OfferBody, Offered } from '#shared/contract/offers.ts';
import { dayFromTyped, type DateOrder, type Day } from '#shared/days.ts';
import { readMeasure } from '#shared/typedMeasure.ts';
import { money } from '../../parts/format.ts';
import { readPrice } from './readCents.ts';
import { words } from './words.ts';

/** What may stand after a number of things. */
const wholeWords = ['frame', 'frames', 'pc', 'pcs', 'piece', 'pieces', 'package', 'packages', 'pack', 'packs', 'nuc', 'nucs', 'queen', 'queens', 'colony', 'colonies'];

/** As the desk takes them; a nuc of more frames than fit its box is none. */
const [most, mostFrames] = [100_000, 12];

export const offerKinds = ['package', 'nuc', 'queen', 'colony', 'equipment'] as const;

/** An offer as it is typed. */
export const blankOffer = {
  seller: '', kind: 'package', pounds: '3', frames: '5', item: '', packSize: '1', each: '', from2: '', each2: '', from3: '', each3: '',
  orderBy: '', deliveryFrom: '', deliveryUntil: '', least: '1', most: '', deposit: '', note: '',
};
export type TypedOffer = typeof blankOffer;
export type OfferPart = keyof TypedOffer;
export type OfferFaults = Partial<Record<OfferPart, string>>;

/** An offer in the book as the form shows it. */
export function typedOffer(offer: ListedOffer): TypedOffer {
  const { what, steps } = offer;
  const step = (at: number, part: 'from' | 'each') => {
    const found = steps[at];
    return found === undefined ? '' : part === 'from' ? String(found.from) : money(found.each).replaceAll(',', '');
  };
  return {
    seller: offer.seller, kind: what.kind, pounds: what.kind === 'package' ? String(what.pounds) : blankOffer.pounds, frames: what.kind === 'nuc' ? String(what.frames) : blankOffer.frames,
    item: what.kind === 'equipment' ? what.item : '', packSize: what.kind === 'equipment' ? String(what.packSize) : '1',
    each: step(0, 'each'), from2: step(1, 'from'), each2: step(1, 'each'), from3: step(2, 'from'), each3: step(2, 'each'),
    orderBy: offer.orderBy, deliveryFrom: offer.deliveryFrom ?? '', deliveryUntil: offer.deliveryUntil ?? '', least: String(offer.least),
    most: offer.most === null ? '' : String(offer.most), deposit: offer.deposit === null ? '' : money(offer.deposit).replaceAll(',', ''), note: offer.note ?? '',
  };
}

/** The typed offer as the desk takes it, or what is wrong, field by field; what it means the desk judges. */
export function readOffer(typed: TypedOffer, order: DateOrder): { readonly offer: OfferBody | null; readonly faults: OfferFaults } {
  const faults: OfferFaults = {};
  const whole = (part: OfferPart, empty: number | null, above = most): number | null => {
    const text = typed[part].trim();
    if (text === '' && empty !== null) return empty;
    const read = readMeasure(text, { unit: null, own: wholeWords, most: above, whole: true, suchAs: '10' });
    if (read.ok) return read.value;
    faults[part] = text === '' ? words.must.whole : read.sentence;
    return null;
  };
  const cents = (part: OfferPart): number | null => {
    const read = readPrice(typed[part]);
    if (!read.ok) faults[part] = read.sentence;
    return read.ok ? read.cents : null;
  };
  const day = (part: OfferPart, must: boolean): Day | null => {
    if (typed[part].trim() === '' && !must) return null;
    const found = dayFromTyped(typed[part], order);
    if (found === null) faults[part] = words.must.day;
    return found;
  };
  if (typed.seller.trim() === '') faults.seller = words.must.seller;
  const what = readWhat(typed, faults, whole);
  const least = whole('least', 1);
  const atMost = typed.most.trim() === '' ? null : whole('most', null);
  const first = cents('each');
  const more = ([['from2', 'each2'], ['from3', 'each3']] as const).flatMap(([from, each]) => (typed[from].trim() === '' && typed[each].trim() === '' ? [] : [{ from: whole(from, null), each: cents(each) }]));
  const deposit = typed.deposit.trim() === '' ? null : cents('deposit');
  const orderBy = day('orderBy', true);
  const deliveryFrom = day('deliveryFrom', false);
  const deliveryUntil = day('deliveryUntil', false);
  if (Object.keys(faults).length > 0 || what === null || orderBy === null || least === null) return { offer: null, faults };
  return {
    faults,
    offer: {
      seller: typed.seller.trim(), what, orderBy, deliveryFrom, deliveryUntil, least: Math.max(1, least), most: atMost, deposit, note: typed.note.trim() === '' ? null : typed.note.trim(),
      steps: [{ from: 1, each: first ?? 0 }, ...more.map(({ from, each }) => ({ from: Math.max(1, from ?? 1), each: each ?? 0 }))],
    },
  };
}

function readWhat(typed: TypedOffer, faults: OfferFaults, whole: (part: OfferPart, empty: number | null, above?: number) => number | null): Offered | null {
  switch (typed.kind) {
    case 'package': {
      const read = readMeasure(typed.pounds, { unit: 'lb', most: 20, suchAs: '3' });
      if (!read.ok) faults.pounds = read.sentence;
      return { kind: 'package', pounds: read.ok ? read.value : 0 };
    }
    case 'nuc': {
      const frames = whole('frames', null, mostFrames);
      return frames === null ? null : { kind: 'nuc', frames };
    }
    case 'equipment': {
      if (typed.item.trim() === '') faults.item = words.must.item;
      const packSize = whole('packSize', null);
      return packSize === null ? null : { kind: 'equipment', item: typed.item.trim(), packSize };
    }
    case 'queen':
    case 'colony':
      return { kind: typed.kind };
    default:
      return null;
  }
}

/** The form's field for the place in the offer that the desk names. */
export function partOf(field: string | undefined): OfferPart | null {
  switch (field) {
    case 'what.packSize':
      return 'packSize';
    case 'what.pounds':
      return 'pounds';
    case 'what.frames':
      return 'frames';
    case 'steps':
      return 'each';
    default:
      return field !== undefined && field in blankOffer ? (field as OfferPart) : null;
  }
}
