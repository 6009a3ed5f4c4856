import { expect, test } from 'vitest';
import { dueAfter, seenAgainBy } from '#core/work/roundPhases.ts';
import { addDays, day } from '#shared/days.ts';

test('a colony is due again by the day that its last look says, through a whole year', () => {
  const rules = new Map<string, number | string>();
  const from = day('2025-12-01');
  const by = seenAgainBy(rules, from, 420);
  for (let at = 0; at < 420; at += 1) {
    expect(dueAfter(rules, addDays(from, at))).toBe(addDays(from, by[at] ?? -1));
    expect(by[at]).toBeGreaterThan(at);
    if (at > 0) expect(by[at]).toBeGreaterThanOrEqual(by[at - 1] ?? 0);
  }
});
