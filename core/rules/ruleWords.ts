import type { HouseRule } from '#shared/contract/order.ts';
import { day, monthDayInWords } from '#shared/days.ts';
import { roundTo } from '#shared/units.ts';

/** A house rule's value in plain words with its unit: "31 January", "80 %", "2 per colony". */
export function ruleWords({ type, unit }: Pick<HouseRule, 'type' | 'unit'>, value: HouseRule['value']): string {
  if (typeof value === 'number') return isShare(unit) ? `${roundTo(value * 100, 4)} %` : `${value} ${unit}`.trim();
  return type === 'month-day' ? monthDayInWords(day(`2025-${value}`)) : value;
}

/** What a rule may be: "5 to 80 %", "any day of the year". */
export function rangeWords({ type, unit, range, choices }: Pick<HouseRule, 'type' | 'unit' | 'range' | 'choices'>): string {
  if (choices !== undefined) return choices.join(', ');
  if (type === 'month-day') return 'any day of the year';
  if (type === 'text') return 'up to 80 characters';
  if (range === null) return 'any number';
  const times = isShare(unit) ? 100 : 1;
  return `${roundTo(range[0] * times, 4)} to ${roundTo(range[1] * times, 4)}${isShare(unit) ? ' %' : ''}`;
}

function isShare(unit: string): boolean {
  return unit === 'share';
}
