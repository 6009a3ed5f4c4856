import { expect, test } from 'vitest';
import type { ColonyId, YardId } from '#shared/brands.ts';
import type { ColonySeason, YardSeason } from '#core/honey/yields/colonySeasons.ts';
import { hourSentence, printedSentence, seasonSentence, yieldRemarks, yieldSentence } from '#core/honey/yields/yieldWords.ts';
import { yieldTable } from '#core/honey/yields/yieldTable.ts';
import type { SeasonCrop } from '#shared/contract/yields.ts';
import { nassOf } from '#core/honey/yields/nassHoney.ts';
import { day } from '#shared/days.ts';
import golden from '#tests/reference/data/golden.json' with { type: 'json' };

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
  expect(yieldRemarks(table, 'yard', 0).join(' ')).toContain('no sign that the yards differ');
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
  expect(yieldRemarks(table, 'yard', 5)).toContain('Yards weighed together have a mean and no interval, as nobody knows how their colonies differed; they are left out of the comparison.');
  expect(yieldRemarks(yieldTable([row(1, 2021, 40)], whole, 'season', names), 'season', 5)).toEqual(['5\u00a0colony-seasons of yards weighed together are not in these figures; by yard and season by season they are.']);
  expect(table.rows.find(({ key }) => key === '3')).toMatchObject({ n: 0, mean: null, estimate: null, interval: null, together: { lb: 300, colonySeasons: 5 } });
});

// The reference values of R 4.2.2 for these yields (one season, so nothing is evened out), through the whole table.
test.each(['yield/dyestuff', 'yield/unbalanced', 'yield/no-between'])('%s: the table’s figures are the reference library’s', (id) => {
  const found = golden.cases.find((one) => one.id === id);
  const { input, expected } = found as unknown as { input: { yield: number[]; group: (string | number)[] }; expected: Golden };
  const rows = input.yield.map((lb, at) => row(1, 2021, lb, { line: String(input.group[at]) }));
  const table = yieldTable(rows, [], 'line', names);
  expect(table.all.mean).toBeCloseTo(expected.overall.mean, 9);
  expect(table.test?.F).toBeCloseTo(expected.anova.F, 9);
  expect(table.test?.p).toBeCloseTo(expected.anova.p, 9);
  const eb = expected.empiricalBayes;
  expect(eb.groups.length).toBeGreaterThan(2);
  for (const [at, key] of eb.groups.entries()) {
    const own = table.rows.find((one) => one.key === String(key));
    expect(own?.n).toBe(eb.n[at]);
    expect(own?.mean).toBeCloseTo(eb.mean[at]!, 9);
    expect(own?.estimate).toBeCloseTo(eb.pooled[at]!, 9);
    expect(own?.shrinkage).toBeCloseTo(eb.shrinkage[at]!, 9);
    expect(own?.interval?.[0]).toBeCloseTo(Math.max(0, eb.lower[at]!), 6);
    expect(own?.interval?.[1]).toBeCloseTo(eb.upper[at]!, 6);
  }
});

interface Golden {
  readonly overall: { readonly mean: number };
  readonly anova: { readonly F: number; readonly p: number };
  readonly empiricalBayes: Readonly<Record<'n' | 'mean' | 'pooled' | 'shrinkage' | 'lower' | 'upper', number[]>> & { readonly groups: (string | number)[] };
}

test('what is not known is not named as the best, and is said to be left out of that', () => {
  const rows = [2021, 2022].flatMap((season) => ['', 'Tarn', 'Ossar'].flatMap((line, group) => Array.from({ length: 6 }, (_, at) => row(1, season, [90, 60, 30][group]! + at, { line: line === '' ? null : line }))));
  expect(yieldSentence(yieldTable(rows, [], 'line', names), 'line', 10, 'lb')).toMatch(/Of those that are known the most came from Tarn: 6\d/);
});

const crop = (season: number, more: Partial<SeasonCrop> = {}): SeasonCrop => ({ season, lb: 1000, colonies: 20, perColony: 50, visits: 40, written: 0, hours: 0, perHour: null, nass: nassOf(season), ...more });

test('honey for each hour: a figure with its range, or words where few hours are known', () => {
  const said = (more: Partial<SeasonCrop>, unit: 'lb' | 'kg' = 'lb') => hourSentence([crop(2022, more)], unit).replaceAll('\u00a0', ' ');
  expect(said({})).toBe('No hours of work are written down for 2022, so nothing can be said of honey for each hour.');
  expect(said({ written: 3, hours: 6 })).toBe('For 2022 hours are written down for 3 of 40 visits, too few to say how much honey came for each hour.');
  expect(said({ written: 30, hours: 60, perHour: { lb: 12.5, range: [11, 14.5] } })).toBe('In 2022 each hour of work brought 12.5 lb of honey (11 lb to 14.5 lb): hours are written down for 30 of 40 visits, and the others are taken to have been as long as the rest in their yard.');
  expect(said({ written: 40, hours: 80, perHour: { lb: 12.5, range: [12.5, 12.5] } }, 'kg')).toBe('In 2022 each of 80 hours of work brought 5.7 kg of honey; hours are written down for 40 of 40 visits.');
  expect(hourSentence([], 'lb')).toBe('');
});

test('the printed figure stands with its source, and years without one are named; no harvest is said in words', () => {
  expect(printedSentence([crop(2021), crop(2022), crop(2023)])).toBe('2021: USDA NASS, Honey, as reported by bakingbusiness.com, article 58699 (revised). 2022: USDA NASS, Honey, as reported by bakingbusiness.com, article 58699. For 2023 no printed figure is held here.');
  expect(seasonSentence([crop(2022)], 'lb').replaceAll('\u00a0', ' ')).toBe('In 2022, 20 colonies gave 1,000 lb: 50 lb a colony harvested. In 2022, the last year with a printed figure here, yours gave 50 lb and the country’s 47 lb.');
  expect(seasonSentence([], 'lb')).toBe('No harvest is in the book yet.');
});
