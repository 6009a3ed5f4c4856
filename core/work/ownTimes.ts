import { RRuleTemporal } from 'rrule-temporal';
import { Temporal } from 'temporal-polyfill';
import type { OwnTaskBody } from '#shared/contract/work.ts';
import { addDays, daysBetween, type Day } from '#shared/days.ts';

/** A time of a repeating task: its first and last day. */
export interface OwnTime {
  readonly earliest: Day;
  readonly latest: Day;
}

/** A rule that gave times without end would never be done with. */
const most = 400;

/**
 * The times of a task whose last day is not before `from` and whose first is not after `until`. Repeats by RFC 5545 are
 * worked out by `rrule-temporal`, in UTC and on whole days, so that no change of the clock moves them.
 */
export function ownTimes({ earliest, latest, repeat }: Pick<OwnTaskBody, 'earliest' | 'latest' | 'repeat'>, from: Day, until: Day): OwnTime[] {
  const length = daysBetween(earliest, latest);
  const starts = repeat === null ? [earliest] : occurrences(repeat, earliest, addDays(from, -length), until);
  return starts.map((start) => ({ earliest: start, latest: addDays(start, length) })).filter((time) => time.latest >= from && time.earliest <= until);
}

/** What is wrong with a task as it was written down, or null. */
export function ownTaskTrouble({ earliest, latest, repeat, yard, colonies }: OwnTaskBody): { sentence: string; mend: string; field: string } | null {
  if (latest < earliest) return { sentence: 'Its last day lies before its first.', mend: 'Set a later last day.', field: 'latest' };
  if (yard === null && colonies.length > 0) return { sentence: 'It names colonies and no yard.', mend: 'Choose the yard they stand in.', field: 'yard' };
  if (repeat === null) return null;
  const rule = ruleOf(repeat, earliest);
  if (rule === null) return { sentence: `“${repeat}” is no rule for repeating (RFC 5545).`, mend: 'Write it as in FREQ=WEEKLY;INTERVAL=2.', field: 'repeat' };
  if (!['DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY'].includes(rule.options().freq)) return { sentence: 'A task repeats by days, weeks, months or years.', mend: 'Begin it with FREQ=DAILY, WEEKLY, MONTHLY or YEARLY.', field: 'repeat' };
  const second = rule.all((_, at) => at < 2)[1];
  if (second === undefined) return { sentence: 'By that rule it comes once only.', mend: 'Take the rule away, or change it.', field: 'repeat' };
  return null;
}

function occurrences(repeat: string, start: Day, from: Day, until: Day): Day[] {
  const rule = ruleOf(repeat, start);
  if (rule === null) return [];
  const days = rule.between(atNoon(from), atNoon(until), true).slice(0, most);
  return days.map((time) => time.toPlainDate().toString() as Day);
}

function ruleOf(repeat: string, start: Day): RRuleTemporal | null {
  if (/DTSTART|[\r\n]|\b(BYHOUR|BYMINUTE|BYSECOND|TZID|RSCALE)\b/i.test(repeat)) return null;
  try {
    return new RRuleTemporal({ rruleString: repeat.replace(/^RRULE:/i, ''), dtstart: atNoon(start) });
  } catch {
    // The library throws for whatever it cannot read, of no one kind.
    return null;
  }
}

function atNoon(day: Day) {
  return Temporal.PlainDate.from(day).toZonedDateTime({ timeZone: 'UTC', plainTime: '12:00' });
}
