import { gramsPerPound } from '#shared/units.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { FirstYearHoney } from './firstYearHoney.ts';

/** More supers than this are not planned for a hive, whatever it made. */
const most = 8;

/**
 * Medium supers to own for a hive: the crop expected, by what a full super gives, times the room that nectar takes
 * until it is ripe. Pounds in; the share of supers and the whole ones, rounded up. Practice, from memory.
 */
export function supersFromYield(pounds: number, netPerSuper: number, ripening: number): { readonly exact: number; readonly whole: number } {
  const exact = (Math.max(0, pounds) / netPerSuper) * ripening;
  return { exact, whole: Math.ceil(exact - 1e-9) };
}

export interface SupersWanted {
  readonly each: number;
  readonly sentence: string;
}

/** Supers for a hive: the person's own rule, else by the own harvests of wintered colonies where they are enough, else the default. */
export function supersWanted(rules: RuleValues, frames: 8 | 10, honey: readonly FirstYearHoney[]): SupersWanted {
  const byRule = numberRule(rules, 'order.mediums');
  const crop = honey.find(({ source }) => source === 'established');
  if (crop === undefined || !crop.own) {
    return { each: byRule, sentence: `${inSupers(byRule)} a hive by ${rules.has('order.mediums') ? 'your house rule' : 'the house rule; there are too few harvests weighed colony by colony to tell it from your own'}.` };
  }
  const pounds = crop.grams / gramsPerPound;
  const net = numberRule(rules, frames === 8 ? 'order.superNet8' : 'order.superNet10');
  const ripening = numberRule(rules, 'order.superRipening');
  const { exact, whole } = supersFromYield(pounds, net, ripening);
  const each = Math.min(most, Math.max(1, whole));
  const reckoned = `Your wintered colonies made ${Math.round(pounds)} lb each (${crop.colonies} of them in ${crop.seasons} seasons); at ${net} lb a full super and ${ripening} times the room for ripening that is ${Math.round(exact * 100) / 100}, so ${inSupers(each)} a hive`;
  return rules.has('order.mediums') ? { each: byRule, sentence: `${inSupers(byRule)} a hive by your house rule. ${reckoned} would do.` } : { each, sentence: `${reckoned}.` };
}

function inSupers(count: number): string {
  return `${count} ${count === 1 ? 'super' : 'supers'}`;
}
