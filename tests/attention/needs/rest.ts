import { expect, test } from 'vitest';
import type { YardId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import type { OfferBody } from '#shared/contract/offers.ts';
import { offerPapers } from '#core/desk/offerPapers.ts';
import type { RuleTests } from './ruleTests.ts';
import { asked, enter, hived, one, opened, row, setRule, who } from './needBook.ts';

const piece = (date: string, quantity: number, item: string, from: string, to: string) => row(date, 'stock', { item, quantity: String(quantity), from, to });
const offer = (orderBy: string): OfferBody => ({ seller: 'Sandel Road Bees', what: { kind: 'nuc', frames: 5 }, steps: [{ from: 1, each: 12_500 }], orderBy: day(orderBy), deliveryFrom: null, deliveryUntil: null, least: 1, most: null, deposit: null, note: null });

/** What no hive is opened for: dead-outs, papers, orders, and the workshop. The days of all four are house choices: common practice. */
export const rest = {
  // Foulbrood is to be reported in most places: Halsbury's Laws, COMAR 15.07.01.04, California code 29200-29213, read.
  deadOut: () => {
    test('a hive that died is looked at within three days, and disease is said at once', async () => {
      await enter(hived('A'), hived('B'), row('2025-11-10', 'loss', { colony: 'A', cause: 'starvation' }), row('2025-11-11', 'loss', { colony: 'B', cause: 'disease' }));
      const found = await asked('deadOut', '2025-11-12');
      expect(found.find((dead) => dead.who === 'A')).toMatchObject({
        act: 'Look at the dead-out and close it up', because: 'Its hive has not been looked over since it died or left.', earliest: '2025-11-10', latest: '2025-11-13', status: 'due', records: ['A was found dead on 10 November 2025: starvation.'],
        line: { caution: expect.stringContaining('call the bee inspector') },
      });
      expect(found.find((dead) => dead.who === 'B')?.because).toContain('Disease was written down.');
      await setRule('needs.deadOut.by', 1);
      expect((await asked('deadOut', '2025-11-12')).find((dead) => dead.who === 'A')).toMatchObject({ latest: '2025-11-11', status: 'overdue' });
    });
    test('one that absconded too, one that was sold or united not; it is let go after sixty days', async () => {
      await enter(...['A', 'B', 'C', 'D'].map((name) => hived(name)), row('2025-08-10', 'absconded', { colony: 'A' }), row('2025-08-10', 'sale', { colony: 'B', note: 'the hive stays' }), row('2025-08-10', 'combine', { colony: 'C', into: 'D' }));
      expect(await one('deadOut', '2025-08-12')).toMatchObject({ who: 'A', records: ['A left its hive on 10 August 2025.'] });
      expect(await who('deadOut', '2025-10-09')).toEqual(['A']);
      expect(await asked('deadOut', '2025-10-10')).toEqual([]);
    });
    test('carried home, it has been looked at', async () => {
      await enter(hived('A'), row('2025-11-10', 'loss', { colony: 'A' }));
      expect(await who('deadOut', '2025-11-12')).toEqual(['A']);
      const parts = [['deep box', 1], ['deep frame', 10], ['bottom board', 1], ['entrance reducer', 1], ['inner cover', 1], ['outer cover', 1], ['stand', 1], ['feeder', 1], ['queen excluder', 1]] as const;
      await enter(...parts.map(([item, count]) => piece('2025-11-12', count, item, 'QY', 'shed')));
      expect(await asked('deadOut', '2025-11-12')).toEqual([]);
    });
  },
  // Registration differs by place: codes of Alabama, Pennsylvania and Rhode Island, read; the day is the person's own.
  renewal: () => {
    const renew = (by: string | null) => opened().store.keepYardDetails(1 as YardId, { access: null, notes: null, registration: 'R 12', renewal: by === null ? null : day(by) });
    test('sixty days before the day that was written down', async () => {
      await enter(hived('A'));
      await renew('2026-03-01');
      expect(await one('renewal', '2026-01-05')).toMatchObject({ who: 'QY', act: 'Renew the registration of the yard', because: 'It is to be renewed, as you wrote it down.', detail: 'R 12, by 1 March 2026', earliest: '2025-12-31', latest: '2026-03-01', status: 'due' });
      expect(await one('renewal', '2025-12-24')).toMatchObject({ status: 'coming' });
      expect(await asked('renewal', '2025-12-23')).toEqual([]);
      expect(await one('renewal', '2026-03-02')).toMatchObject({ status: 'overdue' });
      await setRule('attention.renewal', 30);
      expect(await asked('renewal', '2026-01-05')).toEqual([]);
    });
    test('once the next day is written down, or none is, nothing is asked', async () => {
      await enter(hived('A'));
      await renew('2027-03-01');
      expect(await asked('renewal', '2026-01-05')).toEqual([]);
      await renew(null);
      expect(await asked('renewal', '2026-03-02')).toEqual([]);
    });
  },
  // Late winter orders risk sold-out dates: a general article, read-weak; the seller's last day is the seller's own.
  orders: () => {
    test('a seller of bees who closes in thirty days', async () => {
      await enter(hived('A'));
      await opened().store.keepPapers(offerPapers([offer('2026-01-31')]));
      expect(await one('orders', '2026-01-10')).toMatchObject({ who: 'all', act: 'Order from Sandel Road Bees', because: 'Its last day is near.', earliest: '2026-01-01', latest: '2026-01-31', status: 'due', line: { page: '/orders' } });
      expect(await asked('orders', '2025-12-24')).toEqual([]);
      expect(await who('orders', '2026-01-31')).toEqual(['all']);
      expect(await asked('orders', '2026-02-01')).toEqual([]);
      await setRule('needs.orders.before', 45);
      expect(await one('orders', '2025-12-24')).toMatchObject({ earliest: '2025-12-17', status: 'due' });
      await setRule('needs.orders.before', 14);
      expect(await asked('orders', '2025-12-24')).toEqual([]);
    });
    test('without an offer there is nothing to order', async () => {
      await enter(hived('A'));
      expect(await asked('orders', '2026-01-10')).toEqual([]);
    });
  },
  // Repair and assemble in January: extension calendars, from memory.
  mend: () => {
    test('what waits to be mended is asked for from December to March', async () => {
      await enter(hived('A'), piece('2025-10-01', 3, 'deep box, to mend', 'supplier', 'shed'), piece('2025-10-01', 2, 'stand', 'supplier', 'shed'));
      expect(await one('mend', '2026-01-10')).toMatchObject({ who: 'all', act: 'Mend equipment', because: 'Before the season all of it should be fit for use.', detail: '3 deep boxes', earliest: '2025-12-01', latest: '2026-03-31', status: 'due', line: { minutes: 30, page: '/stock' } });
      expect(await asked('mend', '2025-11-23')).toEqual([]);
      expect(await one('mend', '2025-11-24')).toMatchObject({ status: 'coming' });
      expect(await asked('mend', '2026-04-01')).toEqual([]);
      await setRule('needs.mend.by', '02-28');
      expect(await one('mend', '2026-01-10')).toMatchObject({ latest: '2026-02-28' });
    });
    test('what is sound again, or scrapped, waits no more', async () => {
      await enter(hived('A'), piece('2025-10-01', 3, 'deep box, to mend', 'supplier', 'shed'), piece('2026-01-08', 3, 'deep box, to mend', 'shed', 'scrap'));
      expect(await who('mend', '2026-01-07')).toEqual(['all']);
      expect(await asked('mend', '2026-01-08')).toEqual([]);
    });
  },
} satisfies RuleTests;
