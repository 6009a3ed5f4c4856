import { expect, test } from 'vitest';
import type { RuleTests } from './ruleTests.ts';
import { asked, bring, enter, hived, one, row, seenIn, setRule, who } from './needBook.ts';

/** Colonies without a laying queen, and those that want another one. */
export const queens = {
  // Laying workers after 3 to 4 weeks without a queen: most extension texts, from memory; two weeks at the earliest: Collison, read.
  noEggs: () => {
    const laying = [hived('A'), seenIn('A', '2025-06-05', { eggs: 'yes' })];
    test('no eggs fifteen days after eggs ask for another look; after four weeks laying workers are suspected', async () => {
      await enter(...laying, seenIn('A', '2025-06-20', { eggs: 'no' }));
      expect(await one('noEggs', '2025-06-21')).toMatchObject({
        who: 'A', act: 'Look for eggs again', because: 'Neither eggs nor queen at the last look.', detail: 'last seen laying on 5 June 2025', earliest: '2025-06-20', latest: '2025-06-27', status: 'due',
        records: ['No eggs on 20 June 2025; last signs of a laying queen on 5 June 2025.'], line: { grave: 4 },
      });
      expect(await one('noEggs', '2025-07-02')).toMatchObject({ act: 'Look for eggs again', status: 'overdue' });
      expect(await one('noEggs', '2025-07-03')).toMatchObject({ act: 'Look for drone brood in worker cells; requeen or unite', because: 'No signs of a laying queen for 28 days or more: laying workers or a drone layer are suspected.', latest: '2025-07-03', status: 'due' });
      expect(await one('noEggs', '2025-07-04')).toMatchObject({ status: 'overdue' });
      // By Collison's two weeks.
      await setRule('needs.noEggs.doubt', 14);
      expect(await one('noEggs', '2025-06-21')).toMatchObject({ because: 'No signs of a laying queen for 14 days or more: laying workers or a drone layer are suspected.' });
    });
    test('asked for once the days of doubt are over, it has until then at the least; a look shortly before has its own week', async () => {
      await enter(...laying, seenIn('A', '2025-06-30', { eggs: 'no' }), hived('B'), seenIn('B', '2025-06-20', { eggs: 'no' }));
      // A: 7 July is later than 3 July. B was never seen laying, and its 28 days were over before it was looked at.
      expect((await asked('noEggs', '2025-07-03')).map(({ who: label, act, latest }) => [label, act, latest])).toEqual([['A', 'Look for drone brood in worker cells; requeen or unite', '2025-07-07'], ['B', 'Look for drone brood in worker cells; requeen or unite', '2025-06-27']]);
    });
    test('a queen that was seen, or eggs at a later look, are an answer; a look that told nothing of eggs is no doubt', async () => {
      await enter(...laying, seenIn('A', '2025-06-20', { eggs: 'no', queen_seen: 'yes' }));
      expect(await asked('noEggs', '2025-06-21')).toEqual([]);
      await enter(seenIn('A', '2025-06-28', { eggs: 'no' }));
      expect(await who('noEggs', '2025-06-28')).toEqual(['A']);
      await enter(seenIn('A', '2025-07-02', { eggs: 'yes' }));
      expect(await asked('noEggs', '2025-07-02')).toEqual([]);
      await enter(seenIn('A', '2025-07-20', { frames_bees: '8' }));
      expect(await asked('noEggs', '2025-07-20')).toEqual([]);
    });
    test('a colony with a young queen has her own day; 28 days after she came it is asked for as any other', async () => {
      await enter(...laying, row('2025-06-10', 'requeen', { colony: 'A', queen_year: '2025' }), seenIn('A', '2025-07-08', { eggs: 'no' }));
      expect(await asked('noEggs', '2025-07-08')).toEqual([]);
      await enter(seenIn('A', '2025-07-09', { eggs: 'no' }));
      expect(await who('noEggs', '2025-07-09')).toEqual(['A']);
    });
    test('a look is spoken of for six weeks, and not once the hives are shut', async () => {
      await enter(...laying, seenIn('A', '2025-06-20', { eggs: 'no' }), hived('B'), seenIn('B', '2025-09-20', { eggs: 'no' }));
      expect(await who('noEggs', '2025-08-01')).toEqual(['A']);
      expect(await asked('noEggs', '2025-08-02')).toEqual([]);
      expect(await who('noEggs', '2025-10-10')).toEqual(['B']);
      expect(await asked('noEggs', '2025-10-11')).toEqual([]);
    });
    test('it is one look, and one question of a queen: neither the usual look nor another queen is asked for beside it', async () => {
      const old = { queen_year: '2023' };
      await enter(hived('A', '2025-04-20', old), hived('B', '2025-04-20', old), ...['A', 'B'].map((colony) => seenIn(colony, '2025-06-05', { eggs: 'yes' })), seenIn('A', '2025-06-20', { eggs: 'no' }), seenIn('B', '2025-06-20', { eggs: 'yes' }));
      expect(await who('noEggs', '2025-07-15')).toEqual(['A']);
      expect(await who('look', '2025-07-15')).toEqual(['B']);
      expect(await who('requeen', '2025-07-15')).toEqual(['B']);
      // A house that never asks for it asks as ever.
      await setRule('needs.grave.noEggs', 0);
      expect(await who('look', '2025-07-15')).toEqual(['A', 'B']);
      expect(await who('requeen', '2025-07-15')).toEqual(['A', 'B']);
    });
    test('one that is too weak for winter is united, and not asked for twice', async () => {
      await enter(...laying, seenIn('A', '2025-09-10', { eggs: 'no', frames_bees: '4' }), hived('B'), seenIn('B', '2025-09-10', { eggs: 'no', frames_bees: '5' }));
      expect(await who('noEggs', '2025-09-12')).toEqual(['B']);
      expect(await who('weakAutumn', '2025-09-12')).toEqual(['A']);
    });
  },
  // A queen lives 2 to 3 years: UC Agriculture and Natural Resources, Beekeeping in California 1987, read. July and August: extension
  // calendars, from memory. A temper of 4 twice in a row: common practice.
  requeen: () => {
    test('a queen in her third summer is replaced from July to 5 September; one in her second is kept', async () => {
      await enter(hived('A', '2025-04-20', { queen_year: '2023' }), hived('B', '2025-04-20', { queen_year: '2024' }));
      const found = await one('requeen', '2025-07-10');
      expect(found).toMatchObject({ who: 'A', act: 'Requeen it', because: 'The queen is in her third summer or older.', detail: 'queen of 2023', earliest: '2025-07-01', latest: '2025-09-05', status: 'due', line: { page: '/needs/queens' } });
      expect(bring(found)).toEqual([{ item: 'mated queen', count: 1, unit: '' }]);
      expect(await one('requeen', '2025-06-24')).toMatchObject({ status: 'coming' });
      expect(await asked('requeen', '2025-06-23')).toEqual([]);
      expect(await who('requeen', '2025-09-05')).toEqual(['A']);
      expect(await asked('requeen', '2025-09-06')).toEqual([]);
      await setRule('needs.requeen.age', 2);
      expect(await asked('requeen', '2025-07-10')).toMatchObject([{ who: 'A', because: 'The queen is in her second summer or older.' }, { who: 'B' }]);
      await setRule('needs.requeen.age', 4);
      expect(await asked('requeen', '2025-07-10')).toEqual([]);
    });
    test('a new queen is an answer', async () => {
      await enter(hived('A', '2025-04-20', { queen_year: '2023' }), row('2025-07-12', 'requeen', { colony: 'A', queen_year: '2025' }));
      expect(await who('requeen', '2025-07-11')).toEqual(['A']);
      expect(await asked('requeen', '2025-07-12')).toEqual([]);
    });
    test('fierce at two looks in a row, under the same queen', async () => {
      const temper = (colony: string, date: string, of: number) => seenIn(colony, date, { temper: String(of) });
      await enter(hived('A'), hived('B'), hived('C'), ...['A', 'C'].flatMap((colony) => [temper(colony, '2025-06-10', 4), temper(colony, '2025-06-24', 5)]), temper('B', '2025-06-10', 5), temper('B', '2025-06-24', 3));
      await enter(row('2025-06-28', 'requeen', { colony: 'C', queen_year: '2025' }));
      expect(await one('requeen', '2025-07-10')).toMatchObject({ who: 'A', because: 'Fierce at the last two looks that noted it: 4 of 5 or more.', detail: 'temper 4, 5', records: ['Temper 4 of 5.', 'Temper 5 of 5.'] });
      await setRule('needs.requeen.temper', 5);
      expect(await asked('requeen', '2025-07-10')).toEqual([]);
    });
    test('a queen of whom no year is known is not called old', async () => {
      await enter(row('2021-04-20', 'install', { yard: 'QY', colony: 'A', origin: 'swarm' }));
      expect(await asked('requeen', '2025-07-10')).toEqual([]);
    });
  },
} satisfies RuleTests;
