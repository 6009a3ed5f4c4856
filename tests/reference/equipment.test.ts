import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { defaultBorders } from '#shared/seasons.ts';
import { billOfMaterials, neededParts } from '#core/order/equipment.ts';
import { supersFromYield, supersWanted, winteredCrop } from '#core/order/supersFromYield.ts';
import { houseRuleDefinitions } from '#core/rules/houseRules.ts';
import { replacedEachYear } from '#core/stock/comb.ts';
import { queenColour } from '#core/lineage/queenColour.ts';
import { hived, recorded } from '../losses/recorded.ts';

const need = (item: string, frames: 8 | 10, spare: number) => {
  const part = billOfMaterials(new Map(), frames).find((one) => one.item === item);
  return part === undefined ? null : neededParts(part, 25, spare);
};
const standard = (key: string) => houseRuleDefinitions.find((rule) => rule.key === key);

describe('equipment of 25 colonies', () => {
  // Single parts: parts list of a beekeepers' club, a2b2club.org, the A Bee Cs of woodenware (read). Two deeps of ten
  // frames: a page on hive parts, northeast (read-weak). Three mediums and 10 % spare: from memory. Products: arithmetic.
  test('double deep, three mediums, ten frames', () => {
    expect(['deep box', 'deep frame', 'medium super', 'medium frame'].map((item) => need(item, 10, 0))).toEqual([50, 500, 75, 750]);
    expect(['bottom board', 'entrance reducer', 'inner cover', 'outer cover', 'stand', 'feeder', 'queen excluder'].map((item) => need(item, 10, 0))).toEqual([25, 25, 25, 25, 25, 25, 25]);
  });
  test('10 % to spare, rounded up; frames take none of their own', () => {
    expect(['deep box', 'medium super', 'bottom board', 'deep frame'].map((item) => need(item, 10, 0.1))).toEqual([55, 83, 28, 500]);
    expect(standard('order.spare')).toMatchObject({ default: 0.1, confidence: 'from memory' });
  });
  test('eight frames', () => expect(['deep box', 'deep frame', 'medium super', 'medium frame'].map((item) => need(item, 8, 0))).toEqual([50, 400, 75, 600]));
});

describe('supers from the crop', () => {
  // Expected pounds by what a super holds, times 1.5 for nectar that ripens: practice, from memory. 38 lb a ten-frame
  // medium is ten frames at 3.5 to 4 lb, biologyinsights.com on honey in a medium frame (read-weak); the rest is arithmetic.
  test('80 lb, 38 lb a super and 1.5 times the room are 3.16, so four supers', () => {
    const { exact, whole } = supersFromYield(80, 38, 1.5);
    expect(exact).toBeCloseTo(3.16, 2);
    expect(whole).toBe(4);
    expect([standard('order.superNet10'), standard('order.superNet8'), standard('order.superRipening')]).toMatchObject([{ default: 38, confidence: 'arithmetic' }, { default: 30, confidence: 'arithmetic' }, { default: 1.5, confidence: 'from memory' }]);
    // Ten and eight frames at 3.5 to 4 lb hold the two figures.
    for (const [frames, net] of [[10, 38], [8, 30]] as const) expect(net >= frames * 3.5 && net <= frames * 4).toBe(true);
  });
  test('by the own harvests where they are enough, by the house rule where they are not or where it was set', () => {
    const crop = (pounds: number, season = pounds) => ({ season: season * 453.59237, largest: pounds * 453.59237, colonies: 40, seasons: 3 });
    expect(supersWanted(new Map(), 10, crop(80))).toMatchObject({ each: 4, sentence: expect.stringContaining('gave 80 lb each (40 in 3 seasons)') });
    expect(supersWanted(new Map(), 10, crop(50, 94))).toMatchObject({ each: 2, sentence: expect.stringContaining('50 lb each of 94 lb in a season') });
    expect([80, 81].map((pounds) => supersWanted(new Map(), 8, crop(pounds)).each)).toEqual([4, 5]);
    expect(supersWanted(new Map(), 10, crop(0)).each).toBe(1);
    expect(supersWanted(new Map(), 10, null)).toMatchObject({ each: 3, sentence: expect.stringContaining('too few harvests') });
    expect(supersWanted(new Map([['order.mediums', 2]]), 10, crop(80))).toMatchObject({ each: 2, sentence: expect.stringMatching(/your house rule.*so 4 supers a hive would do/) });
  });
  test('the crop is that of wintered colonies where honey was weighed; the season that is not over is left out', () => {
    const harvest = (date: string, colony: string, pounds: number): Cells => ({ date, entry: 'harvest', yard: 'QY', colony, gross: String(pounds), tare: '0', unit: 'lb' });
    const rows = [
      ...Array.from({ length: 8 }, (_, n) => hived('2023-05-01', `W${n}`)),
      // Taken twice a season, 60 and 30 lb; one colony gave nothing; one was hived that year.
      ...[2024, 2025, 2026].flatMap((year) => Array.from({ length: 7 }, (_, n) => [harvest(`${year}-07-05`, `W${n}`, 60), harvest(`${year}-09-05`, `W${n}`, 30)]).flat()),
      hived('2024-04-20', 'N'), harvest('2024-09-05', 'N', 500),
    ].toSorted((a, b) => ((a.date ?? '') < (b.date ?? '') ? -1 : 1)).filter(({ date }) => (date ?? '') < '2026-08-01');
    const crop = winteredCrop(recorded(rows.filter(({ colony, entry }) => colony !== 'N' || entry === 'install')).states, defaultBorders, day('2026-08-01'));
    // Two seasons of eight, and in the second the newcomer had wintered too and gave nothing.
    expect(crop).toMatchObject({ colonies: 17, seasons: 2 });
    expect((crop?.largest ?? 0) / 453.59237).toBeCloseTo((14 * 60) / 17, 6);
    expect((crop?.season ?? 0) / 453.59237).toBeCloseTo((14 * 90) / 17, 6);
    expect(winteredCrop([], defaultBorders, day('2026-08-01'))).toBeNull();
  });
});

test('comb rotation: 500 deep frames in five years, and in three', () => {
  // Three to five years: hbka.org.uk, the merits of comb change (read-weak); the yearly share is arithmetic.
  expect([replacedEachYear(500, 5), replacedEachYear(500, 3)]).toEqual([100, 167]);
});

test('the international marking code', () => {
  // BEE-L, July 2000; launcestonbeekeepers.org.uk, queen bee marking (read).
  expect([2023, 2024, 2025, 2026, 2027].map(queenColour)).toEqual(['red', 'green', 'blue', 'white', 'yellow']);
});
