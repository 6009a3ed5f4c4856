import { addDays, day, monthDayOf, yearOf, type Day } from '#shared/days.ts';
import { textRule, type RuleValues } from '#core/rules/houseRules.ts';

/** A month-day of a house rule in the year of a day. */
export function dayInYear(rules: RuleValues, key: string, of: Day): Day {
  return day(`${yearOf(of)}-${textRule(rules, key)}`);
}

/** The last day on or before a day that falls on a month-day of a house rule. */
export function lastInYear(rules: RuleValues, key: string, of: Day): Day {
  const found = dayInYear(rules, key, of);
  return found <= of ? found : day(`${yearOf(of) - 1}-${textRule(rules, key)}`);
}

/** The stretch from one month-day to another around or next after a day; it may run over New Year. Both ends belong to it. */
export function stretch(rules: RuleValues, fromKey: string, untilKey: string, of: Day): { readonly from: Day; readonly until: Day } {
  const [from, until] = [textRule(rules, fromKey), textRule(rules, untilKey)];
  const on = (year: number, monthDay: string) => day(`${year}-${monthDay}`);
  const year = yearOf(of);
  if (from <= until) return monthDayOf(of) > until ? { from: on(year + 1, from), until: on(year + 1, until) } : { from: on(year, from), until: on(year, until) };
  return monthDayOf(of) > until ? { from: on(year, from), until: on(year + 1, until) } : { from: on(year - 1, from), until: on(year, until) };
}

/** True for a day that lies in the stretch, or at most so many days before it. */
export function isNear({ from, until }: { readonly from: Day; readonly until: Day }, of: Day, ahead: number): boolean {
  return of >= addDays(from, -ahead) && of <= until;
}
