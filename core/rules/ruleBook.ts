import { sourceWords, type HouseRule } from '#shared/contract/order.ts';
import type { RuleBook, RuleLine, RuleRoom } from '#shared/contract/rules.ts';
import { houseRuleDefinitions, houseRules, type RuleValues } from './houseRules.ts';
import { labelRules, ruleAffects } from './ruleAffects.ts';

interface Room {
  readonly key: string;
  readonly heading: string;
  /** What the room's rules affect, all of them. */
  readonly line: string;
  readonly holds: (rule: Pick<HouseRule, 'room' | 'unit'>) => boolean;
}

const ofRoom = (room: string) => (rule: Pick<HouseRule, 'room'>) => rule.room === room;
/** The parts list of a hive is part of the order, and long enough for a heading of its own. */
const isPart = ({ room, unit }: Pick<HouseRule, 'room' | 'unit'>) => room === 'order' && unit === 'per colony';

/** The headings in the order in which the rules are read. The last one takes what no other does. */
const rooms: readonly Room[] = [
  { key: 'losses', heading: 'Seasons and the loss review', line: 'Where seasons begin, and how colonies are grouped and compared in Losses.', holds: ofRoom('losses') },
  { key: 'round', heading: 'The field sheet', line: 'What the printed field sheet says of a colony before you open it.', holds: ofRoom('round') },
  { key: 'attention', heading: 'What becomes due', line: 'From when, and until when, an entry asks for the next look.', holds: ofRoom('attention') },
  { key: 'needs', heading: 'What needs doing', line: 'What the list of needs asks for, how its lines are ranked, and the minutes they take.', holds: ofRoom('needs') },
  { key: 'order', heading: 'The order before spring', line: 'Survivors next spring, how many colonies to buy, and by when.', holds: (rule) => rule.room === 'order' && !isPart(rule) },
  { key: 'parts', heading: 'Parts of a hive', line: 'How many of each part one producing colony takes, on the equipment list.', holds: isPart },
  { key: 'decision', heading: 'The cheapest way to the target', line: 'Costs, minutes and crops by which ways to a colony are compared.', holds: ofRoom('decision') },
  { key: 'stock', heading: 'Equipment', line: 'What the account of boxes and frames takes for granted where the record says nothing.', holds: ofRoom('stock') },
  { key: 'mites', heading: 'Mites', line: 'From which count on a colony is spoken of, and how counts are carried forward, on the Mites page.', holds: ofRoom('mites') },
  { key: 'treatments', heading: 'Treatments', line: 'What each treatment needs of weather, supers and brood, on the Mites page. The label in the hand goes before every one.', holds: ofRoom('treatments') },
  { key: 'returns', heading: 'Costs and returns', line: 'How costs that no bill names are reckoned in the account of a season.', holds: ofRoom('returns') },
  { key: 'stores', heading: 'Stores and feeding', line: 'What a colony should have for winter, and how much syrup makes up what is short; the page Stores and winter works with these.', holds: ofRoom('stores') },
  { key: 'space', heading: 'Space, swarms and splits', line: 'When a colony wants a box, how likely it is to swarm, and until when it may be split.', holds: ofRoom('space') },
  { key: 'honey', heading: 'Honey', line: 'How much water honey may hold in a lot, the day on its jars, and how crops are compared, on the Honey page; the law of your place goes before these.', holds: ofRoom('honey') },
  { key: 'queens', heading: 'Queens', line: 'The days of a queen from graft, cell, split or cage, on the Queens page.', holds: ofRoom('queens') },
  { key: 'work', heading: 'The plan of the work', line: 'Which rounds and seasonal tasks the plan of the work has, by when, and how long each takes.', holds: ofRoom('work') },
  { key: 'others', heading: 'Others', line: 'Numbers of the rest of the program.', holds: () => true },
];

/** The headings under which rules of these keys stand, in the order of the page. */
export function roomsOf(keys: readonly string[]): { key: string; heading: string }[] {
  const wanted = houseRuleDefinitions.filter(({ key }) => keys.includes(key));
  const found = new Set(wanted.map((rule) => rooms.find(({ holds }) => holds(rule))));
  return rooms.flatMap((room) => (found.has(room) ? [{ key: room.key, heading: room.heading }] : []));
}

/** True for a rule that names where its number comes from, and says with one of the source words how sure that is. */
export function hasSourceWord({ source, confidence }: { readonly source: string; readonly confidence: string }): boolean {
  return source.trim() !== '' && sourceWords.some((word) => word === confidence);
}

/** Every house rule under its heading, with what it affects. Each rule stands once; headings without rules are left out. */
export function ruleBook(kept: RuleValues): RuleBook {
  const left = new Set(houseRules(kept));
  const found: RuleRoom[] = [];
  for (const { key, heading, line, holds } of rooms) {
    const own = [...left].filter(holds);
    for (const rule of own) left.delete(rule);
    if (own.length > 0) found.push({ key, heading, line, rules: own.map((rule) => lineOf(rule, line)) });
  }
  return { rooms: found };
}

/** How many rules there are, how many of them from memory, and how many without a source word. */
export function sourceCounts(rules: readonly { readonly source: string; readonly confidence: string }[]): { rules: number; fromMemory: number; without: number } {
  return {
    rules: rules.length,
    fromMemory: rules.filter(({ confidence }) => confidence === 'from memory').length,
    without: rules.filter((rule) => !hasSourceWord(rule)).length,
  };
}

function lineOf(rule: HouseRule, roomLine: string): RuleLine {
  return { ...rule, affects: ruleAffects[rule.key] ?? roomLine, changed: rule.value !== rule.default, treatment: labelRules.has(rule.key) };
}
