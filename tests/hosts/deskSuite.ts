import { describe, expect, test } from 'vitest';
import { contract, type DeskClient, type InputOf, type OperationName, type OutputOf } from '#shared/contract/contract.ts';
import { columns, type Cells } from '#shared/entryForms.ts';
import type { Answer, Fault } from '#shared/faults.ts';

type Call = DeskClient['call'];

/** The value of an answer that must be one; a fault fails the test with its own sentence. */
export async function valueOf<Value>(answer: Promise<Answer<Value>>): Promise<Value> {
  const got = await answer;
  if (!got.ok) throw new Error(`${got.code}: ${got.sentence} ${got.mend ?? ''} ${JSON.stringify(got.rows ?? [])}`);
  return got.value;
}

export async function faultOf(answer: Promise<Answer<unknown>>): Promise<Fault> {
  const got = await answer;
  if (got.ok) throw new Error(`expected a fault, got ${JSON.stringify(got.value).slice(0, 200)}`);
  return got;
}

export function csv(rows: readonly Cells[]): string {
  const cell = (text: string) => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  return [columns.join(','), ...rows.map((row) => columns.map((column) => cell(row[column] ?? '')).join(','))].join('\n') + '\n';
}

export function fileOf(name: string, text: string): { name: string; base64: string } {
  return { name, base64: Buffer.from(text, 'utf8').toString('base64') };
}

/** An evening's entries of a small yard, all invented. */
const installs: Cells[] = [
  { date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'Q1', origin: 'package', supplier: 'Sandel Road Bees', queen_year: '2024', price: '140' },
  { date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'Q2', origin: 'package', supplier: 'Sandel Road Bees', queen_year: '2024', price: '140' },
  { date: '2024-04-20', entry: 'install', yard: 'QY', colony: 'Q3', origin: 'package', supplier: 'Sandel Road Bees', price: '140' },
  { date: '2024-05-15', entry: 'install', yard: 'LB', colony: 'L1', origin: 'nuc', supplier: 'Upper Ferry Apiary', price: '190', note: 'four frames, "strong", calm' },
  { date: '2024-05-15', entry: 'install', yard: 'LB', colony: 'L2', origin: 'nuc', supplier: 'Upper Ferry Apiary', price: '190' },
];
/** What the winter did: two of five were lost in it, one of them united would be another matter. */
const winter: Cells[] = [
  { date: '2024-08-20', entry: 'mites', yard: 'QY', colony: 'Q1', mites: '12', bees: '300', method: 'alcohol wash' },
  { date: '2024-09-02', entry: 'stock', item: 'deep box', quantity: '10', from: 'supplier', to: 'shed' },
  { date: '2025-01-18', entry: 'loss', yard: 'QY', colony: 'Q1', cause: 'mites;weak in autumn' },
  { date: '2025-02-22', entry: 'loss', yard: 'LB', colony: 'L2', cause: 'starvation' },
];

/**
 * One story told to the desk through a host: what a person does with a new book in an evening. Both hosts must tell
 * it the same. Tests build on one another, in order.
 */
export function deskSuite(host: () => Call): void {
  const call: Call = (name, input) => host()(name, input);
  const value = <Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> => valueOf(call(name, input));

  describe('the desk through this host', () => {
    test('knows no book at first, and says where books lie', async () => {
      const status = await value('book.status', {});
      expect(status.book).toBeNull();
      expect(status.today).toMatch(/^\d{4}-\d\d-\d\d$/);
      expect(status.folder).not.toBe('');
      expect(status.program).toMatch(/^Outyard \d+\.\d+\.\d+/);
    });

    test('without a book, what needs one says so', async () => {
      expect((await faultOf(call('colonies.list', { which: 'living' }))).code).toBe('no-book');
      expect((await faultOf(call('journal.enter', { rows: installs }))).code).toBe('no-book');
    });

    test('makes a book', async () => {
      const status = await value('book.create', { name: 'Two yards' });
      expect(status.book).toMatchObject({ name: 'Two yards', entries: 0, living: 0, demo: false });
      expect(status.books.map((book) => book.name)).toContain('Two yards');
    });

    test('enters the installs in one act', async () => {
      await value('yard.keep', { code: 'QY', name: 'Quarry', room: 24, minutes: 18 });
      await value('yard.keep', { code: 'LB', name: 'Larch Bend', room: 20, minutes: 35 });
      const written = await value('journal.enter', { title: 'Five new colonies', rows: installs });
      expect(written).toMatchObject({ entered: 5, struck: 0 });
      expect(written.colonies).toHaveLength(5);
      const { rows } = await value('colonies.list', { which: 'living', asOf: '2024-06-01' as never });
      expect(rows.map((row) => `${row.label} ${row.origin} ${row.yard}`).toSorted()).toEqual([
        'L1 nuc LB', 'L2 nuc LB', 'Q1 package QY', 'Q2 package QY', 'Q3 package QY',
      ]);
    });

    test('refuses a round with a fault in it whole, and names the row', async () => {
      const rows: Cells[] = [
        { date: '2024-06-10', entry: 'inspection', yard: 'QY', colony: 'Q2', frames_bees: '8', frames_brood: '5' },
        { date: '2024-06-10', entry: 'inspection', yard: 'QY', colony: 'Q9', frames_bees: '8' },
      ];
      const fault = await faultOf(call('journal.enter', { rows }));
      expect(fault.code).toBe('refused');
      expect(fault.rows).toEqual([expect.objectContaining({ line: 1, value: 'Q9', sentence: expect.stringContaining('Q9') })]);
      expect((await value('book.status', {})).book?.entries).toBe(5);
    });

    test('imports after a preview that tells the same, and not twice', async () => {
      const broken: Cells = { date: '2024-13-40', entry: 'note', note: 'no such day' };
      const file = fileOf('winter.csv', csv([installs[0] ?? {}, ...winter, broken]));
      const preview = await value('import.preview', { file });
      expect(preview).toMatchObject({ read: 6, entered: 4, repeats: 1, repeatLines: [2], living: 3 });
      expect(preview.toSortOut).toEqual([expect.objectContaining({ line: 7, column: 'date', value: '2024-13-40' })]);
      expect((await value('book.status', {})).book?.entries).toBe(5);

      const { sha256, position } = preview;
      expect((await faultOf(call('import.enter', { file, sha256: 'another', position }))).code).toBe('moved-on');
      const done = await value('import.enter', { file, sha256, position });
      expect(done).toMatchObject({ read: 6, entered: 4, repeats: 1, living: 3 });
      expect((await faultOf(call('import.enter', { file, sha256, position }))).code).toBe('moved-on');
      expect(await value('import.preview', { file })).toMatchObject({ read: 6, entered: 0, repeats: 5 });
    });

    test('counts the winter’s losses', async () => {
      const review = await value('losses.review', { season: 2024, united: 'lost' });
      const all = review.rates.find((row) => row.season === 2024 && row.period === 'winter' && row.group === 'all');
      expect(all).toMatchObject({ atRisk: 5, lost: 2, rate: 0.4 });
      // 2 of 5 by Wilson: 12 to 77 per cent (Newcombe 1998, method 3).
      expect(all?.wilson?.[0]).toBeCloseTo(0.1176, 3);
      expect(all?.wilson?.[1]).toBeCloseTo(0.7693, 3);
      expect(review.balances).toBe(true);
      expect(review.ledger.find((row) => row.yard === 'all')).toMatchObject({ packages: 3, nucs: 2, lostWinter: 2, closing: 3 });
      expect(review.ended.map((end) => `${end.label} ${end.day} ${end.causes.join()}`).toSorted()).toEqual([
        'L2 2025-02-22 starvation', 'Q1 2025-01-18 mites,weak in autumn',
      ]);
    });

    test('plans the order', async () => {
      const plan = await value('order.decide', { target: 8, confidence: 0.9, splits: false });
      expect(plan).toMatchObject({ living: 3, target: 8, confidence: 0.9, outcome: 'order' });
      expect(plan.forecast.chances.reduce((sum, one) => sum + one.chance, 0)).toBeCloseTo(1, 9);
      expect(plan.answer?.bought).toBeGreaterThanOrEqual(5);
      expect(plan.answer?.bought).toBeLessThanOrEqual(8);
      expect(plan.answer?.chanceShort).toBeLessThanOrEqual(0.1 + 1e-12);
      for (const line of plan.answer?.equipment ?? []) expect(line.order, line.item).toBe(Math.max(0, line.need - line.have));
    });

    test('takes an act back and brings it again', async () => {
      const { gestures, canUndo } = await value('journal.recent', { limit: 10 });
      expect(gestures[0]).toMatchObject({ kind: 'import', entries: 4, undone: false });
      expect(canUndo).not.toBeNull();
      await value('journal.undo', {});
      expect((await value('colonies.list', { which: 'living', asOf: '2025-03-31' as never })).rows).toHaveLength(5);
      await value('journal.redo', {});
      expect((await value('colonies.list', { which: 'living', asOf: '2025-03-31' as never })).rows).toHaveLength(3);
    });

    test('keeps a draft until it is dropped', async () => {
      const body = JSON.stringify({ yard: 'QY', typed: ['7 ½', '', 'née'] });
      await value('draft.keep', { key: 'round', body });
      expect(await value('draft.fetch', { key: 'round' })).toEqual({ body, stamp: expect.stringMatching(/^[0-9a-f]{16}$/) });
      await value('draft.drop', { key: 'round' });
      expect(await value('draft.fetch', { key: 'round' })).toEqual({ body: null, stamp: null });
    });

    test('is sound, and its export makes the same book again', async () => {
      expect(await value('book.check', {})).toMatchObject({ sound: true, refoldEqual: true, findings: [] });
      const journal = await value('export.journal', {});
      expect(journal.rows).toBe(9);
      const before = await value('book.status', {});

      await value('book.create', { name: 'The same again' });
      const file = fileOf(journal.fileName, journal.text);
      const { sha256, position, toSortOut } = await value('import.preview', { file });
      expect(toSortOut).toEqual([]);
      await value('import.enter', { file, sha256, position });
      expect((await value('export.journal', {})).text).toBe(journal.text);

      const back = await value('book.open', { path: before.book?.path ?? '' });
      expect(back.book).toMatchObject({ name: 'Two yards', entries: before.book?.entries });
    });

    test('says what is wrong with a file that is no book', async () => {
      const { folder } = await value('book.status', {});
      expect((await faultOf(call('book.open', { path: `${folder}/absent.outyard` }))).code).toBe('file-missing');
      // The book that was open stays so.
      expect((await value('book.status', {})).book?.name).toBe('Two yards');
    });

    describe('answers whatever is asked with a fault that has a sentence', () => {
      const anything = host as unknown as () => (name: unknown, input: unknown) => Promise<Answer<unknown>>;
      test.each(['nothing.like', 'book.statuss', 'constructor.name'])('%s is unknown', async (name) => {
        const fault = await faultOf(anything()(name, {}));
        expect([fault.code, fault.sentence]).toEqual(['unknown', expect.stringMatching(/\.$/)]);
      });

      test.each(Object.keys(contract))('%s knows its input from another', async (name) => {
        const fault = await faultOf(anything()(name, { 'no such field': 1 }));
        expect([fault.code, fault.sentence]).toEqual(['bad-input', expect.stringMatching(/\.$/)]);
      });

      test.each([[null], [7], ['text'], [[]]])('an input of %j is none', async (input) => {
        expect((await faultOf(anything()('book.status', input))).code).toBe('bad-input');
      });
    });
  });
}
