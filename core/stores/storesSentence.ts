import type { Grams, Millilitres } from '#shared/brands.ts';
import { dayInWords, monthDayInWords, type Day } from '#shared/days.ts';
import { hold, number } from '#shared/figures.ts';
import { volumeIn, type MassUnit } from '#shared/units.ts';
import { mass, type StoresPhase } from './storesToday.ts';

export interface StoresSums {
  readonly colonies: number;
  readonly take: number;
  readonly leave: number;
  readonly feed: number;
  /** Short of their winter stores by the last word told, as the winter list has them. */
  readonly wentShort: number;
  readonly unknown: number;
  readonly heavy: number;
  readonly light: number;
  readonly sugar: number;
}

interface SentenceFacts {
  readonly phase: StoresPhase;
  readonly target: Grams;
  readonly feedBy: Day;
  readonly daysLeft: number;
  readonly unit: MassUnit;
}

/** So many days before feeding is over there may still be a flow. */
const flowStill = 21;

/** What the whole list comes to, in a few sentences. */
export function storesSentence(sums: StoresSums, { phase, target, feedBy, daysLeft, unit }: SentenceFacts): string {
  if (sums.colonies === 0) return 'No colonies stand in any yard.';
  const unknown = sums.unknown === 0 ? '' : ` Of the other ${number(sums.unknown)} nothing is told that still holds.`;
  const later = daysLeft > flowStill ? ' What they still bring in is not in it: look again before you buy all of it.' : '';
  const known = sums.colonies - sums.unknown;
  if (known === 0) return `Stores of none of the ${number(sums.colonies)} colonies are told by a weight or look that still holds.`;
  const of = `${number(sums.feed)} of ${number(known)} colonies that are told of`;
  switch (phase) {
    case 'autumn':
      return sums.feed === 0
        ? `None of ${number(known)} colonies that are told of is short of its winter stores.${unknown}`
        : `${of} are short of their winter stores (${mass(target, unit)}): ${syrup(sums.heavy, unit)} of 2:1 by ${monthDayInWords(feedBy)}, with ${mass(sums.sugar as Grams, unit, 0)} of sugar.${later}${unknown}`;
    case 'winter':
      return `${inWinter(sums, known, of, { target, feedBy, unit })}${unknown}`;
    case 'summer':
      return sums.feed === 0 ? `None of ${number(known)} colonies that are told of is low.${unknown}` : `${of} are low: ${syrup(sums.light, unit)} of 1:1, with ${mass(sums.sugar as Grams, unit, 0)} of sugar.${unknown}`;
  }
}

/** What is reckoned by the week may still be enough in a hive that never had what winter asks. */
function inWinter({ feed, wentShort }: StoresSums, known: number, of: string, { target, feedBy, unit }: Pick<SentenceFacts, 'target' | 'feedBy' | 'unit'>): string {
  const short = `${wentShort === 1 ? 'one was short of its' : `${number(wentShort)} were short of their`} winter stores (${mass(target, unit)})`;
  if (feed > 0) {
    const before = wentShort === 0 ? '' : ` By the last word told ${short}.`;
    return `By what was told in autumn ${of} may be low by now: heft ${feed === 1 ? 'it' : 'them'} first.${before} Heavy syrup was to be fed by ${dayInWords(feedBy)}.`;
  }
  if (wentShort > 0) return `None of ${number(known)} colonies that are told of is reckoned to be low yet, but ${short} by the last word told: heft ${wentShort === 1 ? 'it' : 'those'} first.`;
  return `By what was told in autumn none of ${number(known)} colonies is low yet; hefting tells.`;
}

/** "12 gal" or "45 l" */
export function syrup(volume: number, unit: MassUnit): string {
  const as = unit === 'kg' ? 'l' : 'gal';
  return `${number(volumeIn(volume as Millilitres, as))}${hold}${as}`;
}
