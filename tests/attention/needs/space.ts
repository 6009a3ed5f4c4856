import { expect, test } from 'vitest';
import { hold, percent } from '#shared/figures.ts';
import type { RuleTests } from './ruleTests.ts';
import { asked, bring, enter, hived, one, row, seenIn, setRule, who } from './needBook.ts';

const bees = (colony: string, date: string, frames: number, more = {}) => seenIn(colony, date, { frames_bees: String(frames), ...more });
const twoDeeps = { note: 'on two deeps' };

/** Boxes, swarms, splits, and when a hive is looked into. */
export const space = {
  // Seven of ten frames covered: a teaching page and a hobby rule, read-weak; eight frames at the same share are 5.6: arithmetic. Within
  // seven days, as a cell is sealed 8 days after the egg: Southport and District Beekeepers, read.
  addBox: () => {
    test('seven of ten combs covered want a box, six do not; of eight, six do and five do not', async () => {
      await enter(hived('A'), hived('B'), hived('C', '2025-04-20', { note: 'eight-frame hive, on one deep' }), hived('D', '2025-04-20', { note: 'eight-frame hive, on one deep' }));
      await enter(bees('A', '2025-05-10', 7), bees('B', '2025-05-10', 6), bees('C', '2025-05-10', 6), bees('D', '2025-05-10', 5));
      const [first, second] = await asked('addBox', '2025-05-12');
      expect(first).toMatchObject({ who: 'A', act: 'Add a deep box', because: `Bees cover at least ${percent(0.7)} of the combs.`, earliest: '2025-05-10', latest: '2025-05-17', status: 'due', line: { count: 2, weather: 'quick' } });
      expect([first?.detail, second?.detail]).toEqual([`${percent(0.7)} covered`, `${percent(0.75)} covered`]);
      expect(second?.who).toBe('C');
      expect(bring(first!)).toEqual([{ item: 'deep box with combs', count: 2, unit: '' }]);
      await setRule('space.full', 0.6);
      expect(await who('addBox', '2025-05-12')).toEqual(['A', 'B', 'C', 'D']);
    });
    test('on two deeps it is a super; once it is on, the combs are covered no more', async () => {
      await enter(hived('A', '2025-04-20', twoDeeps), bees('A', '2025-05-10', 14));
      expect(await one('addBox', '2025-05-12')).toMatchObject({ act: 'Add a super', line: { bring: [{ item: 'medium super with combs', count: 1 }] } });
      await enter(row('2025-05-13', 'supers on', { colony: 'A', box: 'medium', count: '1' }));
      expect(await asked('addBox', '2025-05-13')).toEqual([]);
    });
    test('a look tells of it for three weeks, within the days of adding boxes', async () => {
      await enter(hived('A'), hived('B'), bees('A', '2025-05-10', 7), bees('B', '2025-07-20', 7));
      expect(await who('addBox', '2025-05-31')).toEqual(['A']);
      expect(await asked('addBox', '2025-06-01')).toEqual([]);
      expect(await who('addBox', '2025-07-20')).toEqual(['B']);
      expect(await asked('addBox', '2025-07-21')).toEqual([]);
    });
  },
  // Every 5 days at high risk, no sign to swarm in 5 days: Trunch Beekeepers, read. Older queens swarm more: Simpson, 1960s, from memory.
  // The points and from how many the risk is high: common practice.
  swarmRisk: () => {
    test('an old queen over packed combs in swarm season is looked at within five days', async () => {
      await enter(hived('A', '2025-04-20', { ...twoDeeps, queen_year: '2023' }), bees('A', '2025-05-10', 18, { queen_cells: 'none' }));
      const found = await one('swarmRisk', '2025-05-13');
      // In season 1, older queen 2, packed 2.
      expect(found).toMatchObject({ who: 'A', act: 'Look for swarm cells', because: 'The risk of a swarm is high.', detail: `5${hold}points`, earliest: '2025-05-13', latest: '2025-05-15', status: 'due', line: { minutes: 12 } });
      expect(found.records[0]).toContain('Queen of 2023, in her third summer.');
      await setRule('space.swarm.lookHigh', 4);
      expect(await one('swarmRisk', '2025-05-13')).toMatchObject({ latest: '2025-05-14' });
      await setRule('space.risk.high', 6);
      expect(await asked('swarmRisk', '2025-05-13')).toEqual([]);
      for (const [key, points] of [['space.risk.high', 1], ['space.risk.older', 0], ['space.risk.packed', 0]] as const) await setRule(key, points);
      expect(await one('swarmRisk', '2025-05-13')).toMatchObject({ detail: `1${hold}point` });
    });
    test('with a queen of last year on combs not packed, with a look since, or out of season it is not', async () => {
      await enter(hived('A', '2025-04-20', twoDeeps), bees('A', '2025-05-10', 16, { queen_cells: 'none' }), hived('B', '2025-04-20', { ...twoDeeps, queen_year: '2023' }), bees('B', '2025-06-25', 18));
      expect(await asked('swarmRisk', '2025-05-13')).toEqual([]);
      expect(await who('swarmRisk', '2025-06-30')).toEqual(['B']);
      expect(await asked('swarmRisk', '2025-07-01')).toEqual([]);
      await enter(bees('B', '2025-06-29', 12));
      expect(await asked('swarmRisk', '2025-06-30')).toEqual([]);
    });
    test('cells that were seen ask for their own look, and sooner', async () => {
      await enter(hived('A', '2025-04-20', { ...twoDeeps, queen_year: '2023' }), bees('A', '2025-05-10', 18, { queen_cells: 'swarm' }));
      expect(await asked('swarmRisk', '2025-05-13')).toEqual([]);
      expect(await who('swarmCellsLook', '2025-05-13')).toEqual(['A']);
    });
  },
  // Bees on 8 drawn frames and brood on at least 4: a club's novice guide, read-weak. Splits with a queen by 1 to 15 July, walk-away by
  // mid June: Michigan and Minnesota practice, from memory.
  splitBy: () => {
    test('8 frames of bees and 4 of brood may be split by 3 July with a mated queen, walk-away by 15 June', async () => {
      await enter(hived('A'), hived('B'), hived('C'), bees('A', '2025-05-20', 8, { frames_brood: '4', eggs: 'yes' }), bees('B', '2025-05-20', 7.5, { frames_brood: '4' }), bees('C', '2025-05-20', 8, { frames_brood: '3.5' }));
      const found = await one('splitBy', '2025-05-21');
      // 28 September less 11 weeks is 13 July, when the young queen should lay: 10, 21 and 28 days after the split.
      expect(found).toMatchObject({
        who: 'A', act: 'Split it, if you want more colonies', because: 'Strong enough to split: with a mated queen by 3 July 2025, with a cell by 22 June 2025, walk-away by 15 June 2025.', detail: '8 frames, 4 of brood',
        earliest: '2025-05-20', latest: '2025-07-03', status: 'due', line: { grave: 1 },
      });
      expect(found.latest >= '2025-07-01' && found.latest <= '2025-07-15').toBe(true);
      expect(bring(found)).toEqual([{ item: 'hive for a split', count: 1, unit: '' }]);
      await setRule('space.split.brood', 3.5);
      expect(await who('splitBy', '2025-05-21')).toEqual(['A', 'C']);
    });
    test('ways close one by one; after the last none is asked for, nor of one that was split', async () => {
      await enter(hived('A'), hived('B'), bees('A', '2025-06-14', 9, { frames_brood: '5' }), bees('B', '2025-06-14', 9, { frames_brood: '5' }), row('2025-06-14', 'split', { colony: 'B', new_colony: 'E', new_queen: 'mated' }));
      expect(await one('splitBy', '2025-06-16')).toMatchObject({ who: 'A', because: 'Strong enough to split: with a mated queen by 3 July 2025, with a cell by 22 June 2025.' });
      expect(await who('splitBy', '2025-07-03')).toEqual(['A']);
      expect(await asked('splitBy', '2025-07-04')).toEqual([]);
      await setRule('space.frost', '10-12');
      expect(await who('splitBy', '2025-07-04')).toEqual(['A']);
    });
    test('none before 1 May', async () => {
      await enter(hived('A', '2025-04-01'), bees('A', '2025-04-24', 9, { frames_brood: '5' }));
      expect(await asked('splitBy', '2025-04-30')).toEqual([]);
      expect(await who('splitBy', '2025-05-01')).toEqual(['A']);
    });
  },
  // Every 7 days in swarm season: Southport and District Beekeepers, read. 10 to 14 days in build-up, 14 to 21 in a flow, 3 to 4 weeks to
  // the close: extension calendars, from memory.
  look: () => {
    test('looked into on 10 May it is due by 17 May, before an egg of that day is sealed on the 18th', async () => {
      await enter(hived('A'), seenIn('A', '2025-05-10', { queen_cells: 'none' }));
      expect(await one('look', '2025-05-16')).toMatchObject({ who: 'A', act: 'Look into it', because: 'In swarm season hives are looked into every 7 days.', detail: 'last on 10 May 2025', earliest: '2025-05-15', latest: '2025-05-17', status: 'due' });
      expect(await one('look', '2025-05-18')).toMatchObject({ status: 'overdue' });
      expect(await one('look', '2025-05-14')).toMatchObject({ status: 'coming' });
      await setRule('space.swarm.look', 9);
      // Nine days are a day too late.
      expect(await one('look', '2025-05-16')).toMatchObject({ latest: '2025-05-19' });
    });
    test.each([
      ['2025-04-12', '2025-04-20', 'In spring hives are looked into every 14 days.', '2025-04-26'],
      ['2025-07-05', '2025-07-20', 'In summer hives are looked into every 21 days.', '2025-07-26'],
      ['2025-08-20', '2025-09-10', 'Late in the season hives are looked into every 28 days.', '2025-09-17'],
    ])('looked into on %s, asked on %s: %s', async (date, on, because, latest) => {
      await enter(hived('A', '2024-04-20'), seenIn('A', date, { frames_bees: '6' }));
      expect(await one('look', on)).toMatchObject({ because, latest });
    });
    test('long before the next one is due nothing is asked, nor once the hives are shut', async () => {
      await enter(hived('A', '2024-04-20'), seenIn('A', '2025-07-05', { frames_bees: '6' }));
      expect(await asked('look', '2025-07-16')).toEqual([]);
      expect(await who('look', '2025-07-17')).toEqual(['A']);
      expect(await who('look', '2025-10-10')).toEqual(['A']);
      expect(await asked('look', '2025-10-11')).toEqual([]);
      expect(await asked('look', '2025-04-09')).toEqual([]);
    });
    test('a colony that has its own day for a look is not asked for twice', async () => {
      await enter(hived('A'), hived('B'), seenIn('A', '2025-05-10', { queen_cells: 'swarm' }), seenIn('B', '2025-05-10', { queen_cells: 'none' }));
      expect(await who('look', '2025-05-16')).toEqual(['B']);
    });
    test('one that nobody looked into is due so many days after the season of looks began, or after it came', async () => {
      await enter(hived('A', '2024-04-20'), hived('B', '2025-05-03'));
      expect(await asked('look', '2025-05-05')).toMatchObject([{ who: 'A', detail: 'never looked into', latest: '2025-04-17' }, { who: 'B', latest: '2025-05-10' }]);
    });
  },
} satisfies RuleTests;
