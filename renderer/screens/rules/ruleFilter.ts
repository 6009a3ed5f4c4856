import type { RuleRoom } from '#shared/contract/rules.ts';
import { fold } from '#shared/fold.ts';
import { matches } from '../../parts/searchText.ts';
import { words } from './words.ts';

export type RuleShow = keyof typeof words.shows;

/** The rules that fit, under their headings; a heading with none is left out. A heading's own words find all its rules. */
export function fittingRules(rooms: readonly RuleRoom[], show: RuleShow, typed: string): RuleRoom[] {
  return rooms
    .map((room) => ({
      ...room,
      rules: room.rules.filter(
        (rule) =>
          (show === 'all' || (show === 'changed' ? rule.changed : rule.confidence === 'from memory')) &&
          matches(fold([room.heading, rule.label, rule.affects, rule.source, words.sourceWord[rule.confidence], rule.treatment ? words.label : '', rule.key, rule.unit].join(' ')), typed),
      ),
    }))
    .filter(({ rules }) => rules.length > 0);
}
