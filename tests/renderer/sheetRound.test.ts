import { describe, expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import { columns, entryForms, type Kind } from '#shared/entryForms.ts';
import { withCell, type Typed, type TypedRow } from '../../renderer/screens/tonight/sheetColumns.ts';
import { freshSheet } from '../../renderer/screens/tonight/sheetDraft.ts';
import { plainSetting, type SheetSetting } from '../../renderer/screens/tonight/sheetSetting.ts';
import { composeRound, filledRows, placeFaults, remarksOn, writtenOut, type RoundSheet } from '../../renderer/screens/tonight/sheetRound.ts';

const colony = (id: number) => ({ colony: id as ColonyId, label: `LB-0${id}` });

function sheetOf(typed: Record<number, TypedRow>, wide: Partial<RoundSheet['wide']> = {}, setting: SheetSetting = plainSetting): RoundSheet {
  return {
    yard: { code: 'LB', name: 'Larch Bend' },
    day: day('2026-05-18'),
    colonies: [colony(1), colony(2), colony(3)],
    typed: typed as Typed,
    wide: { ...freshSheet.wide, ...wide },
    setting,
    kind: 'inspection',
  };
}

const base = { date: '2026-05-18', yard: 'LB' };

describe('composing a round', () => {
  test('one inspection a colony, note with it, marks written out', () => {
    const round = composeRound(sheetOf({ 1: { bees: '8', brood: '5,5', stores: '2', eggs: 'y', queen: 'n', cells: 's', temper: '2', note: 'cells on two frames' } }));
    expect(round.rows).toEqual([
      {
        ...base, entry: 'inspection', colony: 'LB-01', frames_bees: '8', frames_brood: '5.5', frames_stores: '2', eggs: 'yes', queen_seen: 'no',
        queen_cells: 'swarm', temper: '2', note: 'cells on two frames',
      },
    ]);
    expect(round.title).toBe('Round at Larch Bend, 1 colony');
  });

  test('more mites than bees are refused before the desk would, and not asked about', () => {
    const said = (mites: string) => remarksOn(sheetOf({ 1: { mites } })).map(({ column, state, sentence }) => [column, state, sentence]);
    expect(said('301')).toEqual([['mites', 'refused', '301 mites in a sample of 300 bees: check whether the two figures changed places.']]);
    expect(said('300').map(([, state]) => state)).toEqual(['question']);
  });

  test('mites bring a mite count with the sheet’s sample, or the row’s own', () => {
    const round = composeRound(sheetOf({ 1: { mites: '4' }, 2: { mites: '0', sample: '250' } }, { method: 'sugar roll' }));
    expect(round.rows).toEqual([
      { ...base, entry: 'mites', colony: 'LB-01', mites: '4', bees: '300', method: 'sugar roll' },
      { ...base, entry: 'mites', colony: 'LB-02', mites: '0', bees: '250', method: 'sugar roll' },
    ]);
  });

  test('the loss comes after what was seen that day', () => {
    const round = composeRound(sheetOf({ 2: { stores: '0', mites: '9', act: 'starv; mites', note: 'cluster head first in cells' }, 3: { bees: '5' } }));
    expect(round.rows.map((row) => [row.colony, row.entry])).toEqual([['LB-02', 'inspection'], ['LB-02', 'mites'], ['LB-02', 'loss'], ['LB-03', 'inspection']]);
    expect(round.rows[2]).toEqual({ ...base, entry: 'loss', colony: 'LB-02', cause: 'starvation; mites' });
    expect(round).toMatchObject({ colonies: 2, lost: 1, title: 'Round at Larch Bend, 2 colonies' });
  });

  test('a note goes with the inspection, else the loss, else the mite count, else alone; never twice', () => {
    const kindOfNote = (row: TypedRow) => composeRound(sheetOf({ 1: { ...row, note: 'see this' } })).rows.filter((sent) => sent.note === 'see this').map((sent) => sent.entry);
    expect(kindOfNote({ bees: '3', mites: '1', act: 'x' })).toEqual(['inspection']);
    expect(kindOfNote({ mites: '1', act: 'x' })).toEqual(['loss']);
    expect(kindOfNote({ mites: '1' })).toEqual(['mites']);
    expect(kindOfNote({})).toEqual(['note']);
  });

  test('sends only what each kind of entry may have, and all that it must have', () => {
    const full: TypedRow = { bees: '8', brood: '5', stores: '2', eggs: 'y', queen: 'y', cells: '-', temper: '1', mites: '2', sample: '320', act: 'x', note: 'n' };
    for (const row of composeRound(sheetOf({ 1: full, 2: { note: 'alone' } }, { method: 'alcohol wash' })).rows) {
      const form = entryForms[row.entry as Kind];
      const allowed = new Set<string>(['date', 'entry', 'note', ...form.must, ...form.may]);
      for (const column of columns) if (row[column] !== undefined) expect(allowed, `${row.entry} ${column}`).toContain(column);
      for (const must of form.must) expect(row[must], `${row.entry} ${must}`).toBeTruthy();
    }
  });

  test('untouched and cleared rows send nothing', () => {
    expect(composeRound(sheetOf({ 1: {}, 2: { bees: '  ' } })).rows).toEqual([]);
    expect(filledRows(sheetOf({ 1: { bees: ' ' }, 2: { note: 'a' } }))).toBe(1);
    const typed = withCell(withCell({}, 1, 'bees', '4'), 1, 'bees', '');
    expect(typed).toEqual({});
  });
});

test('marks are written out, notes and what cannot be read stay as typed', () => {
  const typed = { 1: { bees: '5,5', cells: 's', act: 'x', note: ' y ', temper: '9', eggs: ' ' }, 2: { eggs: ' ' } };
  expect(writtenOut(typed, plainSetting)).toEqual({ 1: { bees: '5.5', cells: 'swarm', act: 'unknown', note: ' y ', temper: '9' } });
  const plain = { 1: { bees: '5', note: 'a' } };
  expect(writtenOut(plain, plainSetting)).toBe(plain);
});

describe('remarks on a sheet', () => {
  test('stand in sheet order with their cell', () => {
    const remarks = remarksOn(sheetOf({ 3: { bees: 'many' }, 1: { temper: '9', brood: '12' } }));
    expect(remarks.map(({ colony: id, column, state }) => [id, column, state])).toEqual([[1, 'brood', 'question'], [1, 'temper', 'refused'], [3, 'bees', 'refused']]);
  });

  test('ask about cells that do not fit together', () => {
    expect(remarksOn(sheetOf({ 1: { bees: '4', brood: '7' } }))[0]).toMatchObject({ column: 'brood', state: 'question', sentence: expect.stringContaining('7 frames of brood under 4') });
    expect(remarksOn(sheetOf({ 1: { bees: '4', act: 'x' } }))[0]).toMatchObject({ column: 'act', state: 'question' });
    expect(remarksOn(sheetOf({ 1: { bees: '0', act: 'x' } }))).toEqual([]);
    expect(remarksOn(sheetOf({ 1: { queen: 'y', act: 'x' } }))[0]).toMatchObject({ column: 'act', state: 'question' });
    expect(remarksOn(sheetOf({ 1: { mites: '60' } }))).toEqual([]);
    expect(remarksOn(sheetOf({ 1: { mites: '61' } }))[0]).toMatchObject({ column: 'mites', state: 'question', sentence: expect.stringContaining('61 mites in 300 bees') });
  });

  test('a sample alone is refused: it would otherwise be lost', () => {
    expect(remarksOn(sheetOf({ 1: { sample: '300' } }))[0]).toMatchObject({ column: 'sample', state: 'refused' });
  });

  test('mites without any sample size are refused; the row’s own size mends it', () => {
    expect(remarksOn(sheetOf({ 1: { mites: '3' } }, { sample: '' }))[0]).toMatchObject({ column: 'mites', state: 'refused' });
    expect(remarksOn(sheetOf({ 1: { mites: '3' } }, { sample: 'lots' }))[0]).toMatchObject({ column: 'mites', state: 'refused' });
    expect(remarksOn(sheetOf({ 1: { mites: '3', sample: '300' } }, { sample: '' }))).toEqual([]);
    expect(remarksOn(sheetOf({ 1: { mites: '3', sample: 'lots' } }))).toEqual([expect.objectContaining({ column: 'sample', state: 'refused' })]);
  });
});

describe('refusals of the desk', () => {
  const { sources } = composeRound(sheetOf({ 1: { bees: '8' }, 2: { eggs: 'y', mites: '3', act: 'cold', note: 'n' } }));
  const fault = (line: number, column: string | null) => ({ line, column, value: '', sentence: 'No.' });

  test('come back to the row and cell they were made of', () => {
    expect(placeFaults([fault(0, 'frames_bees'), fault(1, 'eggs'), fault(1, 'note'), fault(2, 'mites'), fault(3, 'cause')], sources)).toEqual([
      { colony: 1, column: 'bees', state: 'refused', sentence: 'No.' },
      { colony: 2, column: 'eggs', state: 'refused', sentence: 'No.' },
      { colony: 2, column: 'note', state: 'refused', sentence: 'No.' },
      { colony: 2, column: 'mites', state: 'refused', sentence: 'No.' },
      { colony: 2, column: 'act', state: 'refused', sentence: 'No.' },
    ]);
  });

  test('about the whole row go to its first typed cell', () => {
    expect(placeFaults([fault(3, 'colony'), fault(2, null), fault(2, 'bees')], sources).map((remark) => remark.column)).toEqual(['act', 'mites', 'mites']);
  });

  test('about no row of the sheet are left to the head sentence', () => {
    expect(placeFaults([fault(99, null)], sources)).toEqual([]);
  });
});
