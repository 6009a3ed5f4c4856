import fc from 'fast-check';
import type { EntryId } from '#shared/brands.ts';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { ColonyStrip } from '#shared/contract/strip.ts';
import { addDays, day } from '#shared/days.ts';
import { SeasonStrip } from '../../renderer/charts/SeasonStrip.tsx';
import { stripGeometry } from '../../renderer/charts/stripGeometry.ts';

const season = { season: 2025, from: day('2025-04-01'), winter: day('2025-10-01'), until: day('2026-04-01') };
const honeyText = (pounds: number) => `${pounds} lb`;
const bare: ColonyStrip = { start: day('2025-04-24'), until: day('2026-02-10'), ended: true, seasons: [season], looks: [], mites: [], supers: [], feeds: [], treatments: [], honey: [], queens: [] };

const filled: ColonyStrip = {
  ...bare,
  looks: [
    { day: day('2025-05-02'), bees: 6, brood: 2.5, stores: null },
    { day: day('2025-06-20'), bees: 14, brood: 6, stores: 3 },
  ],
  mites: [{ day: day('2025-08-20'), mites: 12, bees: 300, per100: 4, range: [2.1, 6.9] }],
  supers: [{ day: day('2025-05-20'), on: 1 }, { day: day('2025-05-20'), on: 2 }, { day: day('2025-07-20'), on: 0 }],
  feeds: [{ day: day('2025-09-05'), sentence: 'Fed 2 gal of syrup 2:1.' }],
  treatments: [{ day: day('2026-02-01'), sentence: 'Treated with oxalic acid.', until: day('2026-03-20') }],
  honey: [{ day: day('2025-07-20'), lb: 45 }],
  queens: [{ day: day('2025-04-24'), sentence: 'Package hived.', queen: { id: 1 as EntryId, year: 2025, colour: 'blue', marked: false, source: null, since: day('2025-04-24') } }],
};

test('a season of a colony, drawn', async () => {
  const drawn = `${renderToStaticMarkup(<SeasonStrip strip={filled} season={season} width={760} honeyText={honeyText} />).replaceAll('><', '>\n<')}\n`;
  expect(drawn).not.toContain('NaN');
  await expect(drawn).toMatchFileSnapshot('pictures/season-strip.svg');
});

test('a treatment is not drawn past the end of the colony, and supers of one day are one step', () => {
  const picture = stripGeometry(filled, season, 760, honeyText);
  const [treated] = picture.rows.find(({ key }) => key === 'treatments')?.marks ?? [];
  expect(treated?.to).toBe(picture.life.to);
  expect(picture.supers.labels.map(({ text }) => text)).toEqual(['2']);
});

test('supers still on from the season before are on from its first day', () => {
  const { supers, left } = stripGeometry({ ...bare, start: day('2024-04-24'), supers: [{ day: day('2024-06-01'), on: 3 }] }, season, 760, honeyText);
  expect(supers.labels).toEqual([{ x: left + 2, y: expect.any(Number) as number, text: '3' }]);
});

test('whatever was written down stays inside the picture, in its order, and an interval holds its count', () => {
  const anyDay = fc.integer({ min: -400, max: 700 }).map((days) => addDays(season.from, days));
  const strips = fc.record({
    looks: fc.array(fc.record({ day: anyDay, bees: fc.option(fc.integer({ min: 0, max: 30 })), brood: fc.option(fc.integer({ min: 0, max: 20 })), stores: fc.option(fc.integer({ min: 0, max: 20 })) }), { maxLength: 20 }),
    mites: fc.array(fc.record({ day: anyDay, low: fc.integer({ min: 0, max: 5 }), more: fc.integer({ min: 0, max: 10 }), most: fc.integer({ min: 0, max: 30 }) }), { maxLength: 8 }),
    supers: fc.array(fc.record({ day: anyDay, on: fc.integer({ min: 0, max: 9 }) }), { maxLength: 8 }),
    feeds: fc.array(fc.record({ day: anyDay, sentence: fc.constant('Fed.') }), { maxLength: 8 }),
    treatments: fc.array(fc.record({ day: anyDay, sentence: fc.constant('Treated.'), until: fc.option(anyDay) }), { maxLength: 8 }),
  });
  const byDay = <One extends { day: string }>(list: readonly One[]) => list.toSorted((a, b) => (a.day < b.day ? -1 : 1));
  fc.assert(
    fc.property(strips, fc.integer({ min: 420, max: 900 }), (drawn, width) => {
      const strip: ColonyStrip = {
        ...bare, looks: byDay(drawn.looks), supers: byDay(drawn.supers), feeds: byDay(drawn.feeds), treatments: byDay(drawn.treatments),
        mites: byDay(drawn.mites).map(({ day: counted, low, more, most }) => ({ day: counted, mites: 1, bees: 300, per100: low + more, range: [low, low + more + most] })),
      };
      const picture = stripGeometry(strip, season, width, honeyText);
      for (const { points } of picture.frames.lines) {
        points.forEach(({ x, y }, index) => {
          expect(x).toBeGreaterThanOrEqual(picture.left);
          expect(x).toBeLessThanOrEqual(picture.right);
          expect(y).toBeGreaterThanOrEqual(picture.frames.top);
          expect(y).toBeLessThanOrEqual(picture.frames.bottom);
          expect(x).toBeGreaterThanOrEqual(points[index - 1]?.x ?? 0);
        });
      }
      for (const { y, high, low } of picture.mites.counts) {
        expect(high).toBeGreaterThanOrEqual(picture.mites.top);
        expect(high).toBeLessThanOrEqual(y);
        expect(y).toBeLessThanOrEqual(low);
        expect(low).toBeLessThanOrEqual(picture.mites.bottom);
      }
      for (const { marks } of picture.rows) {
        for (const { x, to } of marks) {
          expect(x).toBeGreaterThanOrEqual(picture.left);
          expect(to).toBeGreaterThanOrEqual(x);
          expect(to).toBeLessThanOrEqual(picture.right);
        }
      }
    }),
  );
});
