import type { HouseRule } from '#shared/contract/order.ts';
import { dayFromIso } from '#shared/days.ts';
import { converted, typedFigure, unitNamed } from '#shared/typedMeasure.ts';
import { dayShort, number, percent } from '../../parts/format.ts';
import { words } from './words.ts';

export type RuleReading = { readonly ok: true; readonly value: HouseRule['value'] } | { readonly ok: false; readonly sentence: string };

/** Shares are kept from 0 to 1, and shown and typed in per cent. */
function isShare(rule: HouseRule): boolean {
  return rule.type === 'number' && rule.unit === 'share';
}

/** A house rule's new value as typed, or a sentence that says what it wants. */
export function readRule(rule: HouseRule, text: string): RuleReading {
  const typed = text.trim();
  switch (rule.type) {
    case 'number': {
      const times = isShare(rule) ? 100 : 1;
      const [from, to] = (rule.range ?? [-Infinity, Infinity]).map((bound) => rounded(bound * times));
      const found = typedFigure(typed, to);
      if (found === null) return { ok: false, sentence: words.ruleNumber };
      const unit = isShare(rule) ? '%' : unitNamed(rule.unit.toLowerCase());
      const named = unitNamed(found.unit);
      const own = [rule.unit.toLowerCase(), rule.unit.toLowerCase().replace(/s$/, '').replace(/ie$/, 'y')];
      const value = found.unit === '' || own.includes(found.unit) ? found.amount : unit === null || named === null ? null : converted(found.amount, named, unit);
      if (value === null) return { ok: false, sentence: words.ruleUnit(typed, isShare(rule) ? '%' : rule.unit) };
      if (value < (from ?? -Infinity) || value > (to ?? Infinity)) return { ok: false, sentence: words.ruleBad(from ?? -Infinity, to ?? Infinity) };
      return { ok: true, value: rounded(value / times) };
    }
    case 'month-day':
      // 29 February is no border of a season: most years do not have it.
      return dayFromIso(`2025-${typed}`) === null ? { ok: false, sentence: words.ruleDay } : { ok: true, value: typed };
    case 'text':
      return typed === '' ? { ok: false, sentence: words.ruleWords } : { ok: true, value: typed };
  }
}

/** What stands in the field when a rule is to be changed. */
export function ruleTyped(rule: HouseRule): string {
  return typeof rule.value === 'number' && isShare(rule) ? String(rounded(rule.value * 100)) : String(rule.value);
}

/** A house rule's value in words, with its unit: "31 Jan", "80 %", "2 per colony". */
export function ruleText(rule: HouseRule, value: HouseRule['value']): string {
  if (typeof value === 'number') return isShare(rule) ? percent(value, 1) : [number(value, 4), rule.unit].filter((part) => part !== '').join('\u00a0');
  return rule.type === 'month-day' ? dayShort(dayFromIso(`2025-${value}`)) : value;
}

/** Takes the dust off a product of decimal fractions. */
function rounded(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}
