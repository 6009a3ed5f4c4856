import type { OutputOf } from '#shared/contract/contract.ts';
import type { Offer, PaidPrice } from '#shared/contract/offers.ts';
import { dayInWords, type Day } from '#shared/days.ts';
import { gramsPerPound } from '#shared/units.ts';
import { periodDays, seasonOf, type Borders } from '#shared/seasons.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { wilsonInterval } from '#core/stats/wilsonInterval.ts';
import { firstYearHoney } from './firstYearHoney.ts';
import { nassPrices } from './wares.ts';

type Comparison = OutputOf<'order.compare'>;
type Row = Comparison['rows'][number];

export interface CompareFacts {
  readonly states: readonly ColonyState[];
  readonly borders: Borders;
  readonly rules: RuleValues;
  readonly asOf: Day;
  readonly offers: readonly Offer[];
  readonly paid: readonly PaidPrice[];
}

/** Package or nuc for this person: price, how they lived, comb, work, first-year honey, side by side. */
export function compareSources(facts: CompareFacts): Comparison {
  const rows = (['package', 'nuc'] as const).map((kind) => sourceRow(kind, facts));
  const [packages, nucs] = rows as [Row, Row];
  return { rows, paid: facts.paid.filter(({ kind }) => kind === 'package' || kind === 'nuc' || kind === 'colony' || kind === 'queen'), sentences: sentences(packages, nucs) };
}

function sourceRow(kind: 'package' | 'nuc', facts: CompareFacts): Row {
  const rule = (key: string) => numberRule(facts.rules, `decision.${key}`);
  const honeyOf = firstYearHoney(facts.states, facts.borders, facts.asOf, facts.rules).find(({ source }) => source === kind);
  if (honeyOf === undefined) throw new Error(`no figure for the honey of a ${kind}`);
  const price = priceOf(kind, facts);
  const minutes = rule(`minutes.${kind}`);
  const crop = (honeyOf.grams / gramsPerPound) * rule('honey.price') * 100;
  return {
    kind, price,
    honey: { grams: honeyOf.grams, low: honeyOf.low, high: honeyOf.high, colonies: honeyOf.colonies, seasons: honeyOf.seasons, own: honeyOf.own, source: honeyOf.from, confidence: honeyOf.confidence },
    lived: lived(kind, facts),
    combs: kind === 'package' ? rule('comb.package') : 0,
    minutes,
    firstYear: price === null ? null : price.each + (minutes * rule('hourValue') * 100) / 60 - crop,
  };
}

/** The cheapest offer that can still be ordered, else what was paid last, else the published average. */
function priceOf(kind: 'package' | 'nuc', { offers, paid, asOf }: CompareFacts): Row['price'] {
  const open = offers.filter(({ what, orderBy }) => what.kind === kind && orderBy >= asOf).map((offer) => ({ offer, each: offer.steps[0]?.each ?? 0 })).toSorted((a, b) => a.each - b.each)[0];
  if (open !== undefined) return { each: open.each, from: `Offer of ${open.offer.seller}, for ${open.offer.steps[0]?.from ?? 1} or more.` };
  const last = paid.find((one) => one.kind === kind);
  if (last !== undefined) return { each: last.each, from: `Paid on ${dayInWords(last.day)}${last.seller === null ? '' : ` to ${last.seller}`}.` };
  return { each: nassPrices[kind], from: 'US average of 2021 (USDA NASS); sellers of small lots ask more.' };
}

/** Bought in past seasons, and still alive when that season's winter began; sold, given and united ones are left out. */
function lived(kind: 'package' | 'nuc', { states, borders, asOf }: CompareFacts): Row['lived'] {
  let [alive, of] = [0, 0];
  for (const state of states) {
    if (state.origin !== kind) continue;
    const winter = periodDays(seasonOf(state.start, borders), 'winter', borders).from;
    if (winter > asOf || state.start >= winter) continue;
    const standing = aliveBefore(state, winter);
    if (!standing && state.how !== 'lost' && state.how !== 'absconded') continue;
    of += 1;
    if (standing) alive += 1;
  }
  const limits = wilsonInterval(alive, of);
  return limits === null ? null : { alive, of, low: limits.lower, high: limits.upper };
}

function sentences(packages: Row, nucs: Row): string[] {
  const pounds = (row: Row) => Math.round(row.honey.grams / gramsPerPound);
  const found: string[] = [];
  if (packages.price !== null && nucs.price !== null && packages.price.each > 0) {
    const more = Math.round((nucs.price.each / packages.price.each - 1) * 100);
    found.push(more === 0 ? 'A nuc costs as much as a package.' : `A nuc costs ${Math.abs(more)} % ${more > 0 ? 'more' : 'less'} than a package.`);
  }
  const both = packages.honey.own && nucs.honey.own;
  const apart = both && packages.honey.low !== null && nucs.honey.low !== null && ((packages.honey.high ?? 0) < nucs.honey.low || (nucs.honey.high ?? 0) < packages.honey.low);
  found.push(both
    ? `By your own harvests a package gave about ${pounds(packages)} lb in its first year and a nuc ${pounds(nucs)} lb${apart ? '.' : '; the ranges overlap, so this is no proof of a difference.'}`
    : 'There are too few harvests weighed colony by colony to compare their honey by your own record; the figures are from the house rules.');
  if (packages.firstYear !== null && nucs.firstYear !== null) {
    const [cheaper, other] = packages.firstYear <= nucs.firstYear ? (['package', 'nuc'] as const) : (['nuc', 'package'] as const);
    const gap = Math.round(Math.abs(packages.firstYear - nucs.firstYear) / 100);
    found.push(gap === 0 ? 'With work and first-year honey counted they cost the same.' : `With work and first-year honey counted, a ${cheaper} costs about $${gap} less than a ${other} in its first year.`);
  }
  found.push(`A package on ${packages.combs} drawn combs starts like a nuc; on foundation it draws comb first.`);
  return found;
}
