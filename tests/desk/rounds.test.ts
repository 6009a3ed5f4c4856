import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { InputOf, OperationName } from '#shared/contract/contract.ts';
import type { Cells } from '#shared/entryForms.ts';
import { standardColumns } from '#shared/roundSheets.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let at: ReturnType<typeof trialDesk>;
beforeEach(async () => {
  scratch = scratchFolder();
  at = trialDesk(scratch.folder);
  await at.ask('book.create', { name: 'Ossar Valley' });
  await at.ask('yard.keep', { code: 'LB', name: 'Larch Bend', room: 12, minutes: 35 });
  await at.ask('yard.keep', { code: 'NS', name: 'North Slope', room: null, minutes: null });
  await enter(...['LB-1', 'LB-2'].map((colony) => ({ date: '2025-04-24', entry: 'install', yard: 'LB', colony, origin: 'package', queen_year: '2024', queen_source: 'Kestrel' })));
});
afterEach(async () => {
  await at.desk.close();
  scratch.remove();
});

const ask = <Name extends OperationName>(name: Name, input: InputOf<Name>) => at.askHeld(name, input);
const enter = (...rows: Cells[]) => at.ask('journal.enter', { rows });
const setting = (day = '2026-05-18', yard = 1) => ask('rounds.setting', { yard, day });
const paper = async (label: string, day: string) => (await ask('rounds.paper', { yard: 1, day })).rows.find((row) => row.label === label);
const cues = async (label: string, day: string) => (await paper(label, day))?.cues;

describe('what a round asks', () => {
  test('begins with the standard columns and marks', async () => {
    expect(await setting()).toEqual({ season: 2026, kind: 'inspection', columns: standardColumns, planned: null, yardWork: [], marks: {}, massUnit: 'lb' });
  });

  test('columns are kept by yard, season and kind, in the sheet’s order, and the next season goes on from them', async () => {
    await ask('rounds.layout', { yard: 1, day: '2026-05-18', kind: 'feed', columns: ['note', 'feed', 'feed', 'bees'] });
    expect(await setting()).toMatchObject({ kind: 'feed', columns: { feed: ['bees', 'feed', 'note'], inspection: standardColumns.inspection } });
    expect((await setting('2026-03-31')).columns.feed).toEqual(standardColumns.feed);
    expect((await setting('2027-06-01')).columns.feed).toEqual(['bees', 'feed', 'note']);
    expect(await setting('2026-05-18', 2)).toMatchObject({ kind: 'inspection', columns: standardColumns });

    await ask('rounds.layout', { yard: 1, day: '2027-06-01', kind: 'feed', columns: ['feed'] });
    expect([(await setting()).columns.feed, (await setting('2027-06-01')).columns.feed]).toEqual([['bees', 'feed', 'note'], ['feed']]);
    await ask('rounds.layout', { yard: 1, day: '2027-06-01', kind: 'mites' });
    expect(await setting('2027-06-01')).toMatchObject({ kind: 'mites', columns: { feed: ['feed'] } });
    await ask('rounds.layout', { yard: 1, day: '2027-06-01', kind: 'feed', columns: null });
    expect((await setting('2027-06-01')).columns).toEqual(standardColumns);
  });

  test('layout and marks are in the book after it is opened again', async () => {
    await ask('rounds.layout', { yard: 1, day: '2026-05-18', kind: 'stores', columns: ['weight'] });
    await ask('rounds.marks', { marks: { yes: 'j', no: 'n' } });
    const path = (await ask('book.status', {})).book?.path ?? '';
    await ask('book.close', {});
    await ask('book.open', { path });
    expect(await setting()).toMatchObject({ kind: 'stores', columns: { stores: ['weight'] }, marks: { yes: 'j' } });
  });

  test('marks that clash are refused with a sentence, and the old ones stand; none restores the standard ones', async () => {
    await ask('rounds.marks', { marks: { swarm: 'z' } });
    expect(await at.desk.call('rounds.marks', { marks: { no: 'y' } })).toMatchObject({ ok: false, code: 'refused', field: 'no', sentence: expect.stringContaining('“y” would mean both yes and no') });
    expect((await setting()).marks).toEqual({ swarm: 'z' });
    await ask('rounds.marks', { marks: {} });
    expect((await setting()).marks).toEqual({});
  });

  test('no column, an unknown column, an unknown yard are refused', async () => {
    expect(await at.desk.call('rounds.layout', { yard: 1, day: '2026-05-18', kind: 'feed', columns: [] })).toMatchObject({ ok: false, code: 'bad-input' });
    expect(await at.desk.call('rounds.layout', { yard: 1, day: '2026-05-18', kind: 'feed', columns: ['honey'] })).toMatchObject({ ok: false, code: 'bad-input' });
    expect(await at.desk.call('rounds.layout', { yard: 9, day: '2026-05-18', kind: 'feed' })).toMatchObject({ ok: false, code: 'unknown' });
    expect(await at.desk.call('rounds.paper', { yard: 9, day: '2026-05-18' })).toMatchObject({ ok: false, code: 'unknown' });
  });
});

describe('the field sheet', () => {
  test('has the living colonies of the day with queen, age and what was found last', async () => {
    await enter({ date: '2025-06-01', entry: 'inspection', yard: 'LB', colony: 'LB-1', frames_bees: '9', frames_brood: '6', eggs: 'yes', queen_seen: 'no' });
    expect((await ask('rounds.paper', { yard: 1, day: '2025-04-23' })).rows).toEqual([]);
    expect(await paper('LB-1', '2025-06-10')).toMatchObject({
      queen: { year: 2024, colour: 'green' }, queenAge: 1, last: { day: '2025-06-01', sentence: '9 frames of bees, 6 of brood, eggs, queen not seen' }, cues: [],
    });
    expect(await paper('LB-2', '2025-06-10')).toMatchObject({ last: null, cues: [] });
    // The look of the day itself is what the sheet is for.
    expect((await paper('LB-1', '2025-06-01'))?.last).toBeNull();
  });

  test('no eggs, cells, and a queen long not seen are named with their day', async () => {
    const look = (date: string, cells: Cells) => enter({ date, entry: 'inspection', yard: 'LB', colony: 'LB-1', ...cells });
    await look('2025-05-01', { eggs: 'yes', queen_seen: 'yes' });
    await look('2025-05-20', { frames_bees: '8', queen_seen: 'no' });
    expect(await cues('LB-1', '2025-06-12')).toEqual([]);
    expect(await cues('LB-1', '2025-06-13')).toEqual(['Neither queen nor eggs recorded since 1 May, 43 days: look for them.']);
    await at.ask('rules.set', { key: 'round.queenUnseen', value: 60 });
    expect(await cues('LB-1', '2025-06-13')).toEqual([]);
    await look('2025-06-14', { eggs: 'no', queen_cells: 'swarm' });
    expect(await cues('LB-1', '2025-06-20')).toEqual(['No eggs on 14 June: look for eggs or the queen.', 'Swarm cells on 14 June: look for cells.']);
    await look('2025-06-21', { eggs: 'yes', queen_cells: 'none' });
    expect(await cues('LB-1', '2025-06-28')).toEqual([]);
    await enter({ date: '2025-06-29', entry: 'queen', yard: 'LB', colony: 'LB-1', what: 'missing' });
    expect(await cues('LB-1', '2025-07-05')).toEqual(['No queen since 29 June (missing): look for eggs.']);
    // A closed hive in winter is no cue.
    await enter({ date: '2025-07-06', entry: 'requeen', yard: 'LB', colony: 'LB-1', queen_year: '2025' });
    expect(await cues('LB-1', '2025-12-05')).toEqual([]);
  });

  test('on a winter day nothing is asked for that would open the hive', async () => {
    await enter({ date: '2025-09-12', entry: 'inspection', yard: 'LB', colony: 'LB-1', eggs: 'no', queen_cells: 'supersedure' }, { date: '2025-09-12', entry: 'mites', yard: 'LB', colony: 'LB-1', mites: '30', bees: '300' });
    expect(await cues('LB-1', '2025-09-20')).toHaveLength(3);
    expect(await cues('LB-1', '2025-11-08')).toEqual([]);
  });

  // Walk-away split of 20 May: earliest look for a laying queen 10 June (day 21), given up after 17 June (day 28).
  // Practice page (buttsbees.com, a weak source); the verdict day is from memory.
  test('a walk-away split is looked at from day 21, and judged by day 28', async () => {
    await enter({ date: '2025-05-20', entry: 'split', yard: 'LB', colony: 'LB-1', new_colony: 'LB-3', queen: 'stays', new_queen: 'walk-away' });
    expect(await cues('LB-3', '2025-06-09')).toEqual(['Walk-away split of 20 May, day 20: look for eggs from 10 June, not before.']);
    expect(await cues('LB-3', '2025-06-10')).toEqual(['Walk-away split of 20 May, day 21: look for eggs.']);
    expect(await cues('LB-3', '2025-06-17')).toEqual(['Walk-away split of 20 May, day 28: look for eggs.']);
    expect(await cues('LB-3', '2025-06-18')).toEqual(['Walk-away split of 20 May, day 29, no eggs recorded: a queen should lay by now.']);
    expect(await cues('LB-1', '2025-06-10')).toEqual([]);
    await enter({ date: '2025-06-11', entry: 'inspection', yard: 'LB', colony: 'LB-3', eggs: 'yes' });
    expect(await cues('LB-3', '2025-06-18')).toEqual([]);
    // Where the old queen moved it is the mother that raises one.
    await enter({ date: '2025-06-20', entry: 'split', yard: 'LB', colony: 'LB-2', new_colony: 'LB-4', queen: 'moves', new_queen: 'walk-away' });
    expect(await cues('LB-2', '2025-07-11')).toEqual(['Walk-away split of 20 June, day 21: look for eggs.']);
    expect(await cues('LB-4', '2025-07-11')).toEqual([]);
    await at.ask('journal.undo', {});
    expect(await cues('LB-2', '2025-07-11')).toEqual([]);
  });

  // 9 mites in 300 bees are 3.0 in 100, where USDA-ARS Tucson treats (gilroybeekeepers.org).
  test('many mites are named, with the treatment since, also one of the whole yard', async () => {
    await enter({ date: '2025-08-10', entry: 'mites', yard: 'LB', colony: 'LB-1', mites: '9', bees: '300' }, { date: '2025-08-10', entry: 'mites', yard: 'LB', colony: 'LB-2', mites: '8', bees: '300' });
    expect(await cues('LB-1', '2025-08-17')).toEqual(['9 mites in 300 bees on 10 August, 3.0 in 100, no treatment recorded since: count again.']);
    expect(await cues('LB-2', '2025-08-17')).toEqual([]);
    await enter({ date: '2025-08-18', entry: 'treatment', yard: 'LB', active_ingredient: 'thymol' });
    expect(await cues('LB-1', '2025-09-20')).toEqual(['9 mites in 300 bees on 10 August, 3.0 in 100, treated 18 August: count again.']);
    expect(await cues('LB-1', '2025-10-20')).toEqual([]);
  });
});

describe('a draft and the stamp it was seen with', () => {
  const key = 'round:1:2026-05-18';
  const keep = (body: string, over?: string | null) => at.desk.call('draft.keep', { key, body, ...(over === undefined ? {} : { over }) });

  test('is written over what was seen, refused over anything else, and still there', async () => {
    expect(await ask('draft.fetch', { key })).toEqual({ body: null, stamp: null });
    expect(await keep('mine', null)).toMatchObject({ ok: true });
    const { stamp } = await ask('draft.fetch', { key });
    expect(await keep('theirs', null)).toMatchObject({ ok: false, code: 'moved-on' });
    expect(await keep('mine, and more', stamp)).toMatchObject({ ok: true });
    expect(await at.desk.call('draft.drop', { key, over: stamp })).toMatchObject({ ok: false, code: 'moved-on' });
    expect((await ask('draft.fetch', { key })).body).toBe('mine, and more');
    // Callers that name no stamp write whatever is there.
    expect(await keep('plain')).toMatchObject({ ok: true });
    expect(await at.desk.call('draft.drop', { key })).toMatchObject({ ok: true });
  });
});
