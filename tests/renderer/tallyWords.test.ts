import { expect, test } from 'vitest';
import type { RuleTally } from '#shared/contract/tally.ts';
import { hold } from '#shared/figures.ts';
import { words } from '#renderer/screens/tally/words.ts';

const tally = (more: Pick<RuleTally, 'per' | 'asked' | 'late' | 'fell'>) => words.asked(more as RuleTally);

test('how often a rule asked is parted at the thousands, as figures are elsewhere', () => {
  expect(tally({ per: 'time', asked: 1068, late: 1204, fell: 0 })).toBe(`Asked 1,068${hold}times; 1,204 done late`);
  expect(tally({ per: 'time', asked: 1, late: 0, fell: 2001 })).toBe(`Asked 1${hold}time; 2,001 asked no more, by a later record`);
});
