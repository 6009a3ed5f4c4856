import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { memoryStore } from '#core/book/memoryStore.ts';
import { importBytes } from '#core/desk/importFile.ts';
import { reportFromJournal } from '#core/desk/report.ts';
import { exported, imported } from '#tests/journal/trialBook.ts';

interface Expected {
  read: number;
  repeats: number;
  entered: number;
  living: number;
  to_sort_out: { line: number; why: string }[];
  season_yard: Record<string, number | string>[];
  colonies: { label: string; start: string; end: string | null; how: string; origin: string; end_yard: string; yield_lb: Record<string, number> }[];
}

const data = new URL('../reference/data/', import.meta.url);
const bytes = readFileSync(new URL('ossar-journal.csv', data));
const expected = JSON.parse(readFileSync(new URL('ossar-expected.json', data), 'utf8')) as Expected;

const report = async () => {
  const answer = await reportFromJournal({ bytes, fileName: 'ossar-journal.csv', today: day('2026-11-25') });
  if (!answer.ok) throw new Error(answer.sentence);
  const found = answer.value.report;
  return { ...found, import: found.import! };
};

test('the sample journal is read to the row', async () => {
  const { import: found, living } = await report();
  expect([found.read, found.entered, found.repeats, living]).toEqual([expected.read, expected.entered, expected.repeats, expected.living]);
  expect(found.toSortOut.map(({ line }) => line)).toEqual(expected.to_sort_out.map(({ line }) => line));
  expect(found.read).toBe(found.entered + found.repeats + found.toSortOut.length);
});

test('its ledger equals the expected one in every count of every season and yard', async () => {
  const { ledger } = await report();
  // The expected file has a row only for a yard that had colonies in that season.
  const ours = new Map(ledger.map((row) => [`${row.season} ${row.yard}`, {
    season: row.season, yard: row.yard, opening: row.opening, packages: row.packages, nucs: row.nucs, swarms: row.swarms, splits: row.splits, moved_in: row.movedIn, moved_out: row.movedOut,
    sold: row.sold, combined: row.combined, lost_summer: row.lostSummer, lost_winter: row.lostWinter, closing: row.closing, at_1_oct: row.aliveOn1October,
  }]));
  for (const row of expected.season_yard) {
    const key = `${row['season']} ${row['yard']}`;
    expect(ours.get(key), key).toEqual(row);
    ours.delete(key);
  }
  for (const [key, { season: _, yard: __, ...counts }] of ours) expect(Object.values(counts).every((count) => count === 0), key).toBe(true);
});

test('its colonies equal the expected ones, with their honey', async () => {
  const { colonies } = await report();
  const sorted = (list: readonly { label: string; start: string }[]) => list.toSorted((a, b) => (`${a.label} ${a.start}` < `${b.label} ${b.start}` ? -1 : 1));
  const ours = colonies.map(({ label, start, end, how, origin, yard, honeyLb }) => ({
    label, start, end, how, origin, end_yard: yard, yield_lb: Object.fromEntries(Object.entries(honeyLb).map(([season, lb]) => [season, Math.round(lb * 10_000) / 10_000])),
  }));
  expect(sorted(ours)).toEqual(sorted(expected.colonies));
});

test('a book that took it in gives it out and takes it in again unchanged', async () => {
  const store = memoryStore();
  await imported(store, bytes.toString('utf8'));
  const text = await exported(store);
  const other = memoryStore();
  expect((await imported(other, text)).toSortOut).toEqual([]);
  expect(await exported(other)).toBe(text);
  const again = await importBytes(store, bytes, 'ossar-journal.csv', 'month-first');
  expect([again.entries.length, again.repeats.length, again.toSortOut.length]).toEqual([0, expected.entered + expected.repeats, expected.to_sort_out.length]);
});
