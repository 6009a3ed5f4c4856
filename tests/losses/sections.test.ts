import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import type { BehindSelector, Grouping, LossSurvival } from '#shared/contract/lossSections.ts';
import { groupings } from '#shared/contract/lossSections.ts';
import { day, type Day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders, type Season } from '#shared/seasons.ts';
import { behind } from '#core/losses/behind.ts';
import { cohortLoss, kindOfLoss } from '#core/losses/cohortLoss.ts';
import { lossRatesPart } from '#core/losses/lossRatesPart.ts';
import { colossCounts, publishedSurveys } from '#core/losses/publishedSurveys.ts';
import { ledgerRows, ledgerTotal, seasonYards } from '#core/losses/seasonLedger.ts';
import { survivalPairs, survivalPart, watched, type SurvivalFacts } from '#core/losses/survivalPart.ts';
import { covariateRules, winterCovariates, yardTreatmentsOf } from '#core/losses/winterCovariates.ts';
import { ruleTrouble } from '#core/rules/houseRules.ts';
import { lossRuleDefinitions } from '#core/rules/lossRules.ts';
import { operation } from './anyOperation.ts';
import { hived, lost, recorded, yards } from './recorded.ts';

function factsOf(rows: readonly Cells[], asOf: Day, kept: ReadonlyMap<string, number | string> = new Map()): SurvivalFacts {
  const { states, entries } = recorded(rows);
  const byId = new Map<ColonyId, (typeof states)[number]>(states.map((state) => [state.id, state]));
  const stateOf = (id: ColonyId) => {
    const state = byId.get(id);
    if (state === undefined) throw new Error('no such colony');
    return state;
  };
  const covariates = (season: Season) => winterCovariates({ states, yardTreatments: yardTreatmentsOf(entries), borders: defaultBorders, rules: covariateRules(kept), asOf }, season);
  return { states, yards, borders: defaultBorders, asOf, today: asOf, stateOf, covariates, rules: kept, massUnit: 'lb' };
}

const asked = (season: Season | null, by: Grouping = 'none', more: Partial<LossSurvival['asked']> = {}): LossSurvival['asked'] => ({ season, axis: 'winter', by, united: 'alive', ...more });
const counted = (facts: SurvivalFacts) => (season: Season) => seasonYards(facts.states, yards, season, facts.asOf, facts.borders);

describe('colonies behind a figure', () => {
  test('for any operation every cell of the account has its colonies behind it', () => {
    fc.assert(fc.property(operation, fc.integer({ min: 2020, max: 2025 }), fc.constantFrom('2022-07-04', '2023-12-31', '2027-12-31'), (rows, season, asOf) => {
      const known = rows.filter(({ date }) => (date ?? '') <= asOf);
      const facts = factsOf(known, day(asOf));
      const account = counted(facts)(season);
      for (const { season: _, yard, ...cells } of [...ledgerRows(season, account), ledgerTotal(season, account)]) {
        for (const [column, count] of Object.entries(cells)) {
          const selector = { kind: 'ledger', season, yard, column } as BehindSelector;
          expect([yard, column, behind(facts, selector).times]).toEqual([yard, column, count]);
        }
      }
    }), { numRuns: 120 });
  });

  test('for any operation every rate has its colonies behind it, each once', () => {
    fc.assert(fc.property(operation, fc.integer({ min: 2020, max: 2025 }), fc.constantFrom('lost' as const, 'takenOut' as const), (rows, season, united) => {
      const facts = factsOf(rows, day('2027-12-31'));
      for (const { period, group, atRisk, lost: gone } of lossRatesPart(facts, season, united, counted(facts)).rates.filter((row) => row.season === season)) {
        const at = (part: 'atRisk' | 'lost') => behind(facts, { kind: 'rate', season, period, yard: group, united, part });
        expect([group, period, at('atRisk').times, at('lost').times]).toEqual([group, period, atRisk, gone]);
        expect(at('lost').states).toHaveLength(gone);
      }
    }), { numRuns: 120 });
  });

  test('for any operation the curves’ groups have their colonies behind them and add up to the whole', () => {
    fc.assert(fc.property(operation, fc.integer({ min: 2020, max: 2025 }), fc.constantFrom(...groupings), fc.constantFrom('winter' as const, 'start' as const), (rows, season, by, axis) => {
      const facts = factsOf(rows, day('2027-12-31'));
      const question = asked(season, by, { axis });
      const part = survivalPart(facts, question);
      expect(JSON.stringify(part)).not.toMatch(/NaN|Infinity|undefined/);
      for (const group of part.groups) {
        expect(behind(facts, { kind: 'survival', asked: question, group: group.key, part: 'all' }).times).toBe(group.colonies);
        expect(behind(facts, { kind: 'survival', asked: question, group: group.key, part: 'lost' }).times).toBe(group.losses);
      }
      if (part.groups.length > 0) {
        expect(part.groups.reduce((sum, { losses }) => sum + losses, 0)).toBe(part.all.losses);
        if (axis === 'winter') expect(part.groups.reduce((sum, { colonies }) => sum + colonies, 0)).toBe(part.all.colonies);
      }
      const cohort = cohortLoss(facts, season);
      for (const one of ['dead', 'queen', 'disaster'] as const) expect(behind(facts, { kind: 'cohort', season, part: one }).times).toBe(cohort?.parts.find(({ part: kind }) => kind === one)?.rate.lost);
    }), { numRuns: 150 });
  });
});

describe('what a colony went into winter with', () => {
  const facts = factsOf([
    hived('2023-05-01', 'A', 'QY', { queen_year: '2023', queen_source: 'Heath line' }),
    hived('2024-05-01', 'B', 'LB'),
    { date: '2024-06-20', entry: 'move', colony: 'A', to_yard: 'LB' },
    { date: '2024-06-21', entry: 'treatment', yard: 'QY', active_ingredient: 'formic acid' },
    { date: '2024-07-01', entry: 'mites', colony: 'A', mites: '30', bees: '300' },
    { date: '2024-08-10', entry: 'mites', colony: 'A', mites: '6', bees: '300' },
    { date: '2024-08-20', entry: 'treatment', yard: 'LB', active_ingredient: 'thymol' },
    { date: '2024-09-01', entry: 'inspection', colony: 'A', frames_bees: '9', frames_stores: '5' },
    { date: '2024-09-20', entry: 'mites', colony: 'B', mites: '12', bees: '300' },
    { date: '2024-10-03', entry: 'mites', colony: 'B', mites: '1', bees: '300' },
    { date: '2024-10-05', entry: 'stores', colony: 'A', weight: '72', unit: 'lb' },
    { date: '2024-11-01', entry: 'requeen', colony: 'B', queen_year: '2024', queen_source: 'Fen line' },
    { date: '2024-12-01', entry: 'treatment', yard: 'LB', active_ingredient: 'oxalic acid' },
    hived('2025-01-10', 'C', 'OO', { queen_year: '2024' }),
  ], day('2025-06-01'));

  test('by the record of 1 October, hand-worked', () => {
    const [a, b, c] = facts.covariates(2024);
    expect(a).toMatchObject({ label: 'A', wintered: true, from: '2024-10-01', yard: yards[1]?.id, queenAge: 1, queenAgeClass: 'last year', line: 'Heath line', treated: ['thymol'], mitesClass: 'below', storesClass: 'enough', strength: { day: '2024-09-01', frames: 9 } });
    expect(a?.mites?.per100).toBeCloseTo(2, 12);
    expect(a?.stores).toMatchObject({ day: '2024-10-05' });
    // The queen given in November and the wash of October were not known on 1 October.
    expect(b).toMatchObject({ label: 'B', queenAgeClass: 'unknown', line: null, treated: ['thymol'], mitesClass: 'at or above', stores: null, storesClass: 'not weighed' });
    expect(c).toMatchObject({ label: 'C', wintered: false, from: '2025-01-10', queenAgeClass: 'this year', treated: [] });
  });

  test('a colony that was weighed after the winter began stands with the unweighed until then', () => {
    expect(watched(facts, asked(2024, 'stores')).rows.filter(({ id }) => id === 1).map(({ key, entry, exit, last }) => [key, entry, exit, last])).toEqual([['not weighed', 0, 4, false], ['enough', 4, 182, true]]);
  });

  test('a count dated after the colony’s death, or of no bees, is not taken', () => {
    const [state] = recorded([hived('2024-05-01', 'A'), lost('2024-12-24', 'A')]).states;
    if (state === undefined) throw new Error('no colony');
    const odd = { ...state, miteCounts: [{ day: day('2024-09-09'), mites: 3, bees: 0 }, { day: day('2025-01-09'), mites: 30, bees: 300 }], storesWeights: [{ day: day('2024-12-31'), grams: 40_000 }] };
    const [found] = winterCovariates({ states: [odd], yardTreatments: [], borders: defaultBorders, rules: covariateRules(new Map()), asOf: day('2025-06-01') }, 2024);
    expect(found).toMatchObject({ mites: null, mitesClass: 'not counted', stores: null });
  });
});

describe('the wintered cohort', () => {
  test('dead, queen problems and disaster apart, hand-worked', () => {
    const rows: Cells[] = [
      ...['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H', 'I', 'J'].map((label, at) => hived('2024-05-01', label, at < 5 ? 'QY' : 'LB')),
      { date: '2024-11-01', entry: 'loss', colony: 'A', cause: 'mites' }, { date: '2024-11-02', entry: 'loss', colony: 'B', cause: 'queen failure; weak in autumn' }, { date: '2024-11-03', entry: 'loss', colony: 'C', cause: 'flood; queen failure' },
      lost('2024-11-04', 'D'), { date: '2024-11-05', entry: 'combine', colony: 'E', into: 'F' }, { date: '2024-11-06', entry: 'sale', colony: 'G' }, hived('2024-12-01', 'K'), lost('2024-12-24', 'K'),
    ];
    const found = cohortLoss(factsOf(rows, day('2025-06-01')), 2024);
    expect(found).toMatchObject({ total: { atRisk: 10, lost: 4, rate: 0.4 }, sold: 1, united: 1, given: 0, came: 1 });
    expect(found?.parts.map(({ part, rate }) => [part, rate.lost])).toEqual([['dead', 2], ['queen', 1], ['disaster', 1]]);
    // QY: 4 of 5, LB: 0 of 5.
    expect(found?.average).toMatchObject({ units: 2, mean: 0.4, smallest: 0, largest: 0.8 });
    expect(kindOfLoss([])).toBe('dead');
  });

  test('the parts of the COLOSS survey give its printed rates', () => {
    for (const { season, wintered, queen, dead, disaster } of colossCounts) {
      const printed = publishedSurveys.find((row) => row.survey === 'coloss' && row.season === season);
      expect(Math.round((1000 * (queen + dead + disaster)) / wintered) / 1000).toBeCloseTo(printed?.rate ?? -1, 9);
    }
  });
});

describe('few and odd records are told in words', () => {
  const herd = (n: number, yard = 'QY', year = 2024) => Array.from({ length: n }, (_, at) => hived(`${year}-05-01`, `${yard}${year}-${at}`, yard));
  const clean = (value: unknown) => expect(JSON.stringify(value)).not.toMatch(/NaN|Infinity|undefined/);
  const cases: [string, Cells[], string][] = [
    ['an empty book', [], '2025-06-01'],
    ['one colony', herd(1), '2025-06-01'],
    ['one colony, lost', [...herd(1), lost('2024-12-01', 'QY2024-0')], '2025-06-01'],
    ['no losses', [...herd(12), ...herd(12, 'LB'), { date: '2025-04-02', entry: 'note', colony: 'QY2024-0', note: 'flying' }], '2025-06-01'],
    ['only losses', [...herd(8), ...herd(8, 'LB'), ...Array.from({ length: 16 }, (_, at) => lost(`2024-12-${String(at + 1).padStart(2, '0')}`, `${at < 8 ? 'QY' : 'LB'}2024-${at % 8}`))], '2025-06-01'],
    ['all lost on one day', [...herd(8), ...Array.from({ length: 8 }, (_, at) => lost('2024-12-01', `QY2024-${at}`))], '2025-06-01'],
    ['all sold', [...herd(8), ...Array.from({ length: 8 }, (_, at) => ({ date: '2024-11-01', entry: 'sale', colony: `QY2024-${at}` }))], '2025-06-01'],
    ['all sold before winter', [...herd(8), ...Array.from({ length: 8 }, (_, at) => ({ date: '2024-08-01', entry: 'sale', colony: `QY2024-${at}` }))], '2025-06-01'],
    ['a winter without records', herd(12), '2025-06-01'],
    ['the day before winter', herd(12), '2024-09-30'],
    ['the first day of winter', [...herd(12), lost('2024-10-01', 'QY2024-0')], '2024-10-01'],
  ];
  test.each(cases)('%s', (_, rows, asOf) => {
    const facts = factsOf(rows, day(asOf));
    for (const season of [2024, 2023, null]) {
      for (const by of groupings) {
        for (const axis of ['winter', 'start'] as const) {
          const part = survivalPart(facts, asked(season, by, { axis, united: 'lost' }));
          clean(part);
          expect(part.sentence).not.toBe('');
          clean(survivalPairs(facts, asked(season, by, { axis })));
        }
      }
      if (season !== null) clean(lossRatesPart(facts, season, 'lost', counted(facts)));
    }
  });

  test('fewer than five losses are not tested, and the reason is said', () => {
    const rows = [...herd(10), ...herd(10, 'LB'), lost('2024-12-01', 'QY2024-0'), lost('2024-12-02', 'QY2024-1'), lost('2025-01-02', 'LB2024-1')];
    expect(survivalPart(factsOf(rows, day('2025-06-01')), asked(2024, 'yard')).test).toEqual({ kind: 'refused', sentence: '3 losses are too few for a test; the counts stand alone.' });
    // The limit is the person's own.
    expect(survivalPart(factsOf(rows, day('2025-06-01'), new Map([['losses.test.fewest', 3]])), asked(2024, 'yard')).test).toMatchObject({ kind: 'made', df: 1 });
    expect(survivalPart(factsOf(rows.filter(({ yard }) => yard !== 'LB').slice(0, 11), day('2025-06-01')), asked(2024, 'yard')).test).toMatchObject({ kind: 'refused', sentence: 'There is one group only, so nothing is compared.' });
  });

  test('fewer than five watched draw no curve', () => {
    const part = survivalPart(factsOf([...herd(12), ...herd(4, 'LB'), lost('2024-12-01', 'LB2024-0')], day('2025-06-01')), asked(2024, 'yard'));
    expect(part.groups.map(({ key, curve, colonies, losses }) => [key, curve === null, colonies, losses])).toEqual([['QY', false, 12, 0], ['LB', true, 4, 1]]);
    expect(part.notes).toContain('Too few for a curve: LB yard (1 of 4 lost).');
  });

  test('all winters together are compared within each', () => {
    const rows = [2021, 2022, 2023].flatMap((year) => [...herd(10, 'QY', year), ...herd(10, 'LB', year), ...[0, 1, 2].map((at) => lost(`${year}-12-0${at + 1}`, `QY${year}-${at}`)), lost(`${year + 1}-01-05`, `LB${year}-0`)]);
    const part = survivalPart(factsOf(rows.toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1)), day('2024-06-01')), asked(null, 'yard'));
    expect(part.all).toMatchObject({ colonies: 20 + 36 + 52, losses: 12 });
    expect(part.test).toMatchObject({ kind: 'made', strata: 3 });
    expect(part.sentence).toContain('Over 3 winters, of 108 colony winters, 12 were lost');
  });

  test('sold and united are told beside the lost, and add up', () => {
    const rows = [...herd(20), ...[0, 1, 2].map((at) => lost('2024-12-01', `QY2024-${at}`)), { date: '2024-12-20', entry: 'sale', colony: 'QY2024-3' }, { date: '2025-01-20', entry: 'combine', colony: 'QY2024-4', into: 'QY2024-5' }];
    const { incidence } = survivalPart(factsOf(rows, day('2025-06-01')), asked(2024));
    expect(incidence?.sentence).toContain('3 lost, 15 in 100 (4 to 33); 1 sold or given away; 1 united.');
    expect(incidence?.alive.at(-1)).toBeCloseTo(0.75, 12);
  });

  test('every limit of the review is a rule that its own default keeps to', () => {
    for (const rule of lossRuleDefinitions) expect(ruleTrouble(rule.key, rule.default)).toBeNull();
  });
});
