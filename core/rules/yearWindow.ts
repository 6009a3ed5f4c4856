import { day, monthDayOf, yearOf, type Day } from '#shared/days.ts';
import { seasonOf } from '#shared/seasons.ts';
import { textRule, type RuleValues } from './houseRules.ts';

/** True from the one day of the year to the other, both included; a window may reach over the turn of the year. */
export function inYearWindow(on: Day, fromKey: string, untilKey: string, rules: RuleValues): boolean {
  const [at, from, until] = [monthDayOf(on), textRule(rules, fromKey), textRule(rules, untilKey)];
  return from <= until ? at >= from && at <= until : at >= from || at <= until;
}

/** The day that a rule names, in the season that a day lies in. */
export function inSeasonOf(on: Day, key: string, rules: RuleValues): Day {
  const borders = { seasonStart: textRule(rules, 'season.start'), winterStart: textRule(rules, 'season.winter') };
  const [monthDay, season] = [textRule(rules, key), seasonOf(on, borders)];
  return day(`${String(monthDay >= borders.seasonStart ? season : season + 1).padStart(4, '0')}-${monthDay}`);
}

/** The last time before or on a day that the rule's day came round. */
export function lastYearDay(on: Day, key: string, rules: RuleValues): Day {
  const monthDay = textRule(rules, key);
  return day(`${String(monthDayOf(on) >= monthDay ? yearOf(on) : yearOf(on) - 1).padStart(4, '0')}-${monthDay}`);
}
