import type { HouseRule } from '#shared/contract/order.ts';

const practice = 'common practice, no source';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source: string): Omit<HouseRule, 'value'> {
  return { key: `returns.${key}`, label, room: 'returns', unit, type: 'number', default: standard, range, source, confidence: practice };
}

/** What costs that no bill names are reckoned by. An hour's value is the order's own rule. */
export const returnRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  rule('years', 'Equipment is written off over', 'years', 10, [1, 30], 'House choice: in equal parts; your accountant’s rule may differ'),
  rule('mile', 'What a mile driven costs', '$', 0.5, [0, 5], 'House choice; put in your own, and 0 if you enter the fuel you buy'),
];
