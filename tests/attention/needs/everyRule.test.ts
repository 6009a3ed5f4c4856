import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { needKeys, type NeedKey } from '#shared/contract/needs.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { dues } from './dues.ts';
import { mites } from './mites.ts';
import { bookForEach, seenOf } from './needBook.ts';
import { queens } from './queens.ts';
import { rest } from './rest.ts';
import { space } from './space.ts';
import { stores } from './stores.ts';

bookForEach();

/** Every key of the contract: the compiler names the rule that has no test. */
const all: Readonly<Record<NeedKey, () => void>> = { ...dues, ...mites, ...stores, ...space, ...queens, ...rest };

describe.each(Object.entries(all))('%s', (_, tests) => tests());

test('every rule was seen to ask, to keep quiet, and to go by a number of the house that it names', () => {
  expect(needRules.map(({ key }) => key).toSorted()).toEqual([...needKeys].toSorted());
  for (const { key } of needRules) expect(seenOf(key), key).toEqual(['asks', 'goes by the house', 'is quiet']);
});

test('no rule has days of its own: each is a number of the house', () => {
  const folder = new URL('../../../core/attention/needs/', import.meta.url);
  const texts = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);
  expect(texts.length).toBeGreaterThan(needRules.length - 6);
  const own = /addDays\([^\n]*?, -?(?:[2-9]|\d{2,})\)|daysBetween\([^)]*\) *[<>]=? *\d/;
  expect(own.test('latest: addDays(look.day, 7)') && own.test('daysBetween(count.day, today) > 60')).toBe(true);
  expect(texts.flatMap(([name, text]) => (own.test(text) ? [name] : []))).toEqual([]);
});
