import { expect, test } from 'vitest';
import { gramsFrom, volumeIn, millilitresFrom } from '#shared/units.ts';
import type { RuleTests } from './ruleTests.ts';
import { asked, bring, enter, hived, one, openBook, row, seenIn, setRule, who } from './needBook.ts';

const weighed = (colony: string, date: string, pounds: number) => row(date, 'stores', { colony, weight: String(pounds), unit: 'lb' });
const fed = (colony: string, date: string, feed: string, gallons?: number) => row(date, 'feed', { colony, feed, ...(gallons === undefined ? {} : { amount: String(gallons), unit: 'gal' }) });
const hives = (...names: string[]) => names.map((name) => hived(name, '2024-04-20', { note: 'on two deeps' }));
const plain = (text: string | null) => text?.replaceAll(/[\u00a0\u202f]/g, ' ');

/** Food for winter, weak colonies, what a yard is made ready with, and the crop. */
export const stores = {
  // 90 lb in October in the north, heavy syrup until about 15 October: Moeller 1977, read. A deep comb holds 7 lb: a general article,
  // read-weak. 7 lb from a gallon of heavy syrup: extension rule of thumb, from memory. 60 lb in between: a survey, read.
  storesAutumn: () => {
    test('8 deep frames are 56 lb, 34 short of 90: five gallons of heavy syrup until 15 October', async () => {
      await enter(...hives('A'), seenIn('A', '2025-09-10', { frames_stores: '8' }));
      const found = await one('storesAutumn', '2025-09-12');
      expect(found).toMatchObject({ who: 'A', act: 'Feed heavy syrup', earliest: '2025-09-10', latest: '2025-10-15', status: 'due', line: { grave: 5, page: '/needs/stores' } });
      expect([plain(found.because), plain(found.detail)]).toEqual(['Short of the winter’s 90 lb; heavy syrup is fed until 15 October 2025.', '34 lb short, 5 gal']);
      expect(bring(found)).toEqual([{ item: 'heavy syrup (2:1)', count: 5, unit: 'gal' }]);
      expect(found.line.sources.find(({ key }) => key === 'stores.gain.heavy')).toMatchObject({ confidence: 'from memory' });
      await setRule('stores.place', 'middle');
      expect(await asked('storesAutumn', '2025-09-12')).toEqual([]);
    });
    test('within five pounds of the target it is let be; six short is a gallon', async () => {
      await enter(...hives('A', 'B'), weighed('A', '2025-09-10', 85), weighed('B', '2025-09-10', 84));
      const found = await one('storesAutumn', '2025-09-12');
      expect([found.who, plain(found.detail)]).toEqual(['B', '6 lb short, 1 gal']);
      await setRule('stores.slack', 6);
      expect(await asked('storesAutumn', '2025-09-12')).toEqual([]);
    });
    test('what was fed since counts; a word a month old tells nothing; after 15 October no syrup is asked for', async () => {
      await enter(...hives('A', 'B', 'C'), weighed('A', '2025-09-10', 56), weighed('B', '2025-09-10', 56), weighed('C', '2025-10-01', 70), fed('A', '2025-09-20', 'syrup 2:1', 5));
      expect(await who('storesAutumn', '2025-09-19')).toEqual(['A', 'B']);
      expect(await who('storesAutumn', '2025-10-10')).toEqual(['B', 'C']);
      expect(await who('storesAutumn', '2025-10-11')).toEqual(['C']);
      expect(await who('storesAutumn', '2025-10-15')).toEqual(['C']);
      expect(await asked('storesAutumn', '2025-10-16')).toEqual([]);
    });
    test('it is fed from 5 September on, once the supers are off', async () => {
      await enter(...hives('A'), weighed('A', '2025-08-20', 56));
      expect(await one('storesAutumn', '2025-08-30')).toMatchObject({ earliest: '2025-09-05', status: 'coming' });
    });
    test('a book in kilograms asks for litres', async () => {
      await openBook({ massUnit: 'kg' });
      await enter(...hives('A'), weighed('A', '2025-09-10', 76));
      // 14 lb are 6.35 kg, 2 gallons, and 7.57 litres, rounded up.
      const found = await one('storesAutumn', '2025-09-12');
      expect(Math.ceil(volumeIn(millilitresFrom(gramsFrom(14, 'lb') / gramsFrom(7, 'lb'), 'gal'), 'l'))).toBe(8);
      expect(plain(found.detail)).toBe('6.4 kg short, 8 l');
    });
  },
  // 2 lb a week: a hobby page quoting a UK author, read-weak. Most stores go in early spring: Moeller 1977, read. Low below 15 lb, and
  // let alone for three weeks after food: common practice.
  storesWinter: () => {
    test('41 lb on 10 October come down to 15 after thirteen weeks from the 15th, on 14 January', async () => {
      await enter(...hives('A', 'B'), weighed('A', '2025-10-10', 41), weighed('B', '2025-10-10', 90));
      expect(await asked('storesWinter', '2026-01-14')).toEqual([]);
      const found = await one('storesWinter', '2026-01-28');
      expect(found).toMatchObject({ who: 'A', act: 'Heft it, and give fondant if it is light', earliest: '2026-01-14', latest: '2026-01-21', status: 'overdue', line: { weather: 'top' } });
      // Fifteen weeks: 30 of 41 lb used.
      expect([plain(found.because), plain(found.detail)]).toEqual(['Reckoned to have less than 15 lb left.', 'about 11 lb']);
      expect(bring(found)).toEqual([{ item: 'fondant', count: 1, unit: 'block' }]);
      await setRule('stores.week', 1.5);
      expect(await asked('storesWinter', '2026-01-28')).toEqual([]);
    });
    test('after food it is left alone for three weeks, and then asked for again', async () => {
      await enter(...hives('A'), weighed('A', '2025-10-10', 41), fed('A', '2026-01-16', 'fondant'));
      expect(await who('storesWinter', '2026-01-15')).toEqual(['A']);
      expect(await asked('storesWinter', '2026-01-16')).toEqual([]);
      expect(await asked('storesWinter', '2026-02-05')).toEqual([]);
      expect(await one('storesWinter', '2026-02-06')).toMatchObject({ earliest: '2026-02-06', latest: '2026-02-13' });
      await enter(weighed('A', '2026-02-06', 30));
      expect(await asked('storesWinter', '2026-02-06')).toEqual([]);
    });
    test('food given long before it came down to 15 lb does not make it overdue', async () => {
      await enter(...hives('A'), weighed('A', '2025-10-10', 41), fed('A', '2025-10-20', 'fondant'));
      expect(await one('storesWinter', '2026-01-20')).toMatchObject({ earliest: '2026-01-14', latest: '2026-01-21', status: 'due' });
    });
    test('hefted, light and fed on one evening, it is seen to', async () => {
      await enter(...hives('A', 'B'), weighed('A', '2026-01-16', 12), fed('A', '2026-01-16', 'fondant'), weighed('B', '2026-01-16', 12));
      expect(await who('storesWinter', '2026-01-16')).toEqual(['B']);
      expect((await asked('storesWinter', '2026-02-06')).find((found) => found.who === 'A')).toMatchObject({ earliest: '2026-02-06', latest: '2026-02-13' });
    });
    test('in spring by what was seen: two combs are 14 lb and low, three are not; supers or an old look make no figure', async () => {
      await enter(...hives('A', 'B', 'C'), seenIn('A', '2026-05-10', { frames_stores: '2' }), seenIn('B', '2026-05-10', { frames_stores: '3' }), seenIn('C', '2026-05-10', { frames_stores: '2' }), row('2026-05-11', 'supers on', { colony: 'C', box: 'medium', count: '1' }));
      const found = await one('storesWinter', '2026-05-12');
      expect(found).toMatchObject({ who: 'A', act: 'Feed it at once', earliest: '2026-05-10', latest: '2026-05-17' });
      expect([plain(found.because), plain(found.detail)]).toEqual(['Less than 15 lb of stores were seen.', 'about 14 lb on 10 May']);
      // Past its last day it is looked at first: a flow may have come since.
      expect(await one('storesWinter', '2026-05-18')).toMatchObject({ who: 'A', act: 'Look at its stores, and feed it if they are still low', status: 'overdue' });
      expect(await who('storesWinter', '2026-06-09')).toEqual(['A']);
      expect(await asked('storesWinter', '2026-06-10')).toEqual([]);
      await setRule('stores.low', 14);
      expect(await asked('storesWinter', '2026-05-12')).toEqual([]);
    });
  },
  // Heft or weigh every two weeks in winter: a UK author, read-weak. The days of autumn: common practice.
  heft: () => {
    test('two weeks after the last visit a winter yard is hefted, all of it', async () => {
      await enter(...hives('A', 'B'), row('2025-12-05', 'note', { yard: 'QY', note: 'humming' }));
      expect(await one('heft', '2025-12-20')).toMatchObject({ who: 'QY', act: 'Heft the hives', because: 'In winter hives are hefted every 14 days; stores go fastest toward spring.', detail: 'last there on 5 December 2025', earliest: '2025-12-19', latest: '2025-12-26', status: 'due', line: { minutes: 4, weather: 'any' } });
      expect(await asked('heft', '2025-12-11')).toEqual([]);
      await setRule('needs.heft.every', 28);
      expect(await asked('heft', '2025-12-20')).toEqual([]);
    });
    test('a hefting is a visit; before December and after 10 April nothing is asked', async () => {
      await enter(...hives('A', 'B'), weighed('A', '2025-12-18', 60));
      expect(await asked('heft', '2025-12-20')).toEqual([]);
      expect(await who('heft', '2025-12-25')).toEqual(['QY']);
      expect(await asked('heft', '2025-11-23')).toEqual([]);
      expect(await who('heft', '2026-04-10')).toEqual(['QY']);
      expect(await asked('heft', '2026-04-11')).toEqual([]);
    });
    test('in autumn the colonies of whose stores nothing tells, until two weeks before feeding ends', async () => {
      await enter(...hives('A', 'B', 'C'), weighed('B', '2025-08-20', 70), weighed('C', '2025-08-01', 70));
      expect(await asked('heft', '2025-09-12')).toMatchObject([
        { who: 'A', act: 'Weigh or heft it', because: 'Nothing tells of its stores for winter.', detail: 'never told', earliest: '2025-09-10', latest: '2025-10-01' }, { who: 'C', detail: 'last on 1 August 2025' },
      ]);
      expect(await asked('heft', '2025-09-02')).toEqual([]);
      expect(await asked('heft', '2025-10-16')).toEqual([]);
    });
  },
  // 5 to 6 deep frames in mid October in the north: extension practice, from memory; unite weaker ones: Moeller 1977, read.
  weakAutumn: () => {
    const strong = (colony: string, frames: number, date = '2025-09-10') => seenIn(colony, date, { frames_bees: String(frames), eggs: 'yes' });
    test('four frames are united with the least strong of those that are fit; five winter alone', async () => {
      await enter(...hives('A', 'B', 'C', 'D'), strong('A', 4), strong('B', 12), strong('C', 8), strong('D', 5));
      const found = await one('weakAutumn', '2025-09-12');
      expect(found).toMatchObject({
        who: 'A', act: 'Unite it with a stronger colony', because: 'Too few bees to winter on.', detail: '4 frames, into C', earliest: '2025-09-10', latest: '2025-10-15', status: 'due',
        line: { caution: expect.stringContaining('foulbrood') },
      });
      expect(found.records).toEqual(['4 frames of bees on 10 September 2025, fewer than 5.', 'C: 8 frames of bees on 10 September 2025, queenright.']);
      expect(bring(found)).toEqual([{ item: 'sheet of newspaper', count: 1, unit: '' }]);
      await setRule('stores.winterFrames', 6);
      expect(await who('weakAutumn', '2025-09-12')).toEqual(['A', 'D']);
    });
    test('five frames are no partner, and none in another yard is', async () => {
      await enter(...hives('A', 'D'), hived('L', '2024-04-20', { yard: 'LB' }), strong('A', 4), strong('D', 5), strong('L', 12));
      expect(await one('weakAutumn', '2025-09-12')).toMatchObject({ who: 'A', detail: '4 frames, no partner in the yard' });
      await setRule('stores.partnerFrames', 5);
      expect(await one('weakAutumn', '2025-09-12')).toMatchObject({ detail: '4 frames, into D' });
    });
    test('by a look of the last three weeks, from 20 August to 15 October, until it is united', async () => {
      await enter(...hives('A', 'B'), strong('A', 4, '2025-08-15'), strong('B', 12, '2025-08-15'));
      expect(await asked('weakAutumn', '2025-08-19')).toEqual([]);
      expect(await who('weakAutumn', '2025-09-05')).toEqual(['A']);
      expect(await asked('weakAutumn', '2025-09-06')).toEqual([]);
      await enter(strong('A', 4, '2025-10-10'), row('2025-10-12', 'combine', { colony: 'A', into: 'B' }));
      expect(await who('weakAutumn', '2025-10-11')).toEqual(['A']);
      expect(await asked('weakAutumn', '2025-10-12')).toEqual([]);
    });
  },
  // Lower entrance screened or reduced against mice: Moeller 1977, read; wrap in November: extension calendars, from memory. The days:
  // common practice.
  winterList: () => {
    test('entrances by 20 October, wraps by 25 November, for every hive of the yard', async () => {
      await enter(...hives('A', 'B', 'C'));
      const found = await asked('winterList', '2025-10-05');
      expect(found).toMatchObject([
        { who: 'QY', act: 'Reduce the entrances against mice', detail: '3 hives', earliest: '2025-10-01', latest: '2025-10-20', line: { minutes: 12, bring: [{ item: 'entrance reducer or mouse guard', count: 3 }] } },
        { who: 'QY', act: 'Wrap the hives', latest: '2025-11-25' },
      ]);
      expect(await asked('winterList', '2025-09-23')).toEqual([]);
      expect(await asked('winterList', '2026-01-01')).toEqual([]);
      await setRule('needs.winter.wrap', '11-10');
      expect((await asked('winterList', '2025-10-05')).map(({ latest }) => latest)).toEqual(['2025-10-20', '2025-11-10']);
    });
    test('what was written down as done is not asked for; what was done last winter is', async () => {
      await enter(...hives('A'), row('2024-10-10', 'work', { yard: 'QY', task: 'hives wrapped' }), row('2025-10-10', 'work', { yard: 'QY', task: 'entrances reduced' }));
      expect((await asked('winterList', '2025-10-12')).map(({ act, detail }) => [act, detail])).toEqual([['Wrap the hives', '1 hive']]);
      await enter(row('2025-10-14', 'note', { yard: 'QY', note: 'wraps on' }));
      expect(await asked('winterList', '2025-10-15')).toEqual([]);
    });
    test('a note of what is still missing is no answer', async () => {
      await enter(...hives('A'), row('2025-10-10', 'note', { yard: 'QY', note: 'no mouse guards yet' }), row('2025-10-10', 'note', { yard: 'QY', note: 'need wraps for 3 hives' }), row('2025-10-11', 'work', { yard: 'QY', task: 'mowing', note: 'wrap next time' }));
      expect((await asked('winterList', '2025-10-12')).map(({ act }) => act)).toEqual(['Reduce the entrances against mice', 'Wrap the hives']);
    });
  },
  // Two thirds of the comb sealed: a Czech veterinary faculty note, read. The days are house choices: common practice.
  harvest: () => {
    const on = (colony: string, count = 2) => row('2025-06-12', 'supers on', { colony, box: 'medium', count: String(count) });
    const crop = (date: string) => row(date, 'harvest', { colony: 'A', gross: '120', tare: '40', unit: 'lb' });
    test('after the main flow, from 15 July to 5 August, by two people', async () => {
      await enter(...hives('A', 'B', 'C'), on('A'), on('B', 1));
      const [first, second] = await asked('harvest', '2025-07-20');
      expect(first).toMatchObject({ who: 'A', act: 'Look whether the supers are ripe, and take those that are', because: 'The main flow is over.', detail: '2 supers', earliest: '2025-07-15', latest: '2025-08-05', status: 'due', line: { people: 2, count: 2, caution: expect.stringContaining('under one year') } });
      expect(second).toMatchObject({ who: 'B', detail: '1 super' });
      expect(await asked('harvest', '2025-07-07')).toEqual([]);
      expect(await asked('harvest', '2025-08-06')).toEqual([]);
      await setRule('needs.harvest.firstBy', '08-12');
      expect(await who('harvest', '2025-08-06')).toEqual(['A', 'B']);
    });
    test('a crop of the three weeks before is the main crop; an earlier one is not', async () => {
      await enter(...hives('A'), on('A'), crop('2025-06-23'));
      expect(await one('harvest', '2025-07-20')).toMatchObject({ records: ['Last harvested on 23 June 2025.'] });
      await enter(crop('2025-06-24'));
      expect(await asked('harvest', '2025-07-20')).toEqual([]);
      await setRule('needs.harvest.early', 20);
      expect(await who('harvest', '2025-07-20')).toEqual(['A']);
    });
    test('the last supers from 12 to 30 September, and for thirty days more, until they are off', async () => {
      await enter(...hives('A'), on('A'), crop('2025-07-20'));
      expect(await one('harvest', '2025-09-15')).toMatchObject({ act: 'Take off the last supers', earliest: '2025-09-12', latest: '2025-09-30' });
      expect(await one('harvest', '2025-10-30')).toMatchObject({ status: 'overdue' });
      expect(await asked('harvest', '2025-10-31')).toEqual([]);
      await enter(row('2025-09-20', 'supers off', { colony: 'A', box: 'medium', count: '2' }));
      expect(await asked('harvest', '2025-09-20')).toEqual([]);
    });
  },
} satisfies RuleTests;
