import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { breederRanking, traitScores, type BreederTrait, type BreederValue, type BreederWeights } from '#core/lineage/breeders.ts';

const value = fc.record({ breeder: fc.constantFrom('a', 'b', 'c', 'd'), place: fc.constantFrom('QY 2025', 'LB 2025', 'QY 2026'), value: fc.integer({ min: 0, max: 90 }) });
const values = fc.array(value, { minLength: 14, maxLength: 40 });
const even: BreederWeights = { winter: 1, honey: 1, mites: 1, temper: 1, swarming: 1 };
const only = (more: Partial<Record<BreederTrait, readonly BreederValue[]>>) => ({ winter: [], honey: [], mites: [], temper: [], swarming: [], ...more });
const plain = ({ scores, says }: ReturnType<typeof traitScores>) => ({ says, scores: [...scores].map(([breeder, { score, se }]) => [breeder, expect.closeTo(score, 6), expect.closeTo(se, 6)]) });

test('what befell one yard in one year changes no score', () => {
  fc.assert(
    fc.property(values, fc.integer({ min: -50, max: 50 }), (list, more) => {
      const shifted = list.map((one) => (one.place === 'LB 2025' ? { ...one, value: one.value + more } : one));
      const scores = traitScores(shifted);
      expect({ says: scores.says, scores: [...scores.scores].map(([breeder, { score, se }]) => [breeder, score, se]) }).toEqual(plain(traitScores(list)));
    }),
    { numRuns: 60 },
  );
});

test('another unit of the same thing changes no score', () => {
  fc.assert(
    fc.property(values, (list) => {
      const scores = traitScores(list.map((one) => ({ ...one, value: one.value * 0.4536 })));
      expect({ says: scores.says, scores: [...scores.scores].map(([breeder, { score, se }]) => [breeder, score, se]) }).toEqual(plain(traitScores(list)));
    }),
    { numRuns: 60 },
  );
});

test('a weight of nought leaves a trait out', () => {
  fc.assert(
    fc.property(values, values, (honey, temper) => {
      const without = breederRanking(only({ honey }), even).ranked.map(({ breeder, sum, limits, apart }) => ({ breeder, sum, limits, apart }));
      const nought = breederRanking(only({ honey, temper }), { ...even, temper: 0 }).ranked.map(({ breeder, sum, limits, apart }) => ({ breeder, sum, limits, apart }));
      expect(nought).toEqual(without);
    }),
    { numRuns: 60 },
  );
  expect(breederRanking(only({}), { winter: 0, honey: 0, mites: 0, temper: 0, swarming: 0 }).ranked).toEqual([]);
  expect(() => breederRanking(only({}), { ...even, honey: -1 })).toThrow(RangeError);
});

/** Colonies of three breeders about 10, 20 and 30, and a fourth as good as the best of them that has few. */
const noise = [-4, 3, 1, -2, 2, 0, -3, 3];
const some = (breeder: string, middle: number, n: number): BreederValue[] => noise.slice(0, n).map((off) => ({ breeder, place: 'QY 2025', value: middle + off }));

test('with few colonies a breeder is pulled to the middle, and told apart from fewer others', () => {
  const list = [...some('a', 10, 8), ...some('b', 20, 8), ...some('c', 30, 8), { breeder: 'd', place: 'QY 2025', value: 30 }];
  const { scores } = traitScores(list);
  expect(scores.get('d')?.score).toBeLessThan(scores.get('c')?.score ?? 0);
  expect(scores.get('d')?.score).toBeGreaterThan(0);
  expect(scores.get('d')?.se).toBeGreaterThan(scores.get('c')?.se ?? 9);
  const { ranked } = breederRanking(only({ honey: list }), even);
  expect(ranked.map(({ breeder, apart }) => [breeder, apart])).toEqual([['c', false], ['d', false], ['b', true], ['a', true]]);
});

test('a breeder only met in good yards gains nothing by them', () => {
  // The same three breeders everywhere, but the third has most of its colonies where 40 more were made.
  const good = (list: BreederValue[]) => list.map((one) => ({ ...one, place: 'LB 2025', value: one.value + 40 }));
  const list = [...some('a', 20, 8), ...some('b', 20, 8), ...some('c', 10, 1), ...good(some('a', 20, 2)), ...good(some('b', 20, 2)), ...good(some('c', 10, 8))];
  expect(traitScores(list).scores.get('c')?.score).toBeLessThan(0);
});

test('where nothing can be compared, words', () => {
  expect(traitScores([]).says).toBe('Nothing of it is in the record.');
  const alone = ['a', 'b', 'c'].flatMap((breeder) => some(breeder, 20, 8).map((one) => ({ ...one, place: breeder })));
  expect(traitScores(alone).says).toBe('At least 3 breeders must have colonies in the same yards and years; here none can be compared.');
  expect(traitScores([...some('a', 1, 2), ...some('b', 2, 2), ...some('c', 3, 2)]).says).toBe('Too few: 6 values of 3 breeders in 1 yard-year.');
  expect(traitScores(['a', 'b', 'c'].flatMap((breeder) => some(breeder, 1, 5).map((one) => ({ ...one, value: 1 })))).says).toBe('All were alike.');
  expect(breederRanking(only({ honey: alone }), even).ranked).toEqual([]);
});

test('as many breeders as a large book has, each tied to the next by a yard-year, are compared', () => {
  // Two in each of 70 000 yard-years: a chain as long as that, and more values than fit on a stack.
  const chain = Array.from({ length: 140_000 }, (_, at): BreederValue => ({ breeder: `q${(at + 1) >> 1}`, place: `p${at >> 1}`, value: 1 }));
  const { says, compared } = traitScores(chain);
  expect({ says, compared }).toEqual({ says: 'Too few: 140000 values of 70001 breeders in 70000 yard-years.', compared: 140_000 });
  expect(traitScores([...chain, ...some('q1', 1, 8).map((one) => ({ ...one, place: 'p1', value: 1 }))]).says).toBe('All were alike.');
});

// Dyestuff (Davies and Goldsmith 1972), from memory; agrees with R: within 2451.25, between 1764.05, five in each of six.
test('within one yard-year the shrinkage is that of the published variance components', () => {
  const file = JSON.parse(readFileSync(new URL('../reference/data/golden.json', import.meta.url), 'utf8')) as { cases: { id: string; input: { yield: number[]; group: string[] } }[] };
  const { input } = file.cases.find(({ id }) => id === 'yield/dyestuff')!;
  const { scores, spread } = traitScores(input.yield.map((one, at) => ({ breeder: input.group[at]!, place: 'one', value: one })));
  const v = 2451.25 / 5;
  expect([...scores.values()].map(({ shrinkage }) => shrinkage)).toEqual(Array.from({ length: 6 }, () => expect.closeTo(v / (v + 1764.05), 9)));
  expect(spread).toBeCloseTo(Math.sqrt(1764.05 / (1764.05 + 2451.25)), 9);
  // Group C has the mean 1564 (1527.5 of all).
  const c = input.yield.filter((_, at) => input.group[at] === 'C');
  expect(c.reduce((sum, one) => sum + one, 0) / 5).toBe(1564);
  expect(scores.get('C')?.score).toBeCloseTo(((1764.05 / (1764.05 + v)) * (1564 - 1527.5)) / Math.sqrt(1764.05 + 2451.25), 9);
});
