import { amountUnits, boxes, feeds, massUnits } from '#shared/entryForms.ts';
import { meant } from '#shared/roundMarks.ts';
import { gramsFrom, massIn, type MassUnit } from '#shared/units.ts';
import type { SheetSetting } from './sheetSetting.ts';

export type AmountUnit = (typeof amountUnits)[number];
export type Feed = (typeof feeds)[number];
export type Box = (typeof boxes)[number];

/** A figure with at most two decimals, point or comma; null if the text is none. Thousands are not parted. */
export function figure(text: string): number | null {
  const parts = /^(\d{0,5})(?:[.,](\d{0,2}))?$/.exec(text);
  return parts && /\d/.test(text) ? Number(`${parts[1] || '0'}.${parts[2] || '0'}`) : null;
}

export interface Weight {
  readonly amount: number;
  readonly unit: MassUnit;
}

/** `45`, `45 lb`, `20.5kg`; without a unit it is the book's. */
export function readWeight(text: string, { massUnit }: SheetSetting): Weight | null {
  const parts = /^([\d.,]+)\s*([a-z]*)$/.exec(text.toLowerCase());
  const amount = figure(parts?.[1] ?? '');
  const named = parts?.[2] ?? '';
  const unit = named === '' ? massUnit : (massUnits.find((one) => one === named) ?? (named === 'lbs' ? 'lb' : undefined));
  return amount === null || unit === undefined ? null : { amount, unit };
}

/** The shortest way in which a weight reads as the same again. */
export function weightText({ amount, unit }: Weight, { massUnit }: SheetSetting): string {
  return unit === massUnit ? String(amount) : `${amount} ${unit}`;
}

/** A weight in another unit, to the hundredth. */
export function weightIn({ amount, unit }: Weight, wanted: MassUnit): number {
  return unit === wanted ? amount : Number(massIn(gramsFrom(amount, unit), wanted).toFixed(2));
}

/** What a feed cell says; null for what it leaves to the sheet. */
export interface FeedGiven {
  readonly feed: Feed | null;
  readonly amount: { readonly amount: number; readonly unit: AmountUnit | null } | null;
}

/**
 * `1 gal`, `2l`, `1.5 2:1`, `5 lb f`, `p`; the mark for yes alone is the sheet's own feed and amount. Null if a part is
 * not understood or comes twice.
 */
export function readFeed(text: string, { marks }: SheetSetting): FeedGiven | null {
  let feed: Feed | null = null;
  let amount: number | null = null;
  let unit: AmountUnit | null = null;
  // "syrup 1:1" is one word here, and a unit may stand close to its figure.
  const parts = text.toLowerCase().replace(/syrup\s+/g, 'syrup_').replace(/pollen\s+sub/g, 'pollen_sub').replace(/(^|\s)([\d.,]+)(gal|l|lb|kg)(?=\s|$)/g, '$1$2 $3').split(/\s+/);
  if (parts.length === 1 && [marks.yes, 'yes'].includes(parts[0] ?? '')) return { feed: null, amount: null };
  for (const written of parts) {
    const part = written.replaceAll('_', ' ');
    const [named, ...more] = feedsMeant(part, marks);
    const number = figure(part);
    const known = amountUnits.find((one) => one === part);
    if (named !== undefined && more.length === 0 && feed === null) feed = named;
    else if (number !== null && amount === null) amount = number;
    else if (known !== undefined && amount !== null && unit === null) unit = known;
    else return null;
  }
  return { feed, amount: amount === null ? null : { amount, unit } };
}

function feedsMeant(part: string, marks: SheetSetting['marks']): readonly Feed[] {
  return /^(1:1|2:1)$/.test(part) ? feeds.filter((feed) => feed.endsWith(part)) : meant(part, feeds, marks);
}

export function feedText({ feed, amount }: FeedGiven): string {
  if (feed === null && amount === null) return 'yes';
  const figures = amount === null ? '' : `${amount.amount}${amount.unit === null ? '' : ` ${amount.unit}`}`;
  return [figures, feed ?? ''].filter((part) => part !== '').join(' ');
}

/** Syrup by volume, solid feed by weight, in the book's own kind of units. */
export function feedUnit(feed: Feed, { massUnit }: SheetSetting): AmountUnit {
  if (!feed.startsWith('syrup')) return massUnit;
  return massUnit === 'lb' ? 'gal' : 'l';
}

export interface Supers {
  readonly count: number;
  readonly box: Box;
}

/** `2m`, `1 d`, `2m 1s`; a box alone is one of it. Null if it is not understood, or names a box twice. */
export function readSupers(text: string, { marks }: SheetSetting): Supers[] | null {
  const found: Supers[] = [];
  for (const part of text.toLowerCase().split(/[\s+]+/).reduce<string[]>(joinFigures, [])) {
    const [, digits = '', name = ''] = /^(\d{0,2})([^\d].*)$/.exec(part) ?? [];
    const fits = name === '' ? [] : meant(name, boxes, marks);
    const [box] = fits;
    const count = digits === '' ? 1 : Number(digits);
    if (box === undefined || fits.length > 1 || count === 0 || found.some((one) => one.box === box)) return null;
    found.push({ count, box });
  }
  return found.length === 0 ? null : found;
}

/** `2 m` is one part: a figure alone belongs to what follows it. */
function joinFigures(parts: string[], next: string): string[] {
  const last = parts.at(-1);
  if (last !== undefined && /^\d+$/.test(last) && !/^\d/.test(next)) return [...parts.slice(0, -1), last + next];
  return next === '' ? parts : [...parts, next];
}

export function supersText(supers: readonly Supers[]): string {
  return supers.map(({ count, box }) => `${count} ${box}`).join(' ');
}
