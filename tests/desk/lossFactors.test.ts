import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { contract } from '#shared/contract/contract.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
const ask: ReturnType<typeof trialDesk>['ask'] = (name, input) => at.ask(name, input);
beforeAll(() => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
});
afterAll(async () => {
  await at.desk.close();
  scratch.remove();
});

describe('the demo over the desk', () => {
  test.each(['season', 'all'] as const)('every figure is the number of colonies behind it: %s', async (scope) => {
    await ask('book.demo', { which: 'ossar' });
    const found = await ask('losses.factors', { season: 2025, scope });
    expect(contract['losses.factors'].output.safeParse(found).success).toBe(true);
    for (const factor of found.factors) {
      for (const line of [...factor.groups, ...(factor.unknown === null ? [] : [{ ...factor.unknown, key: null }])]) {
        const { colonies } = await ask('losses.factorGroup', { season: 2025, scope, factor: factor.key, group: line.key });
        expect([colonies.filter(({ lost }) => lost).length, colonies.length], `${factor.name}, ${line.name}`).toEqual([line.lost, line.atRisk]);
        expect(colonies.every(({ lost, day: on }) => lost === (on !== null))).toBe(true);
      }
    }
    for (const { cause, count } of found.causes.shares) {
      expect((await ask('losses.factorGroup', { season: 2025, scope, factor: 'cause', group: cause })).colonies, cause).toHaveLength(count);
    }
    const { causes, rows } = found.causes.byYard;
    for (const { yard, counts } of rows) {
      for (const [place, count] of counts.entries()) {
        expect((await ask('losses.factorGroup', { season: 2025, scope, factor: 'causeByYard', group: causes[place] ?? '', yard })).colonies).toHaveLength(count);
      }
    }
    expect(rows.flatMap(({ counts }) => counts).reduce((sum, one) => sum + one, 0)).toBe(found.causes.lost);
  });

  test('the counts agree with the account of colonies', async () => {
    const found = await ask('losses.factors', { season: 2025, scope: 'all' });
    for (const { season, atRisk, lost } of found.winters) {
      const { ledger } = await ask('losses.review', { season, united: 'lost' });
      const all = ledger.find(({ yard }) => yard === 'all');
      const { colonies } = await ask('losses.factorGroup', { season, scope: 'season', factor: 'treated', group: 'treated' });
      const others = await ask('losses.factorGroup', { season, scope: 'season', factor: 'treated', group: 'not treated' });
      expect(colonies.length + others.colonies.length).toBe(atRisk);
      // Those that left alive during the winter, and losses of colonies that came during it, are what may lie between.
      expect(atRisk).toBeLessThanOrEqual(all?.aliveOn1October ?? 0);
      expect(lost).toBeLessThanOrEqual(all?.lostWinter ?? 0);
      expect((all?.aliveOn1October ?? 0) - atRisk).toBeLessThanOrEqual((all?.sold ?? 0) + (all?.given ?? 0) + (all?.combined ?? 0));
    }
  });

  test('the answer follows the book: a rule that is changed, a loss that is struck', async () => {
    const before = await ask('losses.factors', { season: 2025, scope: 'season' });
    await ask('rules.set', { key: 'losses.mites.threshold', value: 1 });
    const after = await ask('losses.factors', { season: 2025, scope: 'season' });
    const atRisk = (found: typeof before) => found.factors.find(({ key }) => key === 'mites')?.groups.find(({ key }) => key === 'at or above')?.atRisk ?? 0;
    expect(atRisk(after)).toBeGreaterThan(atRisk(before));
    expect(after.factors.find(({ key }) => key === 'mites')?.groups[0]?.name).toBe('1 per 100 or more');
    await ask('rules.set', { key: 'losses.mites.threshold', value: null });
    expect((await ask('losses.factors', { season: 2025, scope: 'season' })).factors).toEqual(before.factors);
  });

  test('what colonies are not grouped by is refused in a sentence', async () => {
    const answer = await at.desk.call('losses.factorGroup', { scope: 'season', factor: 'colour', group: 'red' });
    expect(answer).toMatchObject({ ok: false, code: 'unknown', sentence: 'Colonies are not grouped by “colour”.' });
  });
});

describe('notes to oneself', () => {
  test('kept with the season, shown with the next, gone when emptied; the journal is not touched', async () => {
    await ask('book.create', { name: 'Notes' });
    const { book: before } = await ask('book.status', {});
    expect(await ask('losses.notes', { season: 2025 })).toEqual({ text: '', kept: null, before: null });
    await ask('losses.keepNotes', { season: 2024, text: 'More stands.' });
    await ask('losses.keepNotes', { season: 2025, text: '  Ünruly “quotes”\nand lines ' });
    expect(await ask('losses.notes', { season: 2025 })).toEqual({ text: '  Ünruly “quotes”\nand lines ', kept: '2026-11-25 21:00', before: { season: 2024, name: '2024–25', text: 'More stands.' } });
    expect((await ask('losses.notes', { season: 2030 })).before?.season).toBe(2025);
    await ask('losses.keepNotes', { season: 2025, text: '' });
    expect((await ask('losses.notes', { season: 2030 })).before?.season).toBe(2024);
    expect((await ask('book.status', {})).book?.entries).toBe(before?.entries);
  });

  test('without a book they are refused, not lost in silence', async () => {
    await ask('book.close', {});
    expect(await at.desk.call('losses.keepNotes', { season: 2025, text: 'x' })).toMatchObject({ ok: false, code: 'no-book' });
  });

  test('an empty book has words for every section', async () => {
    await ask('book.create', { name: 'Empty' });
    const found = await ask('losses.factors', { scope: 'all' });
    expect(found).toMatchObject({ winters: [], tests: 0, yards: { sentence: '', rows: [] }, causes: { lost: 0, shares: [] } });
    expect(found.sentences.join(' ')).toContain('Nothing about a colony is on record');
  });
});
