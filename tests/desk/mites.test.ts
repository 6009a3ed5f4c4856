import { expect, test } from 'vitest';
import type { InputOf } from '#shared/contract/contract.ts';
import type { Cells } from '#shared/entryForms.ts';
import { freshDesk } from './freshDesk.ts';

const trial = freshDesk();
const { ask } = trial;

const row = (date: string, entry: NonNullable<Cells['entry']>, more: Cells): Cells => ({ date, entry, ...more });
const wash = (date: string, colony: string, mites: number): Cells => row(date, 'mites', { yard: 'QY', colony, mites: String(mites), bees: '300' });
const names = ['A', 'B', 'C', 'D', 'E'];

/** Five colonies: four counted in August, treated, two counted after; and one yard where nobody counted. */
async function season(): Promise<void> {
  await ask('book.create', { name: 'Ossar Valley' });
  for (const [code, name] of [['QY', 'Quarry'], ['LB', 'Larch Bend']] as const) await ask('yard.keep', { code, name, room: 20, minutes: 18 });
  await ask('journal.enter', {
    rows: [
      ...names.map((colony) => row('2026-05-10', 'install', { yard: 'QY', colony, origin: 'nuc' })),
      row('2026-05-10', 'install', { yard: 'LB', colony: 'L', origin: 'nuc' }),
      row('2026-06-12', 'supers on', { yard: 'QY', colony: 'A', box: 'medium', count: '2' }),
      ...['A', 'B', 'C', 'D'].map((colony, at) => wash('2026-08-08', colony, [12, 15, 9, 14][at] ?? 0)),
      row('2026-08-15', 'treatment', { yard: 'QY', active_ingredient: 'formic acid', end_date: '2026-08-29', note: 'lot 12, by the helper' }),
      wash('2026-09-12', 'A', 3), wash('2026-09-12', 'B', 2),
      row('2026-10-01', 'supers off', { yard: 'QY', colony: 'A', box: 'medium', count: '2' }),
    ],
  });
}
const yardOf = async (code: string, asOf?: string) => (await ask('mites.page', asOf === undefined ? {} : { asOf })).yards.find((yard) => yard.code === code)!;

test('a yard before its treatment, after it, and once it was counted again', async () => {
  await season();
  expect(await yardOf('QY', '2026-08-10')).toMatchObject({ speaks: 'now', washed: 4, living: 5, verdict: 'above', rate: { per100: expect.closeTo(4.1667, 3) }, more: 0, treat: 3, phase: 'decrease', treatedSince: null });
  expect(await yardOf('QY', '2026-08-20')).toMatchObject({ speaks: 'treated', more: 5, projection: null, treatedSince: { ingredient: 'formic acid', from: '2026-08-15' } });
  expect(await yardOf('QY', '2026-09-20')).toMatchObject({ speaks: 'now', washed: 2, few: true, verdict: 'open', above: expect.any(Number) });
  expect(await yardOf('QY')).toMatchObject({ speaks: 'old', round: ['2026-09-12', '2026-09-12'] });
  expect(await yardOf('LB')).toMatchObject({ speaks: 'never', rate: null, above: null, verdict: 'none', more: 1 });
});

test('the list of needs and this page take a count for as long: what is to be counted anew is not to be treated by it', async () => {
  await ask('book.create', { name: 'Ossar Valley' });
  await ask('yard.keep', { code: 'QY', name: 'Quarry', room: 20, minutes: 18 });
  await ask('journal.enter', { rows: [row('2026-05-10', 'install', { yard: 'QY', colony: 'A', origin: 'nuc' }), wash('2026-06-20', 'A', 12)] });
  const of = async (asOf: string) => [asOf, (await yardOf('QY', asOf)).speaks, (await ask('needs.list', { yard: null, asOf } as InputOf<'needs.list'>)).lines.flatMap(({ rule }) => (rule === 'mitesOver' || rule === 'mitesCount' ? [rule] : []))];
  expect([await of('2026-06-21'), await of('2026-07-20'), await of('2026-07-21'), await of('2026-08-19')]).toEqual([
    ['2026-06-21', 'now', ['mitesOver']], ['2026-07-20', 'now', ['mitesOver']], ['2026-07-21', 'old', ['mitesCount']], ['2026-08-19', 'old', ['mitesCount']],
  ]);
  await ask('rules.set', { key: 'mites.holds', value: 60 });
  expect([await of('2026-07-21'), await of('2026-08-19'), await of('2026-08-20')]).toEqual([['2026-07-21', 'now', ['mitesOver']], ['2026-08-19', 'now', ['mitesOver']], ['2026-08-20', 'old', ['mitesCount']]]);
});

test('a yard opened: last counts, never counted, the season with its treatment; an unknown yard is a fault', async () => {
  await season();
  const { id } = await yardOf('QY');
  const found = await ask('mites.yard', { id });
  expect(found.colonies.filter(({ inRound }) => inRound).map(({ label, mites }) => [label, mites])).toEqual([['A', 3], ['B', 2]]);
  expect(found.colonies.filter(({ treatedSince }) => treatedSince !== null).map(({ label }) => label)).toEqual(['D', 'C']);
  expect(found.uncounted.map(({ label }) => label)).toEqual(['E']);
  expect(found).toMatchObject({ season: { name: '2026–27', from: '2026-04-01' }, treatments: [{ ingredient: 'formic acid', colonies: 5, whole: true }] });
  expect(found.counts).toHaveLength(6);
  expect(found.thresholds.map(({ treat }) => treat)).toEqual([3, 2, 3]);
  expect((await ask('mites.yard', { id, asOf: '2026-08-10' })).counts).toHaveLength(4);
  expect(await trial.desk.call('mites.yard', { id: 99 })).toMatchObject({ ok: false, code: 'unknown' });
});

test('what fits goes by the record, and by what the person says instead', async () => {
  await season();
  const { id } = await yardOf('QY');
  const asked = (more: Partial<InputOf<'mites.fits'>> = {}) => ask('mites.fits', { yard: id, high: null, supers: null, brood: null, asOf: '2026-08-10', ...more });
  const before = await asked();
  expect(before.setting).toMatchObject({ high: 81, withSupers: 1, brood: 'not known', lastUsed: null, nextFlow: '2026-08-20' });
  const verdict = async (form: string, more: Partial<InputOf<'mites.fits'>> = {}) => (await asked(more)).fits.find((fit) => fit.form === form)?.fits;
  expect([await verdict('formic'), await verdict('formic', { high: 95 }), await verdict('amitraz', { supers: 'off', asOf: '2026-09-20' }), await verdict('amitraz', { supers: 'on', asOf: '2026-09-20' }), await verdict('oxalicDribble', { high: 45, brood: 'no', supers: 'off' })]).toEqual(['fits', 'does not fit', 'fits', 'does not fit', 'fits']);
  expect((await asked({ asOf: '2026-09-20' })).setting.lastUsed).toEqual({ ingredient: 'formic acid', day: '2026-08-15' });
  await ask('rules.set', { key: 'treat.formic.high', value: 75 });
  expect(await verdict('formic')).toBe('does not fit');
  expect(before.cautions.join(' ')).toContain('The label is the law');
});

test('before and after, and the season as an inspector asks for it; a struck treatment is in neither', async () => {
  await season();
  const { rows, ingredients } = await ask('mites.results', {});
  expect(rows).toMatchObject([{ yard: 'QY', ingredient: 'formic acid', treated: 5, withSupers: 1, during: false, notes: ['lot 12, by the helper'], result: { colonies: 2, basis: 'colonies', before: 4.5, few: true } }]);
  expect(rows[0]?.result.fall).toBeCloseTo(1 - 5 / 27, 9);
  expect(ingredients).toMatchObject([{ ingredient: 'formic acid', treatments: 1, judged: 1, seasons: [{ season: 2026 }] }]);
  const log = await ask('mites.log', {});
  expect(log).toMatchObject({ season: 2026, seasonName: '2026–27', counted: [{ yard: 'QY', colonies: 4, counts: 6 }] });
  expect(log.rows).toEqual(rows);
  expect((await ask('mites.log', { season: 2025 })).rows).toEqual([]);
  expect((await ask('mites.log', { asOf: '2026-08-14' })).rows).toEqual([]);
  await ask('journal.strike', { entry: rows[0]!.entries[0]!, reason: 'written twice' });
  expect((await ask('mites.log', {})).rows).toEqual([]);
  expect(await yardOf('QY', '2026-09-20')).toMatchObject({ speaks: 'now', washed: 2, treatedSince: null });
});
