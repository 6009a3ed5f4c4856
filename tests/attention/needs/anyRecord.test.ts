import fc from 'fast-check';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { need } from '#shared/contract/needs.ts';
import { addDays, day } from '#shared/days.ts';
import { needFacts } from '#core/attention/needs/needFacts.ts';
import { needsOf } from '#core/attention/needs/needsOf.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { needSources } from '#core/desk/needSources.ts';
import { Book } from '#core/desk/openBook.ts';
import { houseRuleDefinitions, isWhole } from '#core/rules/houseRules.ts';
import { scratchFolder } from '#tests/book/trialFile.ts';
import { anyRow, founding } from '#tests/journal/anyRows.ts';
import { acts, faultOf, trialBook } from '#tests/journal/trialBook.ts';

const numbers = new Set(needRules.flatMap((rule) => rule.numbers));
const definitions = houseRuleDefinitions.filter(({ key }) => numbers.has(key));
/** A few of the rules' own numbers, changed to anything that the house rules take. */
const anyRules = fc.array(fc.nat({ max: definitions.length - 1 }).chain((at) => {
  const rule = definitions[at]!;
  const { key, type, range, choices } = rule;
  if (type === 'number' && isWhole(rule)) return fc.integer({ min: Math.ceil(range![0]), max: range![1] }).map((value): [string, number | string] => [key, value]);
  if (type === 'number') return fc.double({ min: range![0], max: range![1], noNaN: true }).map((value): [string, number | string] => [key, Math.round(100 * value) / 100]);
  if (type === 'month-day') return fc.integer({ min: 0, max: 364 }).map((days): [string, number | string] => [key, addDays(day('2025-01-01'), days).slice(5)]);
  return fc.constantFrom(...(choices ?? ['north'])).map((value): [string, number | string] => [key, value]);
}), { maxLength: 6 });

test('whatever is recorded and however the house is set, each need stands once, has a colony, days and words, and asks for something that can be done', async () => {
  const scratch = scratchFolder();
  let made = 0;
  let found = 0;
  try {
    await fc.assert(
      fc.asyncProperty(fc.array(anyRow, { minLength: 20, maxLength: 60 }), fc.array(fc.tuple(fc.integer({ min: 0, max: 480 }), anyRules), { minLength: 6, maxLength: 6 }), async (rows, evenings) => {
        const book = await Book.create(join(scratch.folder, `any-${(made += 1)}.outyard`), new Map([['name', 'Any']]));
        await trialBook(book.store);
        await acts.enter(book.store, founding);
        for (const row of rows) await faultOf(() => acts.enter(book.store, [row]));
        for (const [after, rules] of evenings) {
          const today = addDays(day('2024-03-20'), after);
          for (const [key, value] of rules) await book.store.keepRule(key, value);
          const needs = needsOf(needFacts(await needSources(book.asOf(today), today)));
          for (const [key] of rules) await book.store.keepRule(key, null);
          found += needs.length;
          expect(new Set(needs.map(({ key }) => key)).size).toBe(needs.length);
          for (const one of needs) {
            expect(need.parse(one)).toEqual(one);
            expect(JSON.stringify(one)).not.toMatch(/NaN|undefined|Infinity|\bnull (frames|lb|in 100)/);
            expect(one.status, one.key).toBe(today < one.earliest ? 'coming' : today <= one.latest ? 'due' : 'overdue');
            expect(one.latest >= one.earliest, `${one.key}: ${one.earliest} to ${one.latest}, ${JSON.stringify(rules)}`).toBe(true);
            expect(one.minutes).toBeGreaterThanOrEqual(0);
            for (const { count } of one.bring) expect(count).toBeGreaterThan(0);
          }
        }
        await book.store.close();
      }),
      { numRuns: 10 },
    );
  } finally {
    scratch.remove();
  }
  expect(found).toBeGreaterThan(50);
});
