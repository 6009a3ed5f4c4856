import { describe, expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import { columns, entryForms, type Kind } from '#shared/entryForms.ts';
import { marksFrom, markTrouble, standardMarks } from '#shared/roundMarks.ts';
import { inSheetOrder, roundColumns, roundKinds, standardColumns } from '#shared/roundSheets.ts';
import { legendOf } from '../../renderer/screens/tonight/columnWords.ts';
import { readCell } from '../../renderer/screens/tonight/sheetCell.ts';
import { columnsShown, type Typed, type TypedRow } from '../../renderer/screens/tonight/sheetColumns.ts';
import { draftIsEmpty, freshSheet, readDraft, withoutSent, writeDraft } from '../../renderer/screens/tonight/sheetDraft.ts';
import { untilTrouble, withAlsoDone, workTrouble } from '../../renderer/screens/tonight/sheetEntries.ts';
import { runsOn } from '../../renderer/screens/tonight/sheetMarks.ts';
import { composeRound, enteredLine, placeFaults, remarksOn, type RoundSheet } from '../../renderer/screens/tonight/sheetRound.ts';
import type { SheetWide } from '../../renderer/screens/tonight/sheetRow.ts';
import { plainSetting, type SheetSetting } from '../../renderer/screens/tonight/sheetSetting.ts';

const colony = (id: number) => ({ colony: id as ColonyId, label: `LB-0${id}` });
const base = { date: '2026-05-18', yard: 'LB', colony: 'LB-01' };

function sheetOf(typed: Record<number, TypedRow>, wide: Partial<SheetWide> = {}, setting: SheetSetting = plainSetting): RoundSheet {
  return { yard: { code: 'LB', name: 'Larch Bend' }, day: day('2026-05-18'), kind: 'mix', colonies: [colony(1), colony(2)], typed: typed as Typed, wide: { ...freshSheet.wide, ...wide }, setting };
}
const rowsOf = (...of: Parameters<typeof sheetOf>) => {
  expect(remarksOn(sheetOf(...of)).filter(({ state }) => state === 'refused')).toEqual([]);
  return composeRound(sheetOf(...of)).rows;
};
const refusals = (...of: Parameters<typeof sheetOf>) => remarksOn(sheetOf(...of)).filter(({ state }) => state === 'refused').map(({ column, sentence }) => [column, sentence]);

describe('what each kind of round enters', () => {
  test('feed: the sheet’s kind and amount for the mark, the row’s own where it says so', () => {
    const wide = { feed: 'syrup 2:1', amount: '1 gal' } as const;
    expect(rowsOf({ 1: { feed: 'y' } }, wide)).toEqual([{ ...base, entry: 'feed', feed: 'syrup 2:1', amount: '1', unit: 'gal' }]);
    expect(rowsOf({ 1: { feed: '2 l' } }, wide)).toEqual([{ ...base, entry: 'feed', feed: 'syrup 2:1', amount: '2', unit: 'l' }]);
    expect(rowsOf({ 1: { feed: '3 f' } }, wide)).toEqual([{ ...base, entry: 'feed', feed: 'fondant', amount: '3', unit: 'lb' }]);
    expect(rowsOf({ 1: { feed: 'y' } }, { feed: 'fondant' })).toEqual([{ ...base, entry: 'feed', feed: 'fondant' }]);
    expect(rowsOf({ 1: { feed: '2' } }, { feed: 'syrup 1:1' }, { ...plainSetting, massUnit: 'kg' })[0]).toMatchObject({ amount: '2', unit: 'l' });
    expect(refusals({ 1: { feed: '1 gal' } })).toEqual([['feed', expect.stringContaining('Which feed?')]]);
    expect(refusals({ 1: { feed: 'y' } }, { feed: 'fondant', amount: 'lots' })).toEqual([['feed', expect.stringContaining('“lots”')]]);
  });

  test('supers: one entry for each kind of box, off before on', () => {
    expect(rowsOf({ 1: { supersOn: '2m 1s', supersOff: '1d' } })).toEqual([
      { ...base, entry: 'supers off', box: 'deep', count: '1' },
      { ...base, entry: 'supers on', box: 'medium', count: '2' },
      { ...base, entry: 'supers on', box: 'shallow', count: '1' },
    ]);
  });

  test('harvest: full less empty in one unit, the sheet’s empty weight and lot unless the row has its own', () => {
    const wide = { tare: '12', lot: 'A-1' };
    expect(rowsOf({ 1: { full: '48.5', moisture: '17,5' } }, wide)).toEqual([{ ...base, entry: 'harvest', gross: '48.5', tare: '12', unit: 'lb', moisture: '17.5', lot: 'A-1' }]);
    expect(rowsOf({ 1: { full: '20 kg', empty: '10 lb', lot: 'B' } }, wide)).toEqual([{ ...base, entry: 'harvest', gross: '20', tare: '4.54', unit: 'kg', lot: 'B' }]);
    expect(refusals({ 1: { full: '40' } })).toEqual([['full', expect.stringContaining('weigh empty')]]);
    expect(refusals({ 1: { full: '10' } }, wide)).toEqual([['full', expect.stringContaining('12 lb, is more than the full weight, 10 lb')]]);
    expect(refusals({ 1: { lot: 'A' } })).toEqual([['lot', expect.stringContaining('no full weight')]]);
  });

  test('stores and treatments, by the row and for the sheet', () => {
    expect(rowsOf({ 1: { weight: '60' } }, {}, { ...plainSetting, massUnit: 'kg' })).toEqual([{ ...base, entry: 'stores', weight: '60', unit: 'kg' }]);
    expect(rowsOf({ 1: { treat: 'y' }, 2: { treat: 'ox' } }, { ingredient: 'thymol', until: '6/10/2026' })).toEqual([
      { ...base, entry: 'treatment', active_ingredient: 'thymol', end_date: '6/10/2026' },
      { ...base, colony: 'LB-02', entry: 'treatment', active_ingredient: 'oxalic acid', end_date: '6/10/2026' },
    ]);
    expect(['', '6/10/2026', '2026-06-10', '13/45/2026', 'June'].map((until) => untilTrouble({ ...freshSheet.wide, until }, 'month-first')?.slice(0, 30) ?? null)).toEqual([null, null, null, '“13/45/2026” is no day until w', '“June” is no day until which t']);
    expect(refusals({ 1: { treat: 'y' } })).toEqual([['treat', expect.stringContaining('Treated with what?')]]);
    expect(refusals({ 1: { treat: 'xy' } })).toEqual([['treat', expect.stringContaining('too short')]]);
  });

  test('hours, people and miles are one entry of work after the colonies; empty makes none', () => {
    expect(rowsOf({ 1: { bees: '4' } }, { hours: '1,5', people: '2', miles: '24' }).at(-1)).toEqual({ date: '2026-05-18', entry: 'work', yard: 'LB', hours: '1.5', people: '2', miles: '24', task: 'round' });
    expect(rowsOf({}, { miles: '24' })).toHaveLength(1);
    expect(rowsOf({}, { hours: '17:30-20:15', people: '2' })).toEqual([{ date: '2026-05-18', entry: 'work', yard: 'LB', hours: '2.75', people: '2', note: '17:30 to 20:15', task: 'round' }]);
    expect(rowsOf({}, { hours: '90 min', miles: '38 km' })).toMatchObject([{ hours: '1.5', miles: '23.6' }]);
    expect(workTrouble({ ...freshSheet.wide, hours: '999' })).toContain('more hours than a day has');
    expect(rowsOf({ 1: { bees: '4' } })).toHaveLength(1);
    for (const wide of [{ hours: 'two' }, { people: '0', hours: '1' }, { people: '2' }, { miles: 'far' }, { hours: '999' }, { miles: '99999' }]) expect(workTrouble({ ...freshSheet.wide, ...wide }), JSON.stringify(wide)).not.toBeNull();
    expect(placeFaults([{ line: 1, column: 'hours', value: '', sentence: 'No.' }], composeRound(sheetOf({ 1: { bees: '4' } }, { hours: '1' })).sources)).toEqual([]);
  });

  test('what was done of the whole yard goes into the same entry of work, or makes one', () => {
    const also = withAlsoDone(withAlsoDone('', 'entrances reduced', true), 'hives wrapped', true);
    expect(withAlsoDone(also, 'entrances reduced', false)).toBe('hives wrapped');
    expect(composeRound(sheetOf({}, { also })).title).toBe('Work at Larch Bend');
    expect(rowsOf({}, { also, hours: '2' })).toEqual([{ date: '2026-05-18', entry: 'work', yard: 'LB', hours: '2', task: 'round; entrances reduced; hives wrapped' }]);
    expect(rowsOf({}, { also, people: '2' })).toEqual([{ date: '2026-05-18', entry: 'work', yard: 'LB', people: '2', task: 'entrances reduced; hives wrapped' }]);
    const draft = { ...freshSheet, wide: { ...freshSheet.wide, also } };
    expect([draftIsEmpty(draft), withoutSent(draft, draft, []).wide.also]).toEqual([false, '']);
  });

  test('every row of every kind fits its form', () => {
    const wide = { feed: 'fondant', tare: '10', ingredient: 'thymol', hours: '1' } as const;
    const all: TypedRow = { bees: '8', queen: 'q', cells: 'sw', mites: '2', feed: '5', supersOn: '1m', supersOff: '1m', full: '30', moisture: '18', lot: 'L', weight: '60', treat: 'y', note: 'n' };
    const acts: TypedRow[] = [
      { act: 'x' }, { act: 'sp', newLabel: 'LB-09', oldQueen: 'm', newQueen: 'w', splitBees: '3', splitBrood: '2', splitStores: '1', toYard: 'NS', queenYear: '2026', queenSource: 'own' },
      { act: 'rq', queenYear: '2026', queenSource: 'Kestrel', supplier: 'Sandel Road Bees' }, { act: 'cb', into: 'LB-02' },
    ];
    for (const act of acts) {
      const rows = rowsOf({ 1: { ...all, ...act } }, wide);
      expect(rows.length).toBe(10);
      for (const row of rows) {
        const form = entryForms[row.entry as Kind];
        const allowed = new Set<string>(['date', 'entry', 'note', ...form.must, ...form.may]);
        for (const column of columns) if (row[column] !== undefined) expect(allowed, `${row.entry} ${column}`).toContain(column);
        for (const must of form.must) expect(row[must], `${row.entry} ${must}`).toBeTruthy();
      }
    }
  });
});

describe('acts in the row', () => {
  test('come after what was seen, with their few fields', () => {
    expect(rowsOf({ 1: { bees: '9', act: 'sp', newLabel: 'LB-15', oldQueen: 's', newQueen: 'walk', splitBees: '3', splitBrood: '2', note: 'two frames with eggs' } })).toEqual([
      { ...base, entry: 'inspection', frames_bees: '9', note: 'two frames with eggs' },
      { ...base, entry: 'split', new_colony: 'LB-15', queen: 'stays', new_queen: 'walk-away', frames_bees: '3', frames_brood: '2' },
    ]);
    expect(rowsOf({ 1: { act: 'rq', queenYear: '2026', queenSource: 'Kestrel', supplier: 'Sandel Road Bees', note: 'laid at once' } })).toEqual([
      { ...base, entry: 'requeen', queen_year: '2026', queen_source: 'Kestrel', supplier: 'Sandel Road Bees', note: 'laid at once' },
    ]);
    expect(rowsOf({ 1: { bees: '2', act: 'cb', into: 'LB-02' } }).map(({ entry }) => entry)).toEqual(['inspection', 'combine']);
  });

  test('what an act needs is asked for, and what belongs to none is not dropped', () => {
    expect(refusals({ 1: { act: 'split' } })).toEqual([['newLabel', 'Split: which label does the new colony get?']]);
    expect(refusals({ 1: { act: 'cb' } })).toEqual([['into', 'Combined: into which colony?']]);
    expect(refusals({ 1: { act: 'rq' } })).toEqual([]);
    expect(refusals({ 1: { act: 'rq', into: 'LB-02' } })).toEqual([['into', expect.stringContaining('“combined into”')]]);
    expect(refusals({ 1: { newLabel: 'LB-15' } })).toEqual([['newLabel', expect.stringContaining('no act')]]);
    expect(refusals({ 1: { act: 'sp; x' } })).toEqual([['act', expect.stringContaining('stands alone')]]);
  });

  test('an act is told from a cause, never guessed', () => {
    expect(readCell('act', 's', plainSetting)).toMatchObject({ state: 'refused', sentence: '“s” could be starvation or split. Type another letter.' });
    expect(readCell('act', 'co', plainSetting)).toMatchObject({ state: 'refused', sentence: '“co” could be cold or combined. Type another letter.' });
    for (const [typed, value] of [['sp', 'split'], ['st', 'starvation'], ['cb', 'combined'], ['re', 'requeened'], ['ro', 'robbing']] as const) expect(readCell('act', typed, plainSetting)).toEqual({ state: 'read', value });
  });

  test('a refusal of the desk comes back to the field it is about', () => {
    const { sources } = composeRound(sheetOf({ 1: { bees: '9', act: 'sp', newLabel: 'LB-02', toYard: 'XX', splitBees: '3' } }));
    const fault = (column: string) => ({ line: 1, column, value: '', sentence: 'No.' });
    expect(placeFaults([fault('new_colony'), fault('to_yard'), fault('frames_bees'), fault('colony')], sources).map(({ column }) => column)).toEqual(['newLabel', 'toYard', 'splitBees', 'act']);
  });
});

test('one line says what was entered', () => {
  expect(enteredLine(composeRound(sheetOf({ 1: { bees: '8', mites: '3' }, 2: { act: 'x' } }, { hours: '1' })))).toBe('Round at Larch Bend, 2 colonies: 1 inspection, 1 mite count, 1 loss, 1 entry of work.');
});

describe('short marks', () => {
  test('the standard ones do not clash, and q and sw work', () => {
    expect(markTrouble(standardMarks)).toBeNull();
    expect(readCell('queen', 'q', plainSetting)).toEqual({ state: 'read', value: 'yes' });
    expect(readCell('cells', 'sw', plainSetting)).toEqual({ state: 'read', value: 'swarm' });
    expect(readCell('eggs', 'q', plainSetting).state).toBe('refused');
    expect(runsOn('queen', 'y', 'q', plainSetting)).toBe(true);
  });

  test('changed ones take the place of the standard ones; words still work', () => {
    const setting = { ...plainSetting, marks: marksFrom({ yes: 'j', swarm: 'z', split: 't', medium: 'h' }) };
    expect(markTrouble(setting.marks)).toBeNull();
    expect(readCell('eggs', 'j', setting)).toEqual({ state: 'read', value: 'yes' });
    expect(readCell('eggs', 'yes', setting)).toEqual({ state: 'read', value: 'yes' });
    expect(readCell('cells', 'z', setting)).toEqual({ state: 'read', value: 'swarm' });
    // Without its mark a lone s could be two kinds of cells.
    expect(readCell('cells', 's', setting).state).toBe('refused');
    expect(readCell('act', 't', setting)).toEqual({ state: 'read', value: 'split' });
    expect(readCell('supersOn', '2h', setting)).toEqual({ state: 'read', value: '2 medium' });
    expect(runsOn('eggs', 'j', 'n', setting)).toBe(true);
  });

  test.each([
    [{ no: 'y' }, 'Under Eggs and queen seen, “y” would mean both yes and no.'],
    [{ supersedure: 's' }, '“s” would mean both swarm and supersedure'],
    [{ split: 'cold' }, '“cold” is the word for something else'],
    [{ yes: 'f' }, 'Under Feed, “f” would mean both yes and fondant'],
    [{ fondant: 'gal' }, '“gal” is the word for something else'],
    [{ deep: '2' }, 'looks like a number'], [{ yes: '' }, '1 to 8 small letters'], [{ yes: 'a b' }, 'means something else'], [{ yes: 'Y' }, 'small letters'], [{ yes: 'abcdefghi' }, '1 to 8'],
  ])('%j is refused with a sentence', (changed, sentence) => {
    expect(markTrouble(marksFrom(changed))?.sentence).toContain(sentence);
  });

  test('shallow boxes and swarm cells may share a mark: they are never in one cell', () => {
    expect(standardMarks.shallow).toBe(standardMarks.swarm);
  });

  test('the sheet lists the marks of its own columns', () => {
    const listed = (columns: Parameters<typeof legendOf>[0]) => legendOf(columns, marksFrom({ lost: 'k' })).map(([mark]) => mark);
    expect(listed(['bees', 'act'])).toEqual(['k', 'sp rq cb', 'empty']);
    expect(listed(standardColumns.inspection)).toEqual(['y n', 'q', 's su e -', 'k', 'sp rq cb', 'empty']);
  });
});

describe('columns of a sheet', () => {
  test('every kind has its own, in the sheet’s order, with acts and a note', () => {
    for (const kind of roundKinds) {
      expect(inSheetOrder(standardColumns[kind])).toEqual(standardColumns[kind]);
      expect(standardColumns[kind]).toEqual(expect.arrayContaining(['act', 'note']));
    }
    expect(new Set(roundKinds.flatMap((kind) => standardColumns[kind]))).toEqual(new Set(roundColumns));
  });

  test('a column with typing on it stays on the sheet', () => {
    expect(columnsShown(['bees', 'note'], { 3: { feed: '1' }, 4: { feed: ' ', lot: '' } })).toEqual(['bees', 'feed', 'note']);
  });
});

describe('drafts of every kind', () => {
  test('a draft of the first sheets, with a column for losses and two sheet-wide values, comes back', () => {
    const old = readDraft('{"form":1,"typed":{"3":{"bees":"5","lost":"x"}},"wide":{"sample":"250","method":""},"labels":{},"kept":[]}');
    expect(old).toEqual({ ...freshSheet, typed: { 3: { bees: '5', act: 'x' } }, wide: { ...freshSheet.wide, sample: '250' } });
  });

  test('hours alone are a draft, and go off the sheet with the round that they were entered with', () => {
    const draft = { ...freshSheet, wide: { ...freshSheet.wide, hours: '2', lot: 'A-1' } };
    expect(draftIsEmpty(draft)).toBe(false);
    expect(readDraft(writeDraft(draft))).toEqual(draft);
    expect(withoutSent(draft, draft, []).wide).toEqual({ ...freshSheet.wide, lot: 'A-1' });
    expect(withoutSent({ ...draft, wide: { ...draft.wide, hours: '3' } }, draft, []).wide.hours).toBe('3');
  });
});
