import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, day, type Day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { curveOf, spansSince } from '#core/losses/curves.ts';
import { lossReview } from '#core/losses/lossReview.ts';
import { balances, yardCounts } from '#core/losses/yardCounts.ts';
import { ageCurveSentence, inHundred } from '#core/losses/lossWords.ts';
import { seasonYards } from '#core/losses/seasonLedger.ts';
import { operation } from './anyOperation.ts';
import { hived, lost, recorded, yards } from './recorded.ts';

const ids = yards.map((yard) => yard.id);

/** How many stand in each yard as a day begins, replayed row by row. */
function standing(rows: readonly Cells[], before: Day): number[] {
  const where = new Map<string, string>();
  for (const row of rows) {
    if ((row.date ?? '') >= before) break;
    const colony = row.colony ?? '';
    if (row.entry === 'install') where.set(colony, row.yard ?? '');
    else if (row.entry === 'split') where.set(row.new_colony ?? '', row.to_yard ?? '');
    else if (row.entry === 'move') where.set(colony, row.to_yard ?? '');
    else where.delete(colony);
  }
  return yards.map((yard) => [...where.values()].filter((code) => code === yard.code).length);
}

describe('the account', () => {
  test('balances in any stretch of days, and its closing is what a replay finds', () => {
    fc.assert(fc.property(operation, fc.nat(1500), fc.nat(500), (rows, start, length) => {
      const { states } = recorded(rows);
      const from = addDays(day('2021-01-01'), start);
      const until = addDays(from, length);
      const counts = [...yardCounts(states, ids, from, until).values()];
      for (const one of counts) expect(balances(one)).toBe(true);
      expect(counts.map((one) => one.closing)).toEqual(standing(rows, until));
    }), { numRuns: 150 });
  });

  test('a season opens with what the one before closed with, and the opening balances taken in', () => {
    fc.assert(fc.property(operation, (rows) => {
      const { states } = recorded(rows);
      const asOf = day('2027-12-31');
      for (let season = 2020; season < 2026; season += 1) {
        const before = seasonYards(states, yards, season, asOf, defaultBorders);
        const after = seasonYards(states, yards, season + 1, asOf, defaultBorders);
        after.forEach(({ yard, counts }, at) => {
          const taken = states.filter((state) => state.origin === 'opening' && state.stays[0]?.yard === yard.id && state.start >= `${season + 1}-04-01` && state.start < `${season + 2}-04-01`).length;
          expect(counts.year.opening).toBe((before[at]?.counts.year.closing ?? -1) + taken);
        });
      }
    }), { numRuns: 60 });
  });
});

const review = (rows: Cells[], asOf: string, season?: number, united: 'lost' | 'takenOut' = 'lost') =>
  lossReview({ states: recorded(rows).states, yards, borders: defaultBorders, asOf: day(asOf), today: day(asOf) }, season, united);

describe('the review', () => {
  test('moves, united and absconded by the survey rule, hand-worked', () => {
    const rows: Cells[] = [
      ...[1, 2, 3, 4, 5, 6].map((n) => hived('2024-05-01', `C${n}`)),
      { date: '2024-11-01', entry: 'move', colony: 'C1', to_yard: 'LB' }, { date: '2024-11-02', entry: 'combine', colony: 'C2', into: 'C3' },
      { date: '2024-11-03', entry: 'absconded', colony: 'C4' }, { date: '2024-11-04', entry: 'sale', colony: 'C5' }, lost('2025-01-02', 'C1'),
    ];
    const winter = (united: 'lost' | 'takenOut') => review(rows, '2025-06-01', 2024, united).rates.filter((row) => row.season === 2024 && row.period === 'winter').map((row) => [row.group, row.lost, row.atRisk, row.complete]);
    expect(winter('lost')).toEqual([['all', 3, 5, true], ['QY', 2, 4, true], ['LB', 1, 1, true], ['OO', 0, 0, true]]);
    expect(winter('takenOut')).toEqual([['all', 2, 4, true], ['QY', 1, 3, true], ['LB', 1, 1, true], ['OO', 0, 0, true]]);
  });

  test('for any operation the sentences carry the counts of the rows, and the curve loses what the account loses', () => {
    fc.assert(fc.property(operation, fc.integer({ min: 2020, max: 2025 }), (rows, season) => {
      const found = review(rows, '2027-12-31', season, 'takenOut');
      if (found.season !== season) return;
      const winter = found.rates.find((row) => row.season === season && row.period === 'winter' && row.group === 'all');
      expect(found.sinceOctober.all.losses).toBe(winter?.lost);
      expect(found.sinceOctober.byYard.reduce((sum, { curve }) => sum + curve.losses, 0)).toBe(winter?.lost);
      const text = found.sentences.join(' ');
      expect(text).not.toMatch(/NaN|undefined|null/);
      const said = /^(?:You wintered|Of) (\d+) colon(?:y|ies)(?: at risk in the winter)? (?:and|you) lost (none|\d+)(, [^;]*)?;/.exec(text);
      // Only the colonies there as the winter began were wintered.
      if (text.startsWith('You wintered')) expect(winter?.atRisk).toBe(found.ledger.find(({ yard }) => yard === 'all')?.aliveOn1October);
      if (said !== null) {
        expect([Number(said[1]), said[2] === 'none' ? 0 : Number(said[2])]).toEqual([winter?.atRisk, winter?.lost]);
        if ((winter?.atRisk ?? 0) < 10) expect(text).toContain('with so few');
        else expect(text).toContain(`, ${inHundred(winter?.rate ?? 0)}; for winters like this`);
      }
      const yard = /(\w+ yard) lost (\d+) of its (\d+), the rest (\d+) of (\d+)/.exec(text);
      if (yard !== null) {
        const row = found.rates.find((one) => one.season === season && one.period === 'winter' && `${one.group} yard` === yard[1]);
        expect([Number(yard[2]), Number(yard[3])]).toEqual([row?.lost, row?.atRisk]);
        expect([Number(yard[2]) + Number(yard[4]), Number(yard[3]) + Number(yard[5])]).toEqual([winter?.lost, winter?.atRisk]);
      }
    }), { numRuns: 200 });
  });

  test('nothing, one colony, all sold, and a first day that is the last: no NaN, and null where there is no rate', () => {
    const sold = [hived('2024-05-01', 'A'), { date: '2024-06-01', entry: 'sale', colony: 'A' }];
    for (const [rows, asOf] of [[[], '2025-01-01'], [sold, '2024-12-01'], [[hived('2024-05-01', 'A')], '2024-05-01'], [[hived('2024-05-01', 'A'), lost('2024-05-01', 'A')], '2025-02-01']] as const) {
      const found = review([...rows], asOf);
      expect(JSON.stringify(found)).not.toMatch(/NaN|undefined/);
      for (const row of found.rates) expect(row.rate === null).toBe(row.atRisk === 0);
    }
  });

  test('a loss on 1 April belongs to the season that begins, not to the winter that ended, in account and curve alike', () => {
    const rows = [hived('2024-05-01', 'A'), hived('2024-05-01', 'B'), lost('2025-03-31', 'A'), lost('2025-04-01', 'B')];
    const found = review(rows, '2025-06-01', 2024);
    expect(found.rates.find((row) => row.season === 2024 && row.period === 'winter' && row.group === 'all')?.lost).toBe(1);
    expect(found.sinceOctober.all.losses).toBe(1);
  });

  test('the winter curve after a move enters late in the new yard, hand-worked', () => {
    const { states } = recorded([hived('2024-05-01', 'A'), hived('2024-05-01', 'B', 'LB'), hived('2024-05-01', 'C', 'LB'), lost('2024-10-11', 'B'), { date: '2024-10-21', entry: 'move', colony: 'A', to_yard: 'LB' }, lost('2024-10-31', 'A')]);
    const spans = spansSince(states, day('2024-10-01'), day('2025-04-01'), day('2025-06-01'));
    const curve = curveOf(spans.byYard.get(yards[1]?.id as never) ?? [], 182, 182 / 6);
    // Day 10: two watched, one lost; day 30: the newcomer and C watched, one lost.
    expect(curve).toMatchObject({ times: [10, 30], atRisk: [2, 2], lost: [1, 1], survival: [0.5, 0.25] });
    expect(curve.strip).toHaveLength(7);
  });

  test('counts below ten are not put as a rate', () => {
    const rows = [hived('2023-05-01', 'A'), lost('2023-12-01', 'A'), ...Array.from({ length: 12 }, (_, n) => hived('2024-05-01', `C${n}`)), lost('2024-12-01', 'C0')];
    const found = review(rows, '2025-06-01', 2024);
    expect(found.sentences.join(' ')).not.toContain('earlier winter');
    const small = review([hived('2024-05-01', 'A'), hived('2024-05-01', 'B'), lost('2024-12-01', 'A')], '2025-06-01', 2024);
    expect(small.sinceOctober.sentence).toBe('1 of 2 colonies watched were lost by the end of the winter.');
  });

  test('a running winter is marked, and a colony sold in it is not said to have gone into it and stayed', () => {
    const rows = [...Array.from({ length: 12 }, (_, n) => hived('2024-05-01', `C${n}`)), { date: '2024-10-20', entry: 'sale', colony: 'C0' }, lost('2024-11-01', 'C1')];
    const found = review(rows, '2024-11-25', 2024);
    expect(found.rates.filter((row) => row.period === 'winter').every((row) => !row.complete)).toBe(true);
    expect(found.sentences[0]).toBe('Of 11 colonies at risk this winter you have lost 1 so far; the winter is not over.');
    const heard = { date: '2024-11-10', entry: 'note', colony: 'A', note: 'humming' };
    expect(review([hived('2024-05-01', 'A'), heard], '2024-11-25', 2024).sinceOctober.sentence).toBe('The one colony watched was not lost so far.');
  });

  test('a winter of which nothing is recorded says so, and one whose records stop early says where', () => {
    const silent = review([hived('2024-05-01', 'A')], '2024-11-25', 2024);
    expect(silent.sentences).toEqual(['Nothing about a colony is recorded for the winter of 2024–25; the last record is of 1 May 2024.']);
    expect(silent.sinceOctober.sentence).toBe(silent.sentences[0]);
    const early = review([hived('2024-05-01', 'A'), { date: '2024-10-05', entry: 'note', colony: 'A', note: 'fed' }], '2025-06-01', 2024);
    expect(early.sentences.at(-1)).toBe('The last record of a colony is of 5 October 2024; what was lost after it is not known here.');
  });

  test('united colonies that the rates count as lost are said to leave the curve alive', () => {
    const rows = [...Array.from({ length: 12 }, (_, n) => hived('2024-05-01', `C${n}`)), { date: '2024-10-20', entry: 'combine', colony: 'C0', into: 'C2' }, lost('2025-03-01', 'C1')];
    expect(review(rows, '2025-06-01', 2024).sinceOctober.sentence).toContain('One united colony is taken here as leaving alive.');
  });

  test('a loss is never rounded to nought, nor a survivor away', () => {
    expect([0, 0.001, 0.255, 0.999, 1].map(inHundred)).toEqual(['0 in 100', 'less than 1 in 100', '26 in 100', 'more than 99 in 100', '100 in 100']);
  });

  test('where many were watched for a year and the first loss came later, the sentence does not say too few were', () => {
    const spans = Array.from({ length: 20 }, (_, n) => ({ entry: 0, exit: n === 0 ? 500 : 800, lost: n === 0 }));
    expect(ageCurveSentence(curveOf(spans, 800, 120), () => 20)).toContain('none was lost within a year of its start');
  });
});
