import { afterEach, beforeEach, expect, test } from 'vitest';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import type { Cells } from '#shared/entryForms.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let trial: ReturnType<typeof trialDesk>;
beforeEach(async () => {
  scratch = scratchFolder();
  trial = trialDesk(scratch.folder);
  await ask('book.create', { name: 'Ossar Valley' });
  await ask('yard.keep', { code: 'QY', name: 'Quarry', room: 30, minutes: 18 });
});
afterEach(async () => {
  await trial.desk.close();
  scratch.remove();
});

const ask = <Name extends OperationName>(name: Name, input: InputOf<Name>) => trial.askHeld(name, input);
const row = (date: string, entry: NonNullable<Cells['entry']>, colony: string, more: Cells = {}): Cells => ({ date, entry, yard: 'QY', colony, ...more });

test('who wants a new queen, on any day of the year, with every reason and the records behind it', async () => {
  await ask('journal.enter', {
    rows: [
      row('2024-05-10', 'install', 'A', { origin: 'nuc', queen_year: '2024' }), row('2026-05-10', 'install', 'B', { origin: 'nuc', queen_year: '2026' }),
      row('2026-08-01', 'inspection', 'A', { temper: '5' }), row('2026-08-10', 'inspection', 'A', { temper: '4' }),
    ],
  });
  const found = await ask('queens.candidates', {});
  expect(found).toMatchObject({ living: 2, yards: [{ code: 'QY', standing: 2, colonies: [{ label: 'A', queen: { year: 2024 }, reasons: [{ detail: 'temper 5, 4' }, { detail: 'queen of 2024' }] }] }] });
  expect(found.yards[0]?.colonies[0]?.reasons[0]?.records).toMatchObject([{ day: '2026-08-01' }, { day: '2026-08-10' }]);
  expect(found.sources.map(({ key }) => key)).toContain('needs.requeen.age');
  expect((await ask('queens.candidates', { asOf: '2025-08-05' })).yards).toEqual([]);
});

test('the days of a graft follow the house rules, and say on which they rest', async () => {
  const { steps } = await ask('queens.calendar', { start: 'graft', on: '2026-05-04' });
  expect(steps.map(({ step, from, until }) => [step, from, until])).toEqual([
    ['cell sealed', '2026-05-08', '2026-05-08'], ['emerges', '2026-05-16', '2026-05-16'], ['can mate', '2026-05-21', '2026-05-22'],
    ['first eggs', '2026-05-23', '2026-06-04'], ['likely unmated', '2026-06-13', '2026-06-13'],
  ]);
  expect(steps[1]?.sources.map(({ key }) => key)).toEqual(['queens.larva', 'queens.emerges']);
  await ask('rules.set', { key: 'queens.emerges', value: 15 });
  expect((await ask('queens.calendar', { start: 'graft', on: '2026-05-04' })).steps[1]?.from).toBe('2026-05-15');
});

/** Three mothers with two splits each that raise their own queens: the first family gives 60 pounds, the second 50, the third 20. */
async function families(): Promise<void> {
  const pounds = { A: [62, 58, 60], B: [51, 49, 50], C: [20, 22, 18] };
  await ask('journal.enter', {
    rows: Object.entries(pounds).flatMap(([mother, crop]) => [
      row('2024-05-10', 'install', mother, { origin: 'nuc', queen_year: '2024' }),
      ...[1, 2].map((at) => row('2025-05-20', 'split', mother, { new_colony: `${mother}${at}`, queen: 'stays', new_queen: 'walk-away' })),
      ...crop.map((lb, at) => row('2026-07-20', 'harvest', at === 0 ? mother : `${mother}${at}`, { gross: String(lb), tare: '0', unit: 'lb' })),
    ]),
  });
}

test('mothers are ranked by themselves and their daughters; weights are kept and can be put back', async () => {
  await families();
  const { ranked, traits } = await ask('queens.breeders', {});
  expect(ranked.map(({ colony, daughters, apart }) => [colony.label, daughters, apart])).toEqual([['A', 2, false], ['B', 2, true], ['C', 2, true]]);
  expect(ranked[0]?.traits.honey).toMatchObject({ n: 3 });
  expect(ranked[0]?.traits.temper).toBeNull();
  expect(traits).toMatchObject({ honey: { says: '', compared: 9 }, temper: { says: 'Nothing of it is in the record.' }, winter: { says: 'All were alike.' } });
  const { before } = await ask('queens.weigh', { winter: 1, honey: 0, mites: 1, temper: 1, swarming: 1 });
  expect(before.honey).toBe(1);
  expect((await ask('queens.breeders', {})).ranked.map(({ sum }) => sum)).toEqual([]);
  await ask('queens.weigh', before);
  expect((await ask('queens.breeders', {})).ranked).toEqual(ranked);
  expect((await ask('queens.breeders', { asOf: '2026-07-19' })).ranked).toEqual([]);
  await ask('journal.enter', { rows: [row('2026-08-20', 'requeen', 'A', { queen_year: '2026' })] });
  const left = (await ask('queens.breeders', {})).ranked;
  expect(left.map(({ colony }) => colony.label)).toEqual(['B', 'C']);
  expect(left[0]?.traits.honey).toEqual(ranked[1]?.traits.honey);
  expect(await trial.desk.call('queens.weigh', { ...before, honey: -1 })).toMatchObject({ ok: false, code: 'bad-input' });
});
