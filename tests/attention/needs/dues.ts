import { expect, test } from 'vitest';
import type { RuleTests } from './ruleTests.ts';
import { asked, enter, hived, one, row, seenIn, setRule, wash, who } from './needBook.ts';

const split = (colony: string, date: string, more = {}) => row(date, 'split', { colony: 'A', new_colony: colony, queen: 'stays', new_queen: 'walk-away', ...more });

/** What an entry made due, as the list asks for it. */
export const dues = {
  // A laying queen from day 21: practice page on walk-away splits (buttsbees.com, beekeeping tip 7), read-weak. The verdict by day 28:
  // from memory.
  walkAwayLaying: () => {
    test('a split of 20 May asks from 10 to 17 June for the part without a queen', async () => {
      await enter(hived('A'), split('B', '2025-05-20'));
      expect(await one('walkAwayLaying', '2025-06-12')).toMatchObject({
        who: 'B', act: 'Look for eggs', because: 'A walk-away split had to raise its own queen.', earliest: '2025-06-10', latest: '2025-06-17', status: 'due',
        records: ['Walk-away split on 20 May 2025: it had to raise its own queen.'], line: { minutes: 8, weather: 'open' },
      });
      await setRule('attention.walkAway.by', 35);
      expect(await one('walkAwayLaying', '2025-06-12')).toMatchObject({ latest: '2025-06-24' });
    });
    test('it comes into sight a week before, is let go six weeks after its last day, and is asked for no more once eggs were looked for', async () => {
      await enter(hived('A'), split('B', '2025-05-20'));
      expect(await asked('walkAwayLaying', '2025-06-02')).toEqual([]);
      expect(await one('walkAwayLaying', '2025-06-03')).toMatchObject({ status: 'coming' });
      expect(await one('walkAwayLaying', '2025-06-17')).toMatchObject({ status: 'due' });
      expect(await one('walkAwayLaying', '2025-06-18')).toMatchObject({ status: 'overdue' });
      expect(await who('walkAwayLaying', '2025-07-29')).toEqual(['B']);
      expect(await asked('walkAwayLaying', '2025-07-30')).toEqual([]);
      await enter(seenIn('B', '2025-06-13', { eggs: 'yes' }));
      expect(await asked('walkAwayLaying', '2025-06-13')).toEqual([]);
    });
    test('a split given a mated queen raises none; where the old queen moved, the mother does', async () => {
      await enter(hived('A'), split('B', '2025-05-20', { new_queen: 'mated' }));
      expect(await asked('walkAwayLaying', '2025-06-12')).toEqual([]);
      await enter(split('C', '2025-05-21', { queen: 'moves' }));
      expect(await who('walkAwayLaying', '2025-06-12')).toEqual(['A']);
    });
  },
  // Eggs by day 7 to 10 after a package or a caged queen: extension package guides, from memory.
  newQueenLaying: () => {
    test('a queen given on 1 August is looked for from 8 to 11 August', async () => {
      await enter(hived('A'), row('2025-08-01', 'requeen', { colony: 'A', queen_year: '2025' }));
      expect(await one('newQueenLaying', '2025-08-09')).toMatchObject({ who: 'A', act: 'Look whether the new queen lays', because: 'A mated queen was given.', detail: 'Requeened on 1 August 2025.', earliest: '2025-08-08', latest: '2025-08-11', status: 'due' });
      expect(await asked('newQueenLaying', '2025-07-31')).toEqual([]);
      await setRule('attention.newQueen.by', 14);
      expect(await one('newQueenLaying', '2025-08-09')).toMatchObject({ latest: '2025-08-15' });
    });
    test('a package asks for it too and a nuc does not; eggs before day 7 are no answer, eggs on it are', async () => {
      await enter(hived('P', '2025-04-20', { origin: 'package' }), hived('N'), seenIn('P', '2025-04-26', { eggs: 'yes' }));
      expect(await who('newQueenLaying', '2025-04-28')).toEqual(['P']);
      await enter(seenIn('P', '2025-04-27', { eggs: 'no' }));
      expect(await asked('newQueenLaying', '2025-04-28')).toEqual([]);
    });
  },
  // Eggs 21 to 28 days after the loss: arithmetic on the days of a queen's growth, which stand in the house rules as from memory.
  queenlessLaying: () => {
    test('a queen missing on 1 June asks from 22 to 29 June', async () => {
      await enter(hived('A'), hived('B'), row('2025-06-01', 'queen', { colony: 'A', what: 'missing' }));
      expect(await one('queenlessLaying', '2025-06-22')).toMatchObject({ who: 'A', act: 'Look for eggs, or give it a queen', because: 'The queen was missing.', earliest: '2025-06-22', latest: '2025-06-29', status: 'due', line: { grave: 4 } });
      expect(await asked('queenlessLaying', '2025-06-14')).toEqual([]);
      await setRule('attention.queenless.from', 24);
      expect(await one('queenlessLaying', '2025-06-22')).toMatchObject({ earliest: '2025-06-25', status: 'coming' });
    });
    test('another queen answers', async () => {
      await enter(hived('A'), row('2025-06-01', 'queen', { colony: 'A', what: 'missing' }), row('2025-06-05', 'requeen', { colony: 'A', queen_year: '2025' }));
      expect(await asked('queenlessLaying', '2025-06-22')).toEqual([]);
    });
    test('a queen given on the day on which she was found missing answers; one that went missing on the day she was given does not', async () => {
      const missing = row('2025-06-01', 'queen', { colony: 'A', what: 'missing' });
      await enter(hived('A'), missing, row('2025-06-01', 'requeen', { colony: 'A', queen_year: '2025' }));
      expect(await asked('queenlessLaying', '2025-06-22')).toEqual([]);
      expect(await who('newQueenLaying', '2025-06-09')).toEqual(['A']);
      await enter(hived('B'), row('2025-06-01', 'requeen', { colony: 'B', queen_year: '2025' }), { ...missing, colony: 'B' });
      expect(await who('queenlessLaying', '2025-06-22')).toEqual(['B']);
    });
  },
  // A queen cell is sealed 8 days after the egg, so a look every 7 days: Southport and District Beekeepers, Numbers, read.
  swarmCellsLook: () => {
    test('cells of 10 May ask for a look by 17 May, a day before an egg of that day is sealed', async () => {
      await enter(hived('A'), hived('B'), seenIn('A', '2025-05-10', { queen_cells: 'swarm' }), seenIn('B', '2025-05-10', { queen_cells: 'supersedure' }));
      expect(await one('swarmCellsLook', '2025-05-11')).toMatchObject({ who: 'A', act: 'Look again for swarm cells', because: 'Swarm cells were seen.', earliest: '2025-05-10', latest: '2025-05-17', status: 'due', line: { minutes: 12 } });
      expect(await one('swarmCellsLook', '2025-05-18')).toMatchObject({ status: 'overdue' });
      await setRule('attention.swarmCells.by', 5);
      expect(await one('swarmCellsLook', '2025-05-11')).toMatchObject({ latest: '2025-05-15' });
    });
    test('a later look, or a split of the same evening, answers', async () => {
      await enter(hived('A'), seenIn('A', '2025-05-10', { queen_cells: 'swarm' }), seenIn('A', '2025-05-16', { queen_cells: 'none' }));
      expect(await asked('swarmCellsLook', '2025-05-16')).toEqual([]);
      expect(await who('swarmCellsLook', '2025-05-15')).toEqual(['A']);
      await enter(seenIn('A', '2025-05-24', { queen_cells: 'swarm' }), split('B', '2025-05-24'));
      expect(await asked('swarmCellsLook', '2025-05-25')).toEqual([]);
    });
  },
  // A treatment stays no longer than its label says; the three days are a house choice: common practice, no source.
  treatmentOff: () => {
    const thymol = (until: string) => row('2025-08-01', 'treatment', { colony: 'A', active_ingredient: 'thymol', end_date: until });
    test('thymol until 29 August is taken off by 1 September', async () => {
      await enter(hived('A'), hived('B'), thymol('2025-08-29'));
      expect(await one('treatmentOff', '2025-08-30')).toMatchObject({ who: 'A', act: 'Take off the thymol', earliest: '2025-08-29', latest: '2025-09-01', status: 'due', line: { weather: 'label', caution: expect.stringContaining('The label of the product is the law') } });
      expect(await asked('treatmentOff', '2025-08-21')).toEqual([]);
      await setRule('attention.treatmentOff.by', 7);
      expect(await one('treatmentOff', '2025-08-30')).toMatchObject({ latest: '2025-09-05' });
    });
    test('once somebody was there after its last day, and where none is written down, nothing is asked', async () => {
      await enter(hived('A'), thymol('2025-08-29'), seenIn('A', '2025-08-29', { frames_bees: '8' }));
      expect(await asked('treatmentOff', '2025-08-30')).toEqual([]);
      await enter(row('2025-09-10', 'treatment', { colony: 'A', active_ingredient: 'oxalic acid' }));
      expect(await asked('treatmentOff', '2025-09-12')).toEqual([]);
    });
  },
  // Count before and after each treatment: Penn State, Lopez-Uribe lab, read. The days are a house choice; so many colonies of a
  // yard: Lee et al. 2010, 8 whatever the yard's size, read.
  miteRecount: () => {
    const treated = (colony: string) => row('2025-08-01', 'treatment', { ...(colony === '' ? { yard: 'QY' } : { colony }), active_ingredient: 'formic acid', end_date: '2025-08-15' });
    test('a colony treated until 15 August is counted from 22 August to 12 September', async () => {
      await enter(hived('A'), hived('B'), treated('A'));
      expect(await one('miteRecount', '2025-08-25')).toMatchObject({ who: 'A', act: 'Count mites again', because: 'A treatment ended, and no count tells yet whether it worked.', detail: 'Treated with formic acid until 15 August 2025.', earliest: '2025-08-22', latest: '2025-09-12', status: 'due' });
      expect(await asked('miteRecount', '2025-08-14')).toEqual([]);
      await setRule('attention.recount.by', 35);
      expect(await one('miteRecount', '2025-08-25')).toMatchObject({ latest: '2025-09-19' });
    });
    test('a count after it answers, one before its last day does not; none is asked for after one in winter', async () => {
      await enter(hived('A'), treated('A'), wash('A', '2025-08-10', 4));
      expect(await who('miteRecount', '2025-08-25')).toEqual(['A']);
      await enter(wash('A', '2025-08-24', 1));
      expect(await asked('miteRecount', '2025-08-25')).toEqual([]);
      await enter(row('2025-11-20', 'treatment', { colony: 'A', active_ingredient: 'oxalic acid' }));
      expect(await asked('miteRecount', '2025-12-05')).toEqual([]);
    });
    test('a colony that stands alone, or was treated by itself, is asked for by itself', async () => {
      await enter(hived('A'), hived('L', '2025-04-20', { yard: 'LB' }), hived('B'), row('2025-08-01', 'treatment', { yard: 'LB', active_ingredient: 'formic acid', end_date: '2025-08-15' }));
      await enter(row('2025-08-01', 'treatment', { yard: 'QY', colony: 'A', active_ingredient: 'formic acid', end_date: '2025-08-15' }));
      expect((await asked('miteRecount', '2025-08-25')).map(({ who: name, detail }) => [name, detail])).toEqual([['L', 'Treated with formic acid until 15 August 2025.'], ['A', 'Treated with formic acid until 15 August 2025.']]);
    });
    test('a whole yard is asked for by some of its colonies, and by none once those are counted', async () => {
      const names = ['A', 'B', 'C'];
      await enter(...names.map((name) => hived(name)), treated(''));
      expect(await one('miteRecount', '2025-08-25')).toMatchObject({ who: 'QY', detail: '3 of 3 colonies', line: { minutes: 24, bring: [{ item: 'mite wash kit', count: 1 }] } });
      await setRule('mites.colonies', 2);
      expect(await one('miteRecount', '2025-08-25')).toMatchObject({ who: 'QY', detail: '2 of 3 colonies' });
      await enter(wash('A', '2025-08-24', 1));
      expect(await one('miteRecount', '2025-08-25')).toMatchObject({ who: 'QY', detail: '1 of 3 colonies' });
      await enter(wash('B', '2025-08-24', 1));
      expect(await asked('miteRecount', '2025-08-25')).toEqual([]);
    });
  },
} satisfies RuleTests;
