import { afterEach, beforeEach, expect, test } from 'vitest';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let trial: ReturnType<typeof trialDesk>;
let folder: ReturnType<typeof scratchFolder>;
beforeEach(async () => {
  folder = scratchFolder();
  trial = trialDesk(folder.folder);
  await trial.ask('book.create', { name: 'Larch Bend' });
  await trial.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: null, minutes: null });
});
afterEach(async () => {
  await trial.desk.close();
  folder.remove();
});

type Row = Record<string, string>;
const install = (colony: string, date = '2026-04-24'): Row => ({ date, entry: 'install', yard: 'LB', colony, origin: 'package' });
const look = (colony: string, date: string): Row => ({ date, entry: 'inspection', colony, frames_bees: '8' });
const enter = (...rows: Row[]) => trial.ask('journal.enter', { rows });
const refused = async (...rows: Row[]) => {
  const before = [(await trial.ask('export.journal', {})).text, (await trial.ask('book.status', {})).book?.position];
  const answer = await trial.answer('journal.enter', { rows });
  if (answer.ok) throw new Error('the rows were taken');
  expect([(await trial.ask('export.journal', {})).text, (await trial.ask('book.status', {})).book?.position]).toEqual(before);
  return answer;
};

const labels = ['LB 1 by the gate', '🐝', '👩‍🌾 7', 'Große Linde', 'é', 'e\u0301', 'כוורת שלוש', 'مزرعة ١', '‏LB-9', '"quoted", comma', "O'Hara; 3", '007', 'NULL', 'yes', '<b>x</b>', `Ω${'w'.repeat(78)}!`, '🐝'.repeat(80)];

test('labels of any writing are kept to the letter, found again, exported and brought into another book', async () => {
  await enter(...labels.map((label) => install(label)));
  await enter(...labels.map((label) => look(label, '2026-05-01')));
  expect((await trial.ask('colonies.list', { which: 'living' })).rows.map(({ label }) => label).toSorted()).toEqual(labels.toSorted());
  const [yard] = (await trial.ask('book.status', {})).book?.yards ?? [];
  const sheet = await trial.ask('round.sheet', { yard: yard!.id, day: '2026-05-02' as never });
  expect(sheet.rows.filter(({ lastLook }) => lastLook !== null).map(({ label }) => label).toSorted()).toEqual(labels.toSorted());

  const { text } = await trial.ask('export.journal', {});
  await trial.ask('book.create', { name: 'Other' });
  const file = { name: 'journal.csv', base64: Buffer.from(text).toString('base64') };
  const seen = await trial.ask('import.preview', { file });
  expect([seen.entered, seen.repeats, seen.toSortOut]).toEqual([labels.length * 2, 0, []]);
  await trial.ask('import.enter', { file, sha256: seen.sha256, position: seen.position });
  expect((await trial.ask('export.journal', {})).text).toBe(text);
});

test('names that look the same are the same, whichever spaces they were typed with', async () => {
  await enter(install('LB 7'));
  await enter(look('LB\u00a07', '2026-05-01'));
  expect((await refused(install('LB \u20097', '2026-05-02'))).sentence).toContain('LB 7');
});

test('rows of days still to come are counted before a file is entered', async () => {
  const text = 'date,entry,yard,colony,origin\n2026-05-01,install,LB,A,nuc\n2062-05-01,install,LB,B,nuc\n';
  const seen = await trial.ask('import.preview', { file: { name: 'walk.csv', base64: Buffer.from(text).toString('base64') } });
  expect([seen.entered, seen.ahead]).toEqual([2, { rows: 1, lines: [3] }]);
});

test('a label of 81 characters is refused with a sentence, at the desk, in a split and in a file', async () => {
  for (const long of ['w'.repeat(81), '🐝'.repeat(81)]) {
    const answer = await refused(install(long));
    expect(answer.rows).toMatchObject([{ line: 0, column: 'colony', value: long, sentence: 'A label has at most 80 characters; this one has 81. Shorten it, and put the rest in the note.' }]);
  }
  await enter(install('LB-01'));
  expect((await refused({ date: '2026-05-20', entry: 'split', colony: 'LB-01', new_colony: 'w'.repeat(81) })).rows).toMatchObject([{ column: 'new_colony' }]);
  const file = { name: 'long.csv', base64: Buffer.from(`date,entry,yard,colony,origin\n2026-04-24,install,LB,${'w'.repeat(81)},nuc\n2026-04-24,install,LB,short,nuc\n`).toString('base64') };
  expect(await trial.ask('import.preview', { file })).toMatchObject({ entered: 1, toSortOut: [{ line: 2, column: 'colony' }] });
  // Spaces around it are not part of it.
  await enter(install(`  ${'w'.repeat(80)}  `));
  await enter(look('w'.repeat(80), '2026-05-01'));
});

test('a label is used again once its colony has ended; each record goes to the colony of its day', async () => {
  await enter(install('LB-01'), look('LB-01', '2026-05-01'), { date: '2026-06-01', entry: 'loss', colony: 'LB-01' });
  expect((await refused(install('LB-01', '2026-05-15'))).sentence).toContain('Give');
  await enter(install('LB-01', '2026-06-01'), look('LB-01', '2026-07-01'));
  await enter(look('LB-01', '2026-05-10'));
  const { rows } = await trial.ask('colonies.list', { which: 'all' });
  expect(rows).toHaveLength(2);
  const stories = await Promise.all(rows.map(({ id }) => trial.ask('colony.story', { id })));
  expect(stories.map(({ entries }) => entries.filter(({ kind }) => kind === 'inspection').map(({ day }) => day)).toSorted()).toEqual([['2026-05-01', '2026-05-10'], ['2026-07-01']]);
  // Struck, the loss would leave two of one label.
  const loss = stories.flatMap(({ entries }) => entries).find(({ kind }) => kind === 'loss');
  expect(await trial.answer('journal.strike', { entry: loss!.id, reason: 'it lives' })).toMatchObject({ ok: false, code: 'refused', sentence: expect.stringContaining('The label LB-01 is carried by a colony') });
});

test('a round for a day before a colony began is refused as a whole, and names the colony', async () => {
  await enter(install('LB-01'), install('LB-02', '2026-05-01'));
  const answer = await refused(look('LB-01', '2026-04-30'), look('LB-02', '2026-04-30'));
  expect(answer.rows).toEqual([{ line: 1, column: 'colony', value: 'LB-02', sentence: 'LB-02 begins only on 1 May 2026, after this row\'s 30 April 2026. Correct the day of one of them.' }]);
  const [yard] = (await trial.ask('book.status', {})).book?.yards ?? [];
  expect((await trial.ask('round.sheet', { yard: yard!.id, day: '2026-04-30' as never })).rows.map(({ label }) => label)).toEqual(['LB-01']);
});

test('the same round entered twice is refused with every row named; with a note that it was twice, it is taken', async () => {
  await enter(install('LB-01'), install('LB-02'));
  await enter(look('LB-01', '2026-05-01'), look('LB-02', '2026-05-01'));
  const answer = await refused(look('LB-01', '2026-05-01'), look('LB-02', '2026-05-01'));
  expect(answer.rows?.map(({ line, sentence }) => [line, sentence])).toEqual([0, 1].map((line) => [line, 'The same entry of 1 May 2026 is in the book already. If it did happen twice, say so in the note.']));
  expect((await refused(look('LB-01', '2026-05-02'), look('LB-01', '2026-05-02'))).rows?.map(({ line }) => line)).toEqual([1]);
  await enter({ ...look('LB-01', '2026-05-01'), note: 'again in the evening' });
});

test('a label that a spreadsheet would run is refused, not kept as something else', async () => {
  expect((await refused(install('=1+1'))).sentence).toBe('The cell holds a spreadsheet formula. Write its result instead.');
});

test.each(['2026-02-29', '31.4.2026', '0226-05-01', '2926-05-01', 'yesterday', '٢٠٢٦-٠٥-٠١', '20260501'])('“%s” is no day, and is refused with a sentence', async (date) => {
  await enter(install('LB-01'));
  const answer = await refused(look('LB-01', date));
  expect(answer.rows).toMatchObject([{ line: 0, column: 'date', value: date, sentence: expect.stringMatching(/\.$/) }]);
});

test('what is typed at two windows: the last that was kept is the draft, letter by letter; dropping it twice does no harm', async () => {
  const key = 'round LB 2026-05-01';
  const fetch = async () => (await trial.ask('draft.fetch', { key })).body;
  expect(await fetch()).toBeNull();
  const position = (await trial.ask('book.status', {})).book?.position;
  await trial.ask('draft.keep', { key, body: 'one' });
  await Promise.all(['two', 'three 🐝 כוורת'].map((body) => trial.ask('draft.keep', { key, body })));
  expect(await fetch()).toBe('three 🐝 כוורת');
  await trial.ask('draft.keep', { key: `${key} other`, body: 'beside it' });
  await trial.ask('draft.drop', { key });
  await trial.ask('draft.drop', { key });
  expect([await fetch(), (await trial.ask('draft.fetch', { key: `${key} other` })).body]).toEqual([null, 'beside it']);
  // A window that still has its own typing keeps it anew; typing is no act and nothing to undo.
  await trial.ask('draft.keep', { key, body: 'still here' });
  expect(await fetch()).toBe('still here');
  expect((await trial.ask('book.status', {})).book?.position).toBe(position);
  expect((await trial.answer('draft.keep', { key, body: 'x'.repeat(400_001) })).ok).toBe(false);
  expect(await fetch()).toBe('still here');
});
