import type { Offer, PaidPrice } from '#shared/contract/offers.ts';
import { dayFromIso, dayInWords, type Day } from '#shared/days.ts';
import type { Borders } from '#shared/seasons.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { BeeWare, PackWare } from './orderProblem.ts';

/** Average prices paid, USDA NASS, Honey, 18 March 2022 (prices of 2021; read in a reprint); minor units. */
export const nassPrices = { package: 9100, nuc: 12_500, queen: 2000 } as const;

export interface Wares {
  readonly bees: readonly BeeWare[];
  /** Packs on offer, with the item as the offer names it. */
  readonly packs: readonly { readonly item: string; readonly ware: PackWare }[];
  readonly leftOut: readonly { readonly offer: string; readonly sentence: string }[];
  /** Sentences about prices that are assumed because nobody's offer is kept. */
  readonly assumed: readonly string[];
}

/** Offers as wares of the programme: what cannot arrive in time is left out, with the reason. */
export function waresOf(
  offers: readonly Offer[], paid: readonly PaidPrice[], when: { readonly today: Day; readonly spring: Day; readonly targetDay: Day }, factor: number, rules: RuleValues, borders: Borders,
): Wares {
  const bees: BeeWare[] = [];
  const packs: { item: string; ware: PackWare }[] = [];
  const leftOut: { offer: string; sentence: string }[] = [];
  const offeredKinds = new Set<string>();
  for (const offer of offers) {
    const { key, what, least, most, orderBy } = offer;
    const late = orderBy < when.today;
    const base = { key, least, most, late };
    if (what.kind === 'equipment') {
      packs.push({ item: what.item, ware: { ...base, steps: offer.steps, packSize: what.packSize } });
    } else {
      offeredKinds.add(what.kind);
      const after = offer.deliveryFrom !== null && offer.deliveryFrom > when.targetDay;
      if (after) {
        leftOut.push({ offer: key, sentence: `${offer.seller} delivers from ${dayInWords(offer.deliveryFrom as Day)} on, after the day of the target, ${dayInWords(when.targetDay)}.` });
        continue;
      }
      bees.push({ ...base, kind: what.kind, orderBy, steps: offer.steps.map(({ from, each }) => ({ from, each: Math.round(each * factor) })) });
    }
    if (late) leftOut.push({ offer: key, sentence: `${offer.seller} took orders until ${dayInWords(orderBy)}; that day is past.` });
  }
  const assumed: string[] = [];
  const assume = (kind: 'package' | 'nuc' | 'queen') => {
    const last = paid.find((one) => one.kind === kind);
    const each = Math.round((last?.each ?? nassPrices[kind]) * factor);
    const orderBy = orderDay(when.spring, textRule(rules, kind === 'nuc' ? 'order.nuc.by' : 'order.package.by'), borders);
    bees.push({ key: `assumed ${kind}`, kind, steps: [{ from: 1, each }], least: 1, most: null, late: orderBy < when.today, orderBy });
    assumed.push(`No offer of ${kind}s is kept; the price is ${last === undefined ? 'the US average of 2021 (USDA NASS), and sellers of small lots ask more' : `what was paid on ${dayInWords(last.day)}`}.`);
  };
  if (!offeredKinds.has('package') && !offeredKinds.has('nuc') && !offeredKinds.has('colony')) {
    assume('package');
    assume('nuc');
  }
  if (!offeredKinds.has('queen')) assume('queen');
  return { bees, packs, leftOut, assumed };
}

/** The sellers' last day for that spring: of the winter's first part in the year before, else of the spring's own year. */
export function orderDay(spring: Day, monthDay: string, borders: Borders): Day {
  const year = Number(spring.slice(0, 4)) - (monthDay >= borders.winterStart && borders.winterStart > borders.seasonStart ? 1 : 0);
  return dayFromIso(`${year}-${monthDay}`) ?? spring;
}

/** Minutes and honey forgone of each kind, in minor units, by the house rules and the first-year crops given in pounds. */
export function kindTerms(rules: RuleValues, crop: { readonly package: number; readonly nuc: number; readonly split: number; readonly established: number }, take: number) {
  const rule = (key: string) => numberRule(rules, `decision.${key}`);
  const forgone = (pounds: number) => Math.max(0, crop.established - pounds) * rule('honey.price') * 100;
  const onComb = rule('honey.package');
  // The record does not say what a package was hived on; the rules say how much less one on foundation makes.
  const foundation = onComb > 0 ? (crop.package * Math.min(rule('honey.foundation'), onComb)) / onComb : 0;
  return {
    minutes: {
      package: rule('minutes.package'), foundation: rule('minutes.foundation'), nuc: rule('minutes.nuc'), colony: rule('minutes.colony'),
      split: rule('minutes.split'), requeen: rule('minutes.requeen'), move: rule('minutes.move'),
    },
    honeyForgone: { package: forgone(crop.package), foundation: forgone(foundation), nuc: forgone(crop.nuc), colony: 0, // A split that does not take is no colony and forgoes no crop; that it is missing is priced by itself.
      split: forgone(crop.split) * take },
  };
}
