import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { renderToStaticMarkup } from 'react-dom/server';
import { expect, test } from 'vitest';
import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { FamilyLane } from '#shared/contract/lines.ts';
import { addDays, day } from '#shared/days.ts';
import { FamilySheet } from '../../renderer/charts/FamilyChart.tsx';
import { familyGeometry, laneHeight, linksAmong, type FamilyPicture } from '../../renderer/charts/familyGeometry.ts';
import { plainRules } from '../../renderer/charts/plainRules.ts';
import { textWidth } from '../../renderer/charts/text.ts';

const id = (of: number) => of as ColonyId;
const queen = (year: number | null, since: string) => ({ day: day(since), queen: { id: 1 as EntryId, year, colour: year === null ? null : (['blue', 'white', 'yellow', 'red', 'green'] as const)[year % 5] ?? null, marked: true, source: 'Tarn', since: day(since) } });
const season = (year: number) => ({ season: year, from: day(`${year}-04-01`), winter: day(`${year}-10-01`), until: day(`${year + 1}-04-01`) });
const bare: FamilyLane = {
  id: id(1), label: 'QY-1', family: id(1), mother: null, motherLabel: null, depth: 0, origin: 'package', start: day('2024-04-24'), until: day('2026-11-25'), how: 'alive', causes: [],
  into: null, intoLabel: null, sentence: '', yard: 'QY', queens: [queen(2024, '2024-04-24')], moves: [],
};
const daughter = { family: id(1), mother: id(1), motherLabel: 'QY-1', depth: 1, origin: 'split' as const };

const family: FamilyPicture = {
  asOf: day('2026-11-25'),
  seasons: [2024, 2025, 2026].map(season),
  lanes: [
    { ...bare, queens: [queen(2024, '2024-04-24'), queen(2026, '2026-06-20')], moves: [{ day: day('2025-08-02'), to: 'KF', toName: 'Kiln Field' }] },
    { ...bare, ...daughter, id: id(3), label: 'QY-3', start: day('2026-05-30'), until: day('2026-07-01'), how: 'sold', queens: [queen(null, '2026-05-30')] },
    { ...bare, ...daughter, id: id(2), label: 'QY-2', start: day('2025-05-30'), until: day('2026-02-03'), how: 'lost', causes: ['mites'], queens: [queen(2025, '2025-05-30')] },
    { ...bare, ...daughter, id: id(4), label: 'QY-4', start: day('2024-06-10'), until: day('2025-09-01'), how: 'combined', into: id(1), intoLabel: 'QY-1' },
    { ...bare, id: id(5), family: id(5), label: 'LB-1', start: day('2024-05-01'), until: day('2024-08-01'), how: 'absconded', queens: [] },
  ],
  links: [
    { kind: 'split', from: id(1), to: id(3), day: day('2026-05-30') }, { kind: 'split', from: id(1), to: id(2), day: day('2025-05-30') },
    { kind: 'split', from: id(1), to: id(4), day: day('2024-06-10') }, { kind: 'combine', from: id(4), to: id(1), day: day('2025-09-01') },
  ],
};

test('a family and its ends, drawn', async () => {
  const drawn = `${renderToStaticMarkup(<FamilySheet picture={familyGeometry(family, null, 800)} first={0} last={4} />).replaceAll('><', '>\n<')}\n`;
  expect(drawn).not.toContain('NaN');
  for (const words of ['lost: mites', 'sold', 'united into QY-1', 'absconded', 'to KF', 'green 2024']) expect(drawn).toContain(words);
  await expect(drawn).toMatchFileSnapshot('pictures/family-lines.svg');
});

test('one season leaves out what happened before and after it; a lane from before comes in at the left without a beginning', () => {
  const { lanes, links, left, names } = familyGeometry(family, 2025, 800);
  expect(lanes[0]).toMatchObject({ from: left, began: false, ended: false });
  expect(lanes[0]?.marks.map(({ kind }) => kind)).toEqual(['move']);
  expect(links.map(({ kind }) => kind)).toEqual(['split', 'combine']);
  expect(names.map(({ text }) => text)).toEqual(['summer 2025', 'winter']);
});

test('a queen has her colour only where its word stands beside her', () => {
  const close = familyGeometry({ ...family, lanes: [{ ...bare, queens: [queen(2024, '2024-04-24'), queen(2024, '2024-05-10')] }], links: [] }, null, 800);
  expect(close.lanes[0]?.marks.map(({ text }) => text)).toEqual([null, 'green 2024']);
  const drawn = renderToStaticMarkup(<FamilySheet picture={close} first={0} last={0} />);
  expect(drawn.match(/family-queen-green/g)).toHaveLength(1);
});

test('of many lanes only those in sight are drawn, and with them every link that passes', () => {
  const many = Array.from({ length: 300 }, (_, at): FamilyLane => ({ ...bare, ...(at === 0 ? {} : daughter), id: id(at + 1), label: `C${at}`, family: id(1) }));
  const picture = familyGeometry({ ...family, lanes: many, links: [{ kind: 'split', from: id(1), to: id(300), day: day('2024-06-10') }, { kind: 'split', from: id(1), to: id(3), day: day('2024-06-10') }] }, null, 800);
  expect(picture.height).toBe(300 * laneHeight);
  expect(linksAmong(picture.links, 100, 120).map(({ key }) => key)).toEqual(['split 1 300']);
  expect(renderToStaticMarkup(<FamilySheet picture={picture} first={100} last={120} />).match(/family-life/g)).toHaveLength(21);
});

test('whatever the lanes, all stays inside the picture, in its order, and no words of a lane run into each other', () => {
  const anyDay = fc.integer({ min: 0, max: 960 }).map((days) => addDays(day('2024-04-01'), days));
  const lanes = fc.array(
    fc.record({ one: anyDay, other: anyDay, how: fc.constantFrom('alive', 'lost', 'sold', 'given', 'combined', 'absconded'), label: fc.string({ maxLength: 80 }), years: fc.array(fc.record({ on: anyDay, year: fc.option(fc.integer({ min: 2020, max: 2026 })) }), { maxLength: 5 }), moves: fc.array(anyDay, { maxLength: 4 }) }),
    { minLength: 1, maxLength: 8 },
  );
  fc.assert(
    fc.property(lanes, fc.option(fc.constantFrom(2024, 2025, 2026)), fc.integer({ min: 560, max: 1100 }), (drawn, shown, width) => {
      const picture = familyGeometry(
        {
          ...family, links: [],
          lanes: drawn.map(({ one, other, how, label, years, moves }, at): FamilyLane => {
            const [start, until] = one < other ? [one, other] : [other, one];
            const during = (on: string) => on >= start && on <= until;
            return { ...bare, id: id(at + 1), label, start, until, how, intoLabel: label, causes: [label], queens: years.filter(({ on }) => during(on)).map(({ on, year }) => queen(year, on)), moves: moves.filter(during).map((on) => ({ day: on, to: 'KF', toName: 'Kiln Field' })) };
          }),
        }, shown, width,
      );
      for (const { from, to, label, end, marks } of picture.lanes) {
        expect([picture.left <= from, from <= to, to <= picture.right]).toEqual([true, true, true]);
        if (label.text.length > 1) expect(label.x - textWidth(label.text)).toBeGreaterThanOrEqual(0);
        if (end !== null && end.text.length > 2) expect(end.x + textWidth(end.text)).toBeLessThanOrEqual(width);
        marks.forEach(({ x, text }, place) => {
          expect(x).toBeGreaterThanOrEqual(from);
          expect(x).toBeLessThanOrEqual(to);
          const next = marks[place + 1]?.x ?? width;
          expect(next).toBeGreaterThanOrEqual(x);
          if (text !== null) expect(x + 7 + textWidth(text)).toBeLessThanOrEqual(next);
        });
      }
    }),
  );
});

test('the picture as a file carries its inks written out, for programs that know no variables', () => {
  const rules = plainRules(readFileSync(new URL('../../renderer/charts/family.css', import.meta.url), 'utf8'));
  expect(rules).not.toContain('var(');
  expect(rules).toContain('fill: #2f7d46');
});
