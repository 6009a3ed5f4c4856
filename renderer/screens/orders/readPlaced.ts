import type { InputOf } from '#shared/contract/contract.ts';
import type { ListedOffer } from '#shared/contract/offers.ts';
import { money } from '../../parts/format.ts';
import type { SellerLine } from './bySeller.ts';
import { readCents, readPrice } from './readCents.ts';
import { words } from './words.ts';

/** A line of an order as it is typed. */
export interface TypedLine {
  readonly offer: string;
  readonly words: string;
  readonly packSize: number;
  readonly quantity: string;
  /** Price of each, or of a pack. */
  readonly each: string;
  /** The price was typed; until then it follows the offer's steps. */
  readonly own: boolean;
}

type Lines = InputOf<'orders.place'>['lines'];

export interface PlacedRead {
  /** Null where something cannot be read, or nothing is ordered. */
  readonly lines: Lines | null;
  readonly nothing: boolean;
  /** Minor units. */
  readonly total: number;
  readonly faults: readonly { readonly quantity?: string; readonly each?: string }[];
}

export function typedLines(lines: readonly SellerLine[]): TypedLine[] {
  return lines.map(({ offer, words: what, packSize, quantity, each }) => ({ offer, words: what, packSize, quantity: String(quantity), each: priceText(each), own: false }));
}

/** The price that the offer asks for the number typed, unless another was typed. */
export function withPrice(line: TypedLine, offer: ListedOffer | undefined): TypedLine {
  const quantity = readQuantity(line.quantity);
  const step = offer?.steps.findLast(({ from }) => quantity !== null && from <= quantity);
  return line.own || step === undefined ? line : { ...line, each: priceText(step.each) };
}

/** What was typed as the desk takes it. A line of none, or left empty, is not ordered. */
export function readPlaced(typed: readonly TypedLine[]): PlacedRead {
  const faults = typed.map((line) => {
    const quantity = readQuantity(line.quantity);
    const price = readPrice(line.each);
    return {
      ...(quantity === null ? { quantity: words.must.whole } : {}),
      ...(quantity !== 0 && !price.ok ? { each: price.sentence } : {}),
    };
  });
  const lines = typed.flatMap((line): Lines => {
    const [quantity, each] = [readQuantity(line.quantity), readCents(line.each)];
    return quantity === null || quantity === 0 || each === null ? [] : [{ offer: line.offer, quantity, each }];
  });
  const bad = faults.some((one) => Object.keys(one).length > 0);
  return { lines: bad || lines.length === 0 ? null : lines, nothing: !bad && lines.length === 0, total: lines.reduce((sum, { quantity, each = 0 }) => sum + quantity * each, 0), faults };
}

function readQuantity(text: string): number | null {
  const typed = text.trim().replaceAll(',', '');
  if (typed === '') return 0;
  return /^\d{1,5}$/.test(typed) ? Number(typed) : null;
}

function priceText(minor: number): string {
  return money(minor).replaceAll(',', '');
}
