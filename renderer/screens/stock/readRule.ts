import type { HouseRule } from '#shared/contract/order.ts';
import { dayFromIso } from '#shared/days.ts';
import { dayShort, number } from '../../parts/format.ts';
import { words } from './words.ts';

export type RuleReading = { readonly ok: true; readonly value: HouseRule['value'] } | { readonly ok: false; readonly sentence: string };

/** A house rule's new value as typed, or a sentence that says what it wants. */
export function readRule(rule: HouseRule, text: string): RuleReading {
  const typed = text.trim();
  switch (rule.type) {
    case 'number': {
      const plain = typed.replace(/,(?=\d{3}\b)/g, '').replace(',', '.');
      const value = Number(plain);
      if (plain === '' || !Number.isFinite(value)) return { ok: false, sentence: words.ruleNumber };
      const [from, to] = rule.range ?? [-Infinity, Infinity];
      return value < from || value > to ? { ok: false, sentence: words.ruleBad(from, to) } : { ok: true, value };
    }
    case 'month-day':
      // 29 February is no border of a season: most years do not have it.
      return dayFromIso(`2025-${typed}`) === null ? { ok: false, sentence: words.ruleDay } : { ok: true, value: typed };
    case 'text':
      return { ok: true, value: typed };
  }
}

/** A house rule's value in words: "31 Jan" for a day of the year. */
export function ruleText(rule: HouseRule, value: HouseRule['value']): string {
  if (typeof value === 'number') return number(value, 4);
  return rule.type === 'month-day' ? dayShort(dayFromIso(`2025-${value}`)) : value;
}
