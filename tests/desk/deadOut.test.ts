import { afterEach, beforeEach, expect, test } from 'vitest';
import { deadOutRow } from '#shared/deadOut.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
beforeEach(async () => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
  await at.ask('book.create', { name: 'Ossar Valley' });
  await at.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
  await at.ask('journal.enter', {
    rows: [
      { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'A', origin: 'package', queen_year: '2024' },
      { date: '2025-04-24', entry: 'install', yard: 'LB', colony: 'B', origin: 'package' },
      { date: '2025-09-02', entry: 'mites', colony: 'A', mites: '21', bees: '300' },
      { date: '2025-09-02', entry: 'inspection', colony: 'A', frames_bees: '6' },
      { date: '2025-10-02', entry: 'sale', colony: 'B' },
    ],
  });
});
afterEach(async () => {
  await at.desk.close();
  scratch.remove();
});
const open = (id: number) => at.askHeld('deadOut.open', { id });

test('a loss is entered with its look, looked at again, struck, and goes through a file unchanged', async () => {
  const alive = await open(1);
  expect(alive).toMatchObject({ how: 'alive', loss: null, closed: null });
  expect(alive.record.join(' ')).toContain('Last mite count on 2 September 2025');
  await at.ask('journal.enter', { rows: [{ ...deadOutRow({ colony: 'A' }, [], 'Quiet at the entrance.', ['bees-few', 'stores-beside']), date: '2026-02-10' }] });
  const first = await open(1);
  expect(first).toMatchObject({ how: 'lost', end: '2026-02-10', closed: null, loss: { causes: ['unknown'], words: 'Quiet at the entrance.', signs: ['bees-few', 'stores-beside'] } });

  const { entry, cells, words } = first.loss!;
  await at.ask('journal.replace', { entry, cells: deadOutRow(cells, ['mites'], words, ['bees-few', 'mite-frass']), reason: 'looked at the dead-out' });
  const second = await open(1);
  expect(second.loss).toMatchObject({ causes: ['mites'], words: 'Quiet at the entrance.', signs: ['bees-few', 'mite-frass'] });
  expect(second.end).toBe('2026-02-10');
  const story = await at.ask('colony.story', { id: 1 });
  expect(story.entries.filter(({ kind }) => kind === 'loss').map(({ struckReason }) => struckReason)).toEqual(['looked at the dead-out', null]);

  const { text } = await at.ask('export.journal', {});
  await at.ask('book.create', { name: 'Again' });
  const file = { name: 'a.csv', base64: Buffer.from(text).toString('base64') };
  const { sha256, position } = await at.ask('import.preview', { file });
  await at.ask('import.enter', { file, sha256, position });
  expect((await open(1)).loss).toMatchObject({ causes: ['mites'], words: 'Quiet at the entrance.', signs: ['bees-few', 'mite-frass'] });
});

test('a struck loss is no loss: the colony lives again, and a look enters a new one', async () => {
  await at.ask('journal.enter', { rows: [{ date: '2026-02-10', entry: 'loss', colony: 'A', note: 'gone' }] });
  const { loss } = await open(1);
  expect(loss).toMatchObject({ causes: [], words: 'gone', signs: [] });
  await at.ask('journal.strike', { entry: loss!.entry, reason: 'it was another' });
  expect(await open(1)).toMatchObject({ how: 'alive', loss: null });
  // Somebody struck it while the look was open: the replacement is refused with a sentence, and nothing is entered.
  const answer = await at.desk.call('journal.replace', { entry: loss!.entry, cells: deadOutRow(loss!.cells, ['cold'], 'gone', []), reason: 'looked at the dead-out' });
  expect(answer).toMatchObject({ ok: false });
  expect(await open(1)).toMatchObject({ how: 'alive', loss: null });
});

test('a colony that was sold has no dead-out; one that is not there has none either', async () => {
  expect((await open(2)).closed).toMatch(/^B was sold on 2 October 2025, so there is no dead-out/);
  expect(await at.desk.call('deadOut.open', { id: 99 })).toMatchObject({ ok: false, code: 'unknown' });
  expect(await at.desk.call('deadOut.judge', { signs: ['ghosts'] })).toMatchObject({ ok: false, code: 'bad-input' });
  expect(await at.ask('deadOut.judge', { signs: ['brood-ropy', 'stores-none'] })).toMatchObject({ suggestions: [], stop: { seen: ['brood-ropy'] } });
});
