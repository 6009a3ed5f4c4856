import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
beforeEach(async () => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
  await at.ask('book.create', { name: 'Ossar Valley' });
  await at.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: 12, minutes: 35 });
  await at.ask('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
  await at.ask('journal.enter', {
    rows: ['LB-1', 'LB-2', 'LB-10', 'LB-3'].map((colony) => ({ date: '2026-04-24', entry: 'install', yard: 'LB', colony, origin: 'package', queen_year: '2026' })),
  });
});
afterEach(async () => {
  await at.desk.close();
  scratch.remove();
});

const ask = <Name extends OperationName>(name: Name, input: InputOf<Name>) => at.askHeld(name, input);
const page = (id = 1) => ask('yard.page', { id });
const labels = async () => (await page()).colonies.map(({ label }) => label);
const sheet = async (day = '2026-11-20') => (await ask('round.sheet', { yard: 1, day })).rows.map(({ label }) => label);
const idsOf = async (wanted: readonly string[]) => {
  const { rows } = await ask('colonies.list', { which: 'living' });
  return wanted.map((label) => rows.find((row) => row.label === label)?.id ?? 0);
};
const stand = async (...wanted: string[]) => ask('yard.stand', { yard: 1, colonies: await idsOf(wanted) });

test('colonies stand by label until they are moved, and the round and the page then follow the yard', async () => {
  expect(await labels()).toEqual(['LB-1', 'LB-2', 'LB-3', 'LB-10']);
  await stand('LB-10', 'LB-2', 'LB-1', 'LB-3');
  expect([await labels(), await sheet(), await sheet('2026-05-01')]).toEqual(Array.from({ length: 3 }, () => ['LB-10', 'LB-2', 'LB-1', 'LB-3']));
  // The list of colonies keeps its own order, and a colony that comes new stands last.
  expect((await ask('colonies.list', { which: 'living' })).rows.map(({ label }) => label)).toEqual(['LB-1', 'LB-2', 'LB-3', 'LB-10']);
  await ask('journal.enter', { rows: [{ date: '2026-06-01', entry: 'split', colony: 'LB-10', new_colony: 'LB-0' }] });
  expect(await labels()).toEqual(['LB-10', 'LB-2', 'LB-1', 'LB-3', 'LB-0']);
  await ask('journal.undo', {});
  const path = (await ask('book.status', {})).book?.path ?? '';
  await ask('book.close', {});
  await ask('book.open', { path });
  expect(await sheet()).toEqual(['LB-10', 'LB-2', 'LB-1', 'LB-3']);
  expect(await ask('book.check', {})).toMatchObject({ sound: true, refoldEqual: true });
});

test('a colony that comes back finds its place', async () => {
  await stand('LB-10', 'LB-2', 'LB-1', 'LB-3');
  await ask('journal.enter', { rows: [{ date: '2026-07-01', entry: 'move', colony: 'LB-2', to_yard: 'NS' }] });
  expect((await page(2)).colonies.map(({ label }) => label)).toEqual(['LB-2']);
  await stand('LB-3', 'LB-10', 'LB-1');
  await ask('journal.enter', { rows: [{ date: '2026-08-01', entry: 'move', colony: 'LB-2', to_yard: 'LB' }] });
  expect(await labels()).toEqual(['LB-3', 'LB-10', 'LB-2', 'LB-1']);
});

test('an order that is not of the colonies there changes nothing', async () => {
  const [one = 0, two = 0, ten = 0, three = 0] = await idsOf(['LB-1', 'LB-2', 'LB-10', 'LB-3']);
  for (const colonies of [[one, two, ten], [one, two, ten, ten], [one, two, ten, 99], [one, two, ten, three, 99]]) {
    expect(await at.answer('yard.stand', { yard: 1, colonies })).toMatchObject({ ok: false, code: 'moved-on', mend: expect.stringContaining('once more') as string });
  }
  expect(await at.answer('yard.stand', { yard: 9, colonies: [one] })).toMatchObject({ ok: false, code: 'unknown' });
  expect(await at.answer('yard.page', { id: 9 })).toMatchObject({ ok: false, code: 'unknown' });
  expect(await labels()).toEqual(['LB-1', 'LB-2', 'LB-3', 'LB-10']);
});

test('what is written down of a yard is kept beside it, and an emptied field is empty', async () => {
  expect((await page()).details).toEqual({ access: null, notes: null, registration: null, renewal: null });
  const details = { access: 'Gate code at the farm', notes: 'Bear fence', registration: 'OV-117', renewal: '2027-03-31' as const };
  await ask('yard.details', { id: 1, ...details });
  await ask('yard.keep', { id: 1, code: 'LB', name: 'Larch Bend', room: 14, minutes: 35 });
  expect(await page()).toMatchObject({ details, yard: { room: 14 } });
  expect((await ask('yards.list', {})).yards.map(({ code, renewal }) => [code, renewal])).toEqual([['LB', '2027-03-31'], ['NS', null]]);
  await ask('yard.details', { id: 1, ...details, access: '  ', renewal: null });
  expect((await page()).details).toEqual({ ...details, access: null, renewal: null });
  expect(await at.answer('yard.details', { id: 9, ...details })).toMatchObject({ ok: false, code: 'unknown' });
  expect(await at.answer('yard.details', { id: 1, ...details, renewal: '2027-02-30' })).toMatchObject({ ok: false, code: 'bad-input' });
});

test('visits are the days of entries there, by day and what was said, without struck ones', async () => {
  await ask('journal.enter', {
    rows: [
      { date: '2026-05-10', entry: 'feed', colony: 'LB-1', feed: 'fondant' },
      { date: '2026-05-10', entry: 'feed', colony: 'LB-2', feed: 'fondant' },
      { date: '2026-05-10', entry: 'inspection', colony: 'LB-3', frames_bees: '8' },
      { date: '2026-06-02', entry: 'move', colony: 'LB-3', to_yard: 'NS' },
      { date: '2026-06-09', entry: 'inspection', colony: 'LB-3', frames_bees: '9' },
      { date: '2026-07-01', entry: 'treatment', yard: 'LB', active_ingredient: 'thymol' },
      { date: '2026-07-03', entry: 'stock', item: 'Deep boxes', quantity: '4', from: 'shed', to: 'LB' },
      { date: '2026-07-04', entry: 'purchase', item: 'Deep boxes', quantity: '2', to: 'shed' },
    ],
  });
  const { visits, equipment } = await page();
  expect(visits.map(({ day }) => day)).toEqual(['2026-07-03', '2026-07-01', '2026-06-02', '2026-05-10', '2026-04-24']);
  expect(visits[3]).toMatchObject({
    kinds: [{ kind: 'feed', entries: 2 }, { kind: 'inspection', entries: 1 }],
    acts: [{ sentence: 'Fed fondant.', colonies: [{ label: 'LB-1' }, { label: 'LB-2' }] }, { sentence: 'Looked at: 8 frames of bees.', colonies: [{ label: 'LB-3' }] }],
  });
  // The three colonies there stand on one box each, and four were brought.
  expect(equipment).toEqual([{ item: 'deep box', count: 7 }]);
  expect((await page(2)).visits.map(({ day }) => day)).toEqual(['2026-06-09', '2026-06-02']);
  expect((await ask('yards.list', {})).yards.map(({ code, lastVisit, living }) => [code, lastVisit, living])).toEqual([['LB', '2026-07-03', 3], ['NS', '2026-06-09', 1]]);
  await ask('journal.undo', {});
  expect((await page()).visits.map(({ day }) => day)).toEqual(['2026-04-24']);
  expect((await ask('yards.list', {})).yards.map(({ lastVisit }) => lastVisit)).toEqual(['2026-04-24', null]);
});

test('a demo’s yards are judged by the demo’s own day', async () => {
  const { book } = await ask('book.demo', { which: 'tiny' });
  expect(book?.path).toBe(join(scratch.folder, `${book?.name} (demo).outyard`));
  const { yards, today } = await ask('yards.list', {});
  expect(today).toBe((await ask('book.status', {})).today);
  for (const yard of yards) {
    const found = await page(yard.id);
    expect(found.colonies).toHaveLength(yard.living);
    expect(found.visits.length).toBeGreaterThan(0);
  }
});
