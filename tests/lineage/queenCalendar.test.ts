import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, day } from '#shared/days.ts';
import { queenCalendar, queenStarts } from '#core/lineage/queenCalendar.ts';
import { houseRuleDefinitions, numberRule } from '#core/rules/houseRules.ts';

const none = new Map<string, number | string>();

test('every step names rules that there are, in the order of its days, and none lies before the start', () => {
  const keys = new Set(houseRuleDefinitions.map(({ key }) => key));
  fc.assert(
    fc.property(fc.constantFrom(...queenStarts), fc.integer({ min: 0, max: 40_000 }), (start, offset) => {
      const on = addDays(day('1990-01-01'), offset);
      const steps = queenCalendar(start, on, none);
      expect(steps.length).toBeGreaterThan(3);
      expect(new Set(steps.map(({ step }) => step)).size).toBe(steps.length);
      for (const [at, { from, until, rules }] of steps.entries()) {
        expect(on <= from && from <= until && from >= (steps[at - 1]?.from ?? on)).toBe(true);
        expect(rules.length > 0 && rules.every((key) => keys.has(key))).toBe(true);
      }
    }),
  );
});

test('a ripe cell was sealed before it was put in, so that step is left out', () => {
  expect(queenCalendar('cell', day('2026-05-15'), none).map(({ step }) => step)).toEqual(['emerges', 'can mate', 'first eggs', 'likely unmated']);
  expect(queenCalendar('cell', day('2026-05-15'), new Map([['queens.ripe', 9]])).map(({ step }) => step)).not.toContain('cell sealed');
});

test('the days are the house’s: a later emergence moves what follows from it, and a last day before the first is the first', () => {
  const later = new Map<string, number | string>([['queens.emerges', 18], ['queens.mature.by', 3]]);
  const steps = queenCalendar('egg', day('2026-05-01'), later);
  const mates = steps.find(({ step }) => step === 'can mate')!;
  expect(mates).toMatchObject({ from: addDays(day('2026-05-01'), 18 + numberRule(none, 'queens.mature.from')) });
  expect(mates.until).toBe(mates.from);
  const caged = queenCalendar('caged', day('2026-05-01'), new Map([['queens.cage.outFrom', 6]]));
  expect(caged.find(({ step }) => step === 'out of the cage')).toMatchObject({ from: '2026-05-07', until: '2026-05-07' });
});
