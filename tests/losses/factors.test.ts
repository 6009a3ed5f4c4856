import { beforeAll, describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { lossFactors, chosenRows } from '#core/losses/lossFactors.ts';
import { seasonsFrom } from '#core/desk/lossFactorHandlers.ts';
import { differenceWords } from '#core/losses/riskTable.ts';
import type { LossFactors } from '#shared/contract/lossFactors.ts';
import { factorsOfBook, hives } from './factorBooks.ts';
import { falseFindings, ossarRows, type DemoRows } from './shuffledDemo.ts';

/** A record of the winter: without one, nobody knows what was lost in it. */
const seenInMarch = { date: '2026-03-20', entry: 'inspection', colony: 'H1', frames_bees: '6' };

function group(found: LossFactors, factor: string, key: string) {
  return found.factors.find((one) => one.key === factor)?.groups.find((one) => one.key === key);
}

describe('the invented operation, all winters together', () => {
  let demo: DemoRows;
  let found: LossFactors;
  beforeAll(async () => {
    demo = await ossarRows();
    found = lossFactors(demo.facts, chosenRows(demo.facts, undefined, 'all', seasonsFrom(demo.facts)));
  });

  const term = (heading: RegExp, name: string) => found.together.find((one) => heading.test(one.heading))?.terms.find((one) => one.name === name);

  test('finds what was built in: late-summer mites, old queens, light stores, the windy yard', () => {
    expect(term(/counted/, 'late-summer mites')?.range?.[0]).toBeGreaterThan(1);
    expect(term(/All/, 'the queen’s age')?.range?.[0]).toBeGreaterThan(1);
    expect(term(/All/, 'autumn stores')?.range?.[1]).toBeLessThan(1);
    expect(group(found, 'queenAge', 'older')?.pHolm).toBeLessThan(0.05);
    expect(found.yards.rows[0]?.yard).toBe('NS');
    expect(found.sentences.join(' ')).toContain('Queen hatched, Two years before or more');
  });

  test('does not find what was not: where the bees came from, the queen’s line', () => {
    for (const factor of ['source', 'line']) {
      for (const one of found.factors.find(({ key }) => key === factor)?.groups ?? []) expect(one.pHolm ?? 1, one.name).toBeGreaterThan(0.05);
    }
  });

  test('every colony of every winter is in one line of each factor', () => {
    const atRisk = found.winters.reduce((sum, one) => sum + one.atRisk, 0);
    const lost = found.winters.reduce((sum, one) => sum + one.lost, 0);
    for (const factor of found.factors) {
      const lines = [...factor.groups, ...(factor.unknown === null ? [] : [factor.unknown])];
      expect(lines.reduce((sum, one) => sum + one.atRisk, 0), factor.name).toBe(atRisk);
      expect(lines.reduce((sum, one) => sum + one.lost, 0), factor.name).toBe(lost);
    }
  });

  test('with the losses dealt out by chance it finds something at most one time in twenty', () => {
    // 60 shuffles of a chance of 0.05: more than 8 come up less than one time in a hundred.
    expect(falseFindings(demo, 60, 7)).toBeLessThanOrEqual(8);
  });
});

describe('one winter of a written book', () => {
  // 20 of 40 with many mites lost 10, 20 with few lost 2; queens of both years in both.
  const book = hives(40, (at) => ({
    yard: at % 2 === 0 ? 'QY' : 'LB', queen: at % 4 < 2 ? '2025' : '2024', mites: at < 20 ? 12 + (at % 5) : 1 + (at % 5), treated: at % 3 === 0, stores: 50 + at,
    ...(at < 10 || at >= 38 ? { lost: `2026-01-${String(10 + (at % 15)).padStart(2, '0')}` } : {}),
  }));

  test('group against the others: counts, ratio, difference, exact p', () => {
    const many = group(factorsOfBook(book), 'mites', 'at or above');
    expect(many).toMatchObject({ atRisk: 20, lost: 10, restAtRisk: 20, restLost: 2 });
    expect(many?.ratio?.value).toBeCloseTo(5, 12);
    expect(many?.difference?.value).toBeCloseTo(0.4, 12);
    // fisher.test(matrix(c(10, 10, 2, 18), 2)), R 4.2.2.
    expect(many?.p).toBeCloseTo(0.0138141478519676, 9);
    expect(many?.differenceWords).toMatch(/^of 100 colonies, about 40 more lost \(\d+ to \d+\)$/);
    expect(group(factorsOfBook(book), 'mites', 'below')?.why).toBe('The other side of the line above.');
  });

  test('a sentence in words for each thing held beside the others', () => {
    const found = factorsOfBook(book, { kept: new Map([['losses.cox.perCoefficient', 5]]) });
    expect(found.together.flatMap(({ sentences }) => sentences).join(' ')).toMatch(/Each extra mite per 100 bees in late summer went with \d+\.\d\d times the risk of loss, \d+\.\d\d to \d+\.\d\d, the others, yard and winter held fixed/);
  });

  test('a count of after the death or of the winter changes nothing in the table', () => {
    const later = [...book, { date: '2025-12-20', entry: 'mites', colony: 'H30', mites: '90', bees: '300' }];
    expect(factorsOfBook(later as typeof book).factors).toEqual(factorsOfBook(book).factors);
  });

  test('no losses among the treated: said, with no ratio', () => {
    const parted = factorsOfBook(hives(60, (at) => ({ queen: '2025', treated: at < 30, ...(at >= 30 && at < 55 ? { lost: `2026-02-${String(1 + (at % 20)).padStart(2, '0')}` } : {}) })));
    expect(parted.together[0]?.sentences).toContain('No losses among the treated, so the ratio for treatment cannot be estimated.');
    expect(parted.together[0]?.terms.find(({ name }) => name === 'treatment')).toMatchObject({ ratio: null, range: null, p: null });
    expect(group(parted, 'treated', 'treated')?.ratio?.half).toBe(true);
    expect(parted.together[0]?.notes.join(' ')).toContain('The queen’s age cannot be judged');
  });

  test('colonies with something not on record are left out of it and counted', () => {
    const partly = factorsOfBook(hives(60, (at) => ({ yard: 'QY', ...(at % 5 === 0 ? {} : { queen: at % 2 === 0 ? '2025' : '2023' }), ...(at % 3 === 0 ? { lost: '2026-01-12' } : {}) })));
    expect(partly.together[0]?.missing).toBe(12);
    expect(partly.together[0]?.notes.join(' ')).toContain('12 colonies of 60 are not in it');
  });

  test('the season alone and all seasons agree where there is one season', () => {
    const [one, all] = [factorsOfBook(book), factorsOfBook(book, { scope: 'all' })];
    expect(group(all, 'mites', 'at or above')?.p).toBeCloseTo(group(one, 'mites', 'at or above')?.p ?? NaN, 12);
    expect(all.winters).toEqual(one.winters);
  });
});

test('differences in words', () => {
  expect(differenceWords(0.12, [0.03, 0.21])).toBe('of 100 colonies, about 12 more lost (3 to 21)');
  expect(differenceWords(-0.12, [-0.21, -0.03])).toBe('of 100 colonies, about 12 fewer lost (3 to 21)');
  expect(differenceWords(0.05, [-0.09, 0.21])).toBe('of 100 colonies, about 5 more lost (9 fewer to 21 more)');
  expect(differenceWords(0, [-0.09, 0.09])).toBe('of 100 colonies, as many lost (9 fewer to 9 more)');
});

describe('causes as recorded', () => {
  const causes = ['starvation', 'mites; queen failure', 'unknown', '', 'mites', 'starvation', 'cold', 'cold'];
  const book = hives(20, (at) => ({ yard: at % 2 === 0 ? 'QY' : 'LB', ...(at < 8 ? { lost: '2026-02-01', cause: causes[at] ?? '' } : {}) }));

  test('several to a colony; the unknown are a class of their own and stay in the base', () => {
    const { causes: found } = factorsOfBook(book);
    expect(found.lost).toBe(8);
    expect(found.shares.map(({ cause, count, of }) => [cause, count, of])).toEqual([['cold', 2, 8], ['mites', 2, 8], ['starvation', 2, 8], ['queen failure', 1, 8], ['unknown or not recorded', 2, 8]]);
    expect(found.sentence).toContain('For 2 the cause is unknown or not recorded.');
    expect(found.sentence).toContain('One colony has more than one cause');
  });

  test('by yard each colony counts once, and the whole table is tested once', () => {
    const { byYard } = factorsOfBook(book).causes;
    expect(byYard.rows.flatMap(({ counts }) => counts).reduce((sum, one) => sum + one, 0)).toBe(8);
    expect(byYard.causes).toContain('several causes');
    expect(byYard.p).not.toBeNull();
    expect(byYard.sentence).toMatch(/^Taken as a whole, the recorded causes do not differ/);
  });
});

describe('what there is too little of is said in words, never as NaN', () => {
  const books: Record<string, { rows: ReturnType<typeof hives>; season?: number; asOf?: string; says: RegExp }> = {
    'a winter of which nothing was written down': { rows: hives(30, () => ({ queen: '2025' })), season: 2025, says: /Nothing about a colony is on record/ },
    'an empty book': { rows: [], says: /Nothing about a colony is on record/ },
    'a season without losses': { rows: [...hives(30, () => ({ queen: '2025', mites: 3, treated: true })), seenInMarch], says: /Nothing was lost/ },
    'a season with nothing but losses': { rows: hives(12, (at) => ({ lost: `2026-01-${10 + at}` })), says: /Everything was lost/ },
    'one yard': { rows: hives(40, (at) => (at < 12 ? { lost: '2026-01-20' } : {})), says: /Too few to tell: in no group|Nothing stands out/ },
    'one colony': { rows: hives(1, () => ({ lost: '2026-01-20', cause: 'mites' })), says: /Everything was lost/ },
    'one colony that lived': { rows: [...hives(1, () => ({})), seenInMarch], says: /Nothing was lost/ },
    'all sold': { rows: [...hives(6, () => ({})), ...Array.from({ length: 6 }, (_, at) => ({ date: '2025-11-02', entry: 'sale', colony: `H${at + 1}` }))], says: /Every colony was sold/ },
    'no records in the season': { rows: hives(6, () => ({})), season: 2025, asOf: '2025-07-01', says: /Nothing about a colony is on record/ },
    'a colony that ended as the winter began': { rows: hives(6, (at) => (at === 0 ? { lost: '2025-10-01' } : {})), says: /Too few to tell what went with losses: 1 lost of 6/ },
    'five colonies, two lost': { rows: hives(5, (at) => (at < 2 ? { lost: '2026-02-02' } : {})), says: /Too few to tell/ },
  };

  for (const [name, { rows, says, season, asOf }] of Object.entries(books)) {
    test.each(['season', 'all'] as const)(`${name}, %s`, (scope) => {
      const found = factorsOfBook(rows, { scope, ...(season === undefined ? {} : { season }), ...(asOf === undefined ? {} : { asOf: day(asOf) }) });
      expect(found.sentences.join(' ')).toMatch(says);
      const text = JSON.stringify(found, (_, value: unknown) => {
        if (typeof value === 'number') expect(Number.isFinite(value), `${name}: ${value}`).toBe(true);
        return value;
      });
      expect(text).not.toMatch(/NaN|undefined|Infinity/);
      expect(found.say.length === 1 || found.say.length === 3).toBe(true);
    });
  }

  test('a wintered colony without a look, a weighing or a queen’s year is in each table as not on record', () => {
    const found = factorsOfBook([...hives(6, () => ({})), seenInMarch]);
    for (const key of ['queenAge', 'line', 'mites', 'stores', 'strength']) expect(found.factors.find((one) => one.key === key)).toMatchObject({ groups: [], unknown: { atRisk: 6 } });
  });
});

describe('what the numbers can and cannot say', () => {
  const say = (count: number, of: Parameters<typeof hives>[1], asOf = '2026-05-01') => factorsOfBook(hives(count, of), { asOf: day(asOf), season: 2025 }).say;

  test('how large a difference could have been seen shrinks with more colonies', () => {
    const inHundred = (count: number) => Number(/by about (\d+) in 100/.exec(say(count, (at) => (at % 4 === 0 ? { lost: '2026-03-20' } : {}))[0] ?? '')?.[1]);
    expect(inHundred(40)).toBeGreaterThan(inHundred(200));
    expect(inHundred(200)).toBeGreaterThan(5);
    expect(say(12, (at) => (at < 5 ? { lost: '2026-03-20' } : {}))[0]).toMatch(/not even the largest difference|would have to differ by about/);
    expect(say(5, (at) => (at < 2 ? { lost: '2026-03-20' } : {}))[0]).toContain('With 2 losses among 5 colonies no group is compared');
    // 0 of 30, Clopper-Pearson: 1 - 0.025^(1/30) = 0.1157.
    expect(factorsOfBook([...hives(30, () => ({})), seenInMarch]).say[0]).toContain('None of 30 colonies were lost, so there is nothing to compare; a winter in which up to 12 of 100 die could still look like this.');
  });

  test('treating: none, all, by whole yards, the worried-about ones', () => {
    const third = (at: number) => (at % 3 === 0 ? { lost: '2026-03-20' } : {});
    expect(say(30, third)[1]).toContain('No treatment before winter is on record');
    expect(say(30, (at) => ({ ...third(at), treated: true }))[1]).toContain('All 30 colonies were treated');
    expect(say(30, (at) => ({ ...third(at), treated: at < 3 }))[1]).toContain('Only 3 of 30 had a treatment');
    expect(say(40, (at) => ({ ...third(at), yard: at % 2 === 0 ? 'QY' : 'LB', treated: at % 2 === 0 }))[1]).toContain('it went by whole yards');
    expect(say(40, (at) => ({ ...third(at), treated: at % 2 === 0 }))[1]).toContain('no late-summer mites were counted');
    expect(say(40, (at) => ({ ...third(at), treated: at % 2 === 0, mites: at % 2 === 0 ? 12 : 3 }))[1]).toContain('the treated had 4.0 mites per 100 bees where counted, against 1.0 in the others, so more losses among them would not mean');
    expect(say(40, (at) => ({ ...third(at), treated: at % 2 === 0, mites: at % 2 === 0 ? 3 : 12 }))[1]).toContain('would not prove that treating helped');
  });

  test('the winter: counted to its end, still running, records that stop', () => {
    const late = (at: number) => ({ queen: '2025', mites: 3, stores: 70, ...(at === 0 ? { lost: '2026-03-25' } : {}) });
    expect(say(12, late)[2]).toBe('The winter is counted to its end.');
    expect(say(12, (at) => (at === 0 ? { ...late(at), lost: '2026-01-10' } : late(at)), '2026-01-12')[2]).toContain('The winter is not over: losses are counted to 12 January 2026');
    expect(say(12, () => ({ queen: '2025', mites: 3, stores: 70 }))[2]).toContain('The last record of a colony is of 5 October 2025');
    expect(say(12, (at) => (at === 0 ? { lost: '2026-03-25' } : { mites: at < 4 ? 3 : 1, queen: '2025' }))[2]).toContain('nothing is on record of autumn stores');
  });
});
