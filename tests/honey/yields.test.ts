import { expect, test } from 'vitest';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { ColonySeason, YardSeason } from '#core/honey/yields/colonySeasons.ts';
import { yieldRemarks, yieldSentence } from '#core/honey/yields/yieldWords.ts';
import { yieldTable } from '#core/honey/yields/yieldTable.ts';
import { day } from '#shared/days.ts';

const names = { yard: (id: YardId) => `yard ${id}`, order: ['1', '2', '3'] };
let made = 0;
function row(yard: number, season: number, lb: number, more: Partial<ColonySeason> = {}): ColonySeason {
  made += 1;
  return { colony: made as ColonyId, season, lb, days: [day(`${season}-08-01`)], yard: yard as YardId, queenAge: 'this year', line: null, source: 'nuc', ...more };
}

test('the years are evened out before yards are compared: one that was weighed in bad years only is not called poor', () => {
  const rows = [2021, 2022].flatMap((season) => Array.from({ length: 6 }, (_, at) => [row(1, season, (season === 2021 ? 80 : 20) + at), row(2, season, (season === 2021 ? 80 : 20) + at + (season === 2021 ? 0.5 : 0.2))]).flat())
    .concat(Array.from({ length: 6 }, (_, at) => row(3, 2022, 20 + at)));
  const table = yieldTable(rows, [], 'yard', names);
  const of = (key: string) => table.rows.find((one) => one.key === key);
  // As weighed yard 3 looks far worse, for it was harvested in the poor year alone.
  expect((of('1')?.mean ?? 0) - (of('3')?.mean ?? 0)).toBeGreaterThan(25);
  expect(Math.abs((of('1')?.estimate ?? 0) - (of('3')?.estimate ?? 99))).toBeLessThan(1);
  expect(table.test?.p).toBeGreaterThan(0.5);
  expect(yieldSentence(table, 'yard', 10, 'lb')).toContain('does not tell the yards apart');
  expect(yieldRemarks(table, 'yard').join(' ')).toContain('no sign that the yards differ');
});

test('a yard that yields more in every year is named, with what is sure about it', () => {
  const rows = [2021, 2022, 2023].flatMap((season) => [1, 2, 3].flatMap((yard) => Array.from({ length: 5 }, (_, at) => row(yard, season, 30 + 10 * (season - 2021) + at + (yard === 2 ? 25 : 0)))));
  const table = yieldTable(rows, [], 'yard', names);
  expect(table.rows[0]).toMatchObject({ key: '2', pooled: true, evened: true, n: 15, seasons: 3 });
  expect(table.rows[0]?.shrinkage).toBeLessThan(0.1);
  expect(yieldSentence(table, 'yard', 10, 'lb')).toMatch(/^The yards differ by more than chance makes likely\. The most came from yard 2: 6\d.lb a colony/);
});

test('too few, one group, nothing at all: words instead of a comparison', () => {
  expect(yieldSentence(yieldTable([], [], 'yard', names), 'yard', 10, 'lb')).toMatch(/^No honey was weighed colony by colony/);
  expect(yieldSentence(yieldTable([row(1, 2021, 40), row(2, 2021, 50)], [], 'yard', names), 'yard', 10, 'lb')).toMatch(/^Only 2.colony-seasons were weighed; from 10 on yards are compared/);
  const one = yieldTable(Array.from({ length: 12 }, (_, at) => row(1, 2021, 40 + at)), [], 'yard', names);
  expect(yieldSentence(one, 'yard', 10, 'kg')).toMatch(/^All that was weighed is of one yard: 2\d.kg a colony/);
  expect(one.rows[0]).toMatchObject({ pooled: false, evened: false });
});

test('a yard weighed together has a total and no interval', () => {
  const whole: YardSeason[] = [{ yard: 3 as YardId, season: 2021, lb: 300, days: [day('2021-08-01')], colonies: [1, 2, 3, 4, 5].map((id) => id as ColonyId) }];
  const table = yieldTable([row(1, 2021, 40), row(2, 2021, 50)], whole, 'yard', names);
  expect(table.rows.find(({ key }) => key === '3')).toMatchObject({ n: 0, mean: null, estimate: null, interval: null, together: { lb: 300, colonySeasons: 5 } });
});
