import { describe, expect, test } from 'vitest';
import { needKeys, type NeedKey } from '#shared/contract/needs.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { dues } from './dues.ts';
import { mites } from './mites.ts';
import { queens } from './queens.ts';
import { space } from './space.ts';
import { seenOf, useNeedBook } from './needBook.ts';

useNeedBook();

/** Every key of the contract: the compiler names the rule that has no test. */
const all = { ...dues, ...mites, ...queens, ...space } as Partial<Record<NeedKey, () => void>>;

for (const [key, tests] of Object.entries(all)) describe(key, tests);

test('every rule was seen to ask, to keep quiet, and to go by a number of the house that it names', () => {
  expect(needRules.map(({ key }) => key).toSorted()).toEqual([...needKeys].toSorted());
  for (const { key } of needRules) if (key in all) expect(seenOf(key), key).toEqual(['asks', 'goes by the house', 'is quiet']);
});
