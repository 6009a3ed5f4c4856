import { describe, expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import type { Grouping, LossSurvival } from '#shared/contract/lossSections.ts';
import { day, type Day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders, type Season } from '#shared/seasons.ts';
import { lossRatesPart } from '#core/losses/lossRatesPart.ts';
import { seasonYards } from '#core/losses/seasonLedger.ts';
import { survivalPairs, survivalPart, type SurvivalFacts } from '#core/losses/survivalPart.ts';
import { covariateRules, winterCovariates, yardTreatmentsOf } from '#core/losses/winterCovariates.ts';
import { factorsOfBook } from './factorBooks.ts';
import { hived, lost, recorded, yards } from './recorded.ts';

// The sections of the review speak of the same colonies: what one says, no other contradicts.

function factsOf(rows: readonly Cells[], asOf: Day, today: Day = asOf): SurvivalFacts {
  const { states, entries } = recorded(rows.toSorted((one, other) => ((one.date ?? '') < (other.date ?? '') ? -1 : 1)));
  const byId = new Map<ColonyId, (typeof states)[number]>(states.map((state) => [state.id, state]));
  const stateOf = (id: ColonyId) => {
    const state = byId.get(id);
    if (state === undefined) throw new Error('no such colony');
    return state;
  };
  const covariates = (season: Season) => winterCovariates({ states, yardTreatments: yardTreatmentsOf(entries), borders: defaultBorders, rules: covariateRules(new Map()), asOf }, season);
  return { states, yards, borders: defaultBorders, asOf, today, stateOf, covariates, rules: new Map(), massUnit: 'lb' };
}

const ratesOf = (facts: SurvivalFacts, season: Season) => lossRatesPart(facts, season, 'lost', (one) => seasonYards(facts.states, yards, one, facts.asOf, facts.borders));
const survival = (facts: SurvivalFacts, season: Season | null, by: Grouping = 'none', axis: LossSurvival['asked']['axis'] = 'winter') => survivalPart(facts, { season, axis, by, united: 'alive' });
const many = (count: number, prefix: string, yard = 'QY', more: Cells = {}) => Array.from({ length: count }, (_, at) => hived('2024-05-01', `${prefix}${at + 1}`, yard, more));
const loss = (date: string, colony: string, cause = ''): Cells => ({ date, entry: 'loss', colony, cause });
const seenInMarch: Cells = { date: '2025-03-25', entry: 'inspection', colony: 'A12', frames_bees: '8' };

describe('causes', () => {
  const rows = [...many(12, 'A'), loss('2024-08-01', 'A1', 'robbing'), loss('2024-12-01', 'A2', 'mites'), loss('2025-01-05', 'A3', 'starvation'), seenInMarch];

  test('are those of the winter that the section before speaks of; the summer’s are said to be left out', () => {
    const { causes, winters } = factorsOfBook(rows, { season: 2024, asOf: day('2025-06-01') });
    expect(causes.lost).toBe(winters[0]?.lost);
    expect(causes.shares.map(({ cause }) => cause)).toEqual(['mites', 'starvation']);
    expect(causes.sentence).toMatch(/^Of 2 colonies lost in the winter, /);
    expect(causes.sentence).toContain('The one colony lost in the season’s summer is not counted here.');
  });

  test('a winter without losses after a summer with one', () => {
    const { causes } = factorsOfBook([...many(12, 'A'), loss('2024-08-01', 'A1', 'robbing'), seenInMarch], { season: 2024, asOf: day('2025-06-01') });
    expect(causes).toMatchObject({ lost: 0, shares: [], sentence: 'No colonies were lost in the winter, so there are no causes. The one colony lost in the season’s summer is not counted here.' });
  });

  test('of all winters: what was lost in summers or in a winter that is not over stands apart', () => {
    const { causes } = factorsOfBook([...rows, loss('2025-11-01', 'A4', 'cold')], { scope: 'all', asOf: day('2025-12-01') });
    expect(causes).toMatchObject({ lost: 2 });
    expect(causes.sentence).toContain('The 2 colonies lost');
  });
});

describe('groups of curves are compared only as the table of risks would compare them', () => {
  const weighed = (colony: string, pounds: string): Cells => ({ date: '2024-10-08', entry: 'stores', colony, weight: pounds, unit: 'lb' });
  const names = (prefix: string, count: number) => Array.from({ length: count }, (_, at) => `${prefix}${at + 1}`);

  test('a class of which all but one colony went on into others is neither drawn nor tested', () => {
    const rows = [
      ...many(15, 'L'), ...many(15, 'E'), ...many(1, 'N'), ...names('L', 15).map((label) => weighed(label, '40')), ...names('E', 15).map((label) => weighed(label, '80')),
      loss('2024-12-20', 'N1'), ...names('L', 5).map((label) => loss('2025-01-10', label)), ...names('E', 4).map((label) => loss('2025-02-10', label)),
    ];
    const { test: made, groups, notes } = survival(factsOf(rows, day('2025-06-01')), 2024, 'stores');
    expect(groups.find(({ label }) => label === 'not weighed')).toMatchObject({ colonies: 1, losses: 1, curve: null });
    expect(made).toMatchObject({ kind: 'made', groups: ['light', 'enough'] });
    expect(made?.kind === 'made' ? made.p : 0).toBeGreaterThan(0.05);
    expect(notes.join(' ')).toContain('not weighed (1 of 1 lost)');
  });

  test('a class without a colony of its own is not in the list', () => {
    const rows = [...many(12, 'L'), ...names('L', 12).map((label) => weighed(label, '40'))];
    expect(survival(factsOf(rows, day('2025-06-01')), 2024, 'stores').groups.map(({ key }) => key)).toEqual(['light']);
  });

  test('fewer than ten colonies, and those of which it is not on record, stand beside the test', () => {
    const rows = [
      ...many(20, 'A', 'QY', { queen_year: '2024' }), ...many(12, 'B', 'QY', { queen_year: '2023' }), ...many(7, 'C', 'QY', { queen_year: '2022' }), ...many(11, 'D'),
      ...names('A', 4).map((label) => loss('2024-12-10', label)), ...names('B', 4).map((label) => loss('2025-01-10', label)), ...names('C', 6).map((label) => loss('2025-01-20', label)),
    ];
    const { test: made, notes, groups, reference } = survival(factsOf(rows, day('2025-06-01')), 2024, 'queenAge');
    expect(made).toMatchObject({ kind: 'made', groups: ['this year', 'last year'] });
    expect(reference).toBe('this year');
    expect(notes).toContain('Drawn but not compared: older queen (7; comparing begins at 10), year not known (not on record).');
    expect(groups.filter(({ difference }) => difference !== null).map(({ key }) => key)).toEqual(['last year']);
    // The table of risks makes the same choice.
    const table = factorsOfBook(rows, { season: 2024, asOf: day('2025-06-01') }).factors.find(({ key }) => key === 'queenAge');
    expect(table?.groups.filter(({ p }) => p !== null).map(({ key }) => key)).toEqual(['this year', 'last year']);
  });

  test('without a loss a group’s mean days have no range and are set against no other’s', () => {
    const rows = [...many(12, 'A'), ...many(12, 'B', 'LB'), ...many(12, 'C', 'OO'), ...names('A', 6).map((label) => loss('2024-12-10', label)), ...names('B', 3).map((label) => loss('2025-01-10', label))];
    const { groups } = survival(factsOf(rows, day('2025-06-01')), 2024, 'yard');
    expect(groups.find(({ key }) => key === 'OO')).toMatchObject({ mean: { value: 182, low: null, high: null }, difference: null });
    expect(groups.find(({ key }) => key === 'LB')?.difference).not.toBeNull();
  });

  test('a pair that was never watched together is not among the pairs allowed for', () => {
    // OO wintered only in the first winter, LB only in the second; QY in both.
    const rows = [
      ...many(30, 'A'), ...many(12, 'C', 'OO'), ...names('A', 6).map((label) => loss('2024-12-10', label)), ...names('C', 6).map((label) => loss('2025-01-10', label)),
      ...names('C', 12).slice(6).map((colony): Cells => ({ date: '2025-06-01', entry: 'sale', colony })), ...names('B', 12).map((label) => hived('2025-06-02', label, 'LB')),
      ...names('B', 4).map((label) => loss('2025-12-10', label)), loss('2026-01-10', 'A20'),
    ];
    const { pairs, sentence } = survivalPairs(factsOf(rows, day('2026-06-01')), { season: null, axis: 'winter', by: 'yard', united: 'alive' });
    expect(pairs.filter(({ p }) => p === null)).toHaveLength(1);
    expect(sentence).toMatch(/llowing for 2 pairs.*1 could not be compared/);
  });
});

describe('what a winter’s sentences count', () => {
  test('colonies that came or were sold during the winter make the base another one than the wintered', () => {
    const rows = [...many(12, 'A'), lost('2024-12-01', 'A1'), { date: '2024-11-01', entry: 'sale', colony: 'A2' }, { date: '2024-11-01', entry: 'sale', colony: 'A3' }, seenInMarch];
    expect(ratesOf(factsOf(rows, day('2025-06-01')), 2024).sentences[0]).toMatch(/^Of 10 colonies at risk in the winter you lost 1, /);
    expect(ratesOf(factsOf([...many(12, 'A'), lost('2024-12-01', 'A1'), seenInMarch], day('2025-06-01')), 2024).sentences[0]).toMatch(/^You wintered 12 colonies and lost 1, /);
  });

  test('a colony sold and another bought do not make the base the wintered again; a united one among the lost is said', () => {
    const rows = [...many(14, 'A'), lost('2024-12-01', 'A1'), { date: '2024-11-01', entry: 'sale', colony: 'A2' }, hived('2025-03-01', 'N'), { date: '2024-11-05', entry: 'combine', colony: 'A3', into: 'A4' }, seenInMarch];
    const facts = factsOf(rows, day('2025-06-01'));
    expect(ratesOf(facts, 2024).sentences[0]).toMatch(/^Of 14 colonies at risk in the winter you lost 2 \(one of them united into another\), 14 in 100; /);
    expect(survival(facts, 2024).sentence).toContain('1 was lost by its end');
  });

  test('all sold: during the winter they had gone into it, before it they had not; nothing was missed after', () => {
    const sold = (date: string) => [...many(12, 'A'), ...Array.from({ length: 12 }, (_, at): Cells => ({ date, entry: 'sale', colony: `A${at + 1}` }))];
    const said = (date: string) => ratesOf(factsOf(sold(date), day('2025-06-01')), 2024).sentences;
    expect(said('2024-11-15')).toEqual(['All 12 colonies that went into the winter of 2024–25 left the book alive during it, so there is no rate.']);
    expect(said('2024-08-15')).toEqual(['No colonies went into the winter of 2024–25.']);
  });

  test('everything lost is said as such, not as too few for a curve or as something that may have been missed', () => {
    const facts = factsOf([...many(12, 'A'), ...Array.from({ length: 12 }, (_, at) => lost('2025-01-10', `A${at + 1}`))], day('2025-06-01'));
    const { sentence, notes } = survival(facts, 2024);
    expect(sentence).toContain('all 12 were lost by its end.');
    expect([...notes, ...ratesOf(facts, 2024).sentences].join(' ')).not.toContain('what was lost after it is not known');
  });

  test('a winter of which nothing is written down is not a winter without losses', () => {
    const facts = factsOf([...many(12, 'A'), lost('2024-12-01', 'A1'), seenInMarch], day('2025-11-25'));
    const { rates } = ratesOf(facts, 2024);
    expect(rates.filter(({ season }) => season === 2025)).toEqual([]);
    expect(rates.some(({ season }) => season === 2024)).toBe(true);
    // Nor when that winter itself is looked at.
    expect(ratesOf(facts, 2025)).toMatchObject({ sentences: [expect.stringContaining('Nothing about a colony is recorded for the winter of 2025–26')] });
    expect(ratesOf(facts, 2025).rates.filter(({ season, period }) => season === 2025 && period === 'winter')).toEqual([]);
    expect(ratesOf(facts, 2025).cohorts.map(({ season }) => season)).toEqual([2024]);
  });

  test('with a winter that is not over, all winters together say so', () => {
    const facts = factsOf([...many(30, 'A'), ...Array.from({ length: 6 }, (_, at) => lost('2025-01-10', `A${at + 1}`)), lost('2025-11-01', 'A9')], day('2025-11-25'));
    expect(survival(facts, null).sentence).toMatch(/^Over 2 winters \(2025–26 only so far\), of 54 colony winters, 7 were lost; by the curve, in which those of a winter not over count only so far, /);
  });

  test('colonies moved in a winter are said wherever yards are counted by another rule', () => {
    const rows = [...many(12, 'A'), ...many(12, 'B', 'LB'), { date: '2024-12-05', entry: 'move', colony: 'A1', to_yard: 'LB' }, lost('2025-01-10', 'A1'), seenInMarch];
    const facts = factsOf(rows, day('2025-06-01'));
    expect(ratesOf(facts, 2024).moved).toBe(1);
    expect(factorsOfBook(rows, { season: 2024, asOf: day('2025-06-01') }).moved).toBe(1);
    expect(survival(facts, 2024, 'yard').notes.join(' ')).toContain('A colony counts for the yard in which it stood as the winter began; one was moved later.');
    expect(survival(facts, 2024, 'yard', 'start').notes.join(' ')).toContain('one stood in more than one and counts in each');
  });

  test('of yards that lost alike the one with more colonies is named, as it stands first in the table', () => {
    const rows = [...many(10, 'A'), ...many(15, 'B', 'LB'), ...many(20, 'C', 'OO'), ...['A1', 'A2', 'A3', 'A4', 'B1', 'B2', 'B3', 'B4', 'B5', 'B6', 'C1'].map((label) => lost('2025-01-10', label))];
    expect(ratesOf(factsOf(rows, day('2025-06-01')), 2024).sentences.at(-2)).toMatch(/^LB yard lost 6 of its 15, the rest 5 of 30/);
  });
});

test('what holds others fixed says among which colonies it counted', () => {
  const rows = [
    ...many(30, 'A', 'QY', { queen_year: '2024' }), ...many(4, 'B', 'QY', { queen_year: '2023' }), ...many(3, 'C'),
    ...['A', 'B'].flatMap((prefix) => Array.from({ length: prefix === 'A' ? 29 : 4 }, (_, at): Cells => ({ date: '2024-08-20', entry: 'treatment', colony: `${prefix}${at + 1}`, active_ingredient: 'thymol' }))),
    ...Array.from({ length: 12 }, (_, at) => lost(`2025-01-${at + 10}`, `A${at + 1}`)),
  ];
  const [all] = factorsOfBook(rows, { season: 2024, asOf: day('2025-06-01') }).together;
  // Four of the 37 have no treatment on record, but only one of the 34 whose queen's age is known.
  expect(all?.notes.join(' ')).toContain('of the 34 colonies with the queen’s age on record there is only 1 of those without a treatment on record');
});
