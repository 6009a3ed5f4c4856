import { expect, test } from 'vitest';
import { houseRule, sourceWords, type HouseRule } from '#shared/contract/order.ts';
import { houseRuleDefinitions, houseRules, ruleTrouble } from '#core/rules/houseRules.ts';
import { labelRules, ruleAffects } from '#core/rules/ruleAffects.ts';
import { hasSourceWord, ruleBook, sourceCounts } from '#core/rules/ruleBook.ts';
import { rangeWords, ruleWords } from '#core/rules/ruleWords.ts';

const lines = ruleBook(new Map()).rooms.flatMap(({ rules }) => rules);

test('every house rule stands once, under a heading of its own kind, and says what it affects', () => {
  expect(lines.map(({ key }) => key).toSorted()).toEqual(houseRuleDefinitions.map(({ key }) => key).toSorted());
  expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
  expect(ruleBook(new Map()).rooms.map(({ key }) => key)).not.toContain('others');
  for (const { affects, key } of lines) expect(affects, key).toMatch(/^[A-Z].{15,140}\.$/);
});

test('what is said of a rule is said of one that there is', () => {
  const keys = new Set(houseRuleDefinitions.map(({ key }) => key));
  expect([...Object.keys(ruleAffects), ...labelRules].filter((key) => !keys.has(key))).toEqual([]);
});

test('every default is one that the rule itself would take', () => {
  for (const { key, default: standard } of houseRuleDefinitions) expect(ruleTrouble(key, standard), key).toBeNull();
});

test('half a day is refused where days are counted, and half a pound is not', () => {
  expect(ruleTrouble('needs.heft.every', 7.5)).toBe('“Hives are hefted in winter every” is a whole number of days.');
  expect([ruleTrouble('space.split.weeks', 11.5), ruleTrouble('mites.colonies', 2.5)].map((trouble) => trouble !== null)).toEqual([true, true]);
  expect([ruleTrouble('needs.heft.every', 7), ruleTrouble('stores.slack', 2.5), ruleTrouble('order.priorWeight', 7.5)]).toEqual([null, null, null]);
});

test('every rule names its source and how sure it is of it', () => {
  expect(houseRuleDefinitions.filter((rule) => !hasSourceWord(rule)).map(({ key }) => key)).toEqual([]);
  expect(sourceCounts(houseRuleDefinitions)).toMatchObject({ rules: houseRuleDefinitions.length, without: 0 });
});

test('a rule without a source word is refused', () => {
  const [first] = houseRules(new Map());
  const planted = { ...first!, confidence: 'surely' };
  // @ts-expect-error a house rule's confidence is one of the source words
  const refused: HouseRule = planted;
  expect(houseRule.safeParse(refused).success).toBe(false);
  expect(hasSourceWord(planted)).toBe(false);
  expect(hasSourceWord({ source: ' ', confidence: 'read' })).toBe(false);
  expect(sourceCounts([first!, planted, { source: '', confidence: 'from memory' }])).toEqual({ rules: 3, fromMemory: 1, without: 2 });
  for (const confidence of sourceWords) expect(hasSourceWord({ source: 'somewhere', confidence })).toBe(true);
});

test('a changed rule stands changed, beside its default', () => {
  const found = ruleBook(new Map([['order.spare', 0.2]])).rooms.flatMap(({ rules }) => rules).filter(({ changed }) => changed);
  expect(found).toMatchObject([{ key: 'order.spare', value: 0.2, default: 0.1 }]);
});

test('values and ranges in words', () => {
  const of = (key: string) => lines.find((rule) => rule.key === key)!;
  expect(ruleWords(of('order.firstLossRate'), 0.288)).toBe('28.8 %');
  expect(rangeWords(of('order.firstLossRate'))).toBe('5 to 80 %');
  expect(ruleWords(of('season.winter'), '10-01')).toBe('1 October');
  expect(rangeWords(of('season.winter'))).toBe('any day of the year');
  expect(ruleWords(of('losses.few'), 10)).toBe('10 colonies');
});
