import { afterEach, beforeEach, expect, test } from 'vitest';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
beforeEach(() => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
});
afterEach(async () => {
  await at.desk.close();
  scratch.remove();
});
const strip = (id: number) => at.askHeld('colony.strip', { id });

test('the strip holds what was written down of one colony, and the treatments of its yard while it stood there', async () => {
  await at.ask('book.create', { name: 'Ossar Valley' });
  await at.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
  await at.ask('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
  await at.ask('journal.enter', {
    rows: [
      { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'A', origin: 'package', queen_year: '2024' },
      { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'B', origin: 'package' },
      { date: '2025-05-02', entry: 'inspection', colony: 'A', frames_bees: '6', frames_brood: '2.5' },
      { date: '2025-05-03', entry: 'inspection', colony: 'B', frames_bees: '3' },
      { date: '2025-05-20', entry: 'supers on', colony: 'A', box: 'medium', count: '2' },
      { date: '2025-07-20', entry: 'harvest', colony: 'A', gross: '40', tare: '15', unit: 'lb' },
      { date: '2025-07-20', entry: 'harvest', colony: 'A', gross: '30', tare: '10', unit: 'lb' },
      { date: '2025-07-20', entry: 'harvest', yard: 'LB', gross: '300', tare: '100', unit: 'lb' },
      { date: '2025-07-20', entry: 'supers off', colony: 'A', box: 'medium', count: '2' },
      { date: '2025-07-28', entry: 'mites', colony: 'A', mites: '0', bees: '300' },
      { date: '2025-08-01', entry: 'treatment', yard: 'LB', active_ingredient: 'thymol', end_date: '2025-08-29' },
      { date: '2025-08-02', entry: 'treatment', yard: 'NS', active_ingredient: 'oxalic acid' },
      { date: '2025-08-20', entry: 'queen', colony: 'A', what: 'seen' },
      { date: '2025-08-20', entry: 'requeen', colony: 'A', queen_year: '2025', supplier: 'Sandel Road Bees' },
      { date: '2025-09-01', entry: 'move', colony: 'A', to_yard: 'NS' },
      { date: '2025-09-05', entry: 'feed', colony: 'A', feed: 'syrup 2:1', amount: '2', unit: 'gal' },
      { date: '2025-10-04', entry: 'treatment', colony: 'A', active_ingredient: 'formic acid' },
      { date: '2025-10-05', entry: 'treatment', yard: 'NS', active_ingredient: 'oxalic acid' },
      { date: '2025-10-05', entry: 'treatment', yard: 'LB', active_ingredient: 'oxalic acid' },
      { date: '2026-04-01', entry: 'loss', colony: 'A' },
      { date: '2026-04-01', entry: 'treatment', yard: 'NS', active_ingredient: 'hop acids' },
    ],
  });
  const found = await strip(1);
  expect(found).toMatchObject({ start: '2025-04-24', until: '2026-04-01', ended: true });
  expect(found.seasons).toEqual([
    { season: 2025, from: '2025-04-01', winter: '2025-10-01', until: '2026-04-01' },
    { season: 2026, from: '2026-04-01', winter: '2026-10-01', until: '2027-04-01' },
  ]);
  expect(found.looks).toEqual([{ day: '2025-05-02', bees: 6, brood: 2.5, stores: null }]);
  expect(found.supers).toEqual([{ day: '2025-05-20', on: 2 }, { day: '2025-07-20', on: 0 }]);
  expect(found.honey).toEqual([{ day: '2025-07-20', lb: 45 }]);
  expect(found.feeds).toEqual([{ day: '2025-09-05', sentence: 'Fed 2 gal of syrup 2:1.' }]);
  expect(found.treatments.map(({ day, until }) => [day, until])).toEqual([['2025-08-01', '2025-08-29'], ['2025-10-04', null], ['2025-10-05', null]]);
  expect(found.queens.map(({ day, queen }) => [day, queen?.year])).toEqual([['2025-04-24', 2024], ['2025-08-20', 2025]]);
  // Clopper-Pearson for 0 of 300: the upper limit is 1 - 0.025^(1/300).
  expect(found.mites[0]).toMatchObject({ per100: 0, range: [0, expect.closeTo(100 * (1 - 0.025 ** (1 / 300)), 6) as number] });
  const { entries } = await at.ask('colony.story', { id: 1 });
  await at.ask('journal.strike', { entry: entries.find(({ kind }) => kind === 'feed')?.id ?? 0, reason: 'of another colony' });
  expect((await strip(1)).feeds).toEqual([]);
  expect((await strip(2)).seasons.map(({ season }) => season)).toEqual([2025, 2026]);
  expect(await at.answer('colony.strip', { id: 9 })).toMatchObject({ ok: false, code: 'unknown' });
});
