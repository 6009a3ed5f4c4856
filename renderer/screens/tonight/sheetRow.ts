import { ordinary, readCell, type Reading } from './sheetCell.ts';
import { columnKeys, type ColumnKey, type TypedRow } from './sheetColumns.ts';
import { words } from './words.ts';

export type RowReadings = Readonly<Record<ColumnKey, Reading>>;

/** What holds for the whole sheet: bees in a mite sample where the row does not say, and how they were washed. */
export interface SheetWide {
  readonly sample: string;
  /** '' when not said. */
  readonly method: '' | 'alcohol wash' | 'sugar roll';
}

/** Reads one colony's row, each cell and then what the cells say together. */
export function readRow(row: Readonly<TypedRow>, wide: SheetWide): RowReadings {
  const read = Object.fromEntries(columnKeys.map((key) => [key, readCell(key, row[key] ?? '')])) as Record<ColumnKey, Reading>;
  read.brood = askIf(read.brood, broodBeyondBees(read));
  read.lost = askIf(read.lost, lostYetAlive(read));
  if (read.mites.state === 'read') {
    const sample = sampleOf(read.sample, wide);
    if (sample.state === 'refused') {
      if (read.sample.state === 'empty') read.mites = { state: 'refused', sentence: words.refused.noSample };
    } else if (sample.state === 'read') {
      const [mites, bees] = [Number(read.mites.value), Number(sample.value)];
      const many = mites * 100 > ordinary.mitesPer100 * bees;
      read.mites = askIf(read.mites, many ? words.question.mites(String(mites), String(bees)) : null);
    }
  } else if (read.mites.state === 'empty' && read.sample.state === 'read') {
    read.sample = { state: 'refused', sentence: words.refused.sampleAlone };
  }
  return read;
}

/** The sample that a mite count of this row stands on: the row's own, else the sheet's; refused when neither says. */
export function sampleOf(own: Reading, wide: SheetWide): Reading {
  if (own.state !== 'empty') return own;
  const sheet = readCell('sample', wide.sample);
  return sheet.state === 'empty' ? { state: 'refused', sentence: words.refused.noSample } : sheet;
}

function broodBeyondBees(read: RowReadings): string | null {
  if (read.bees.state !== 'read' || read.brood.state !== 'read') return null;
  return Number(read.brood.value) > Number(read.bees.value) ? words.question.broodBeyondBees(read.brood.value, read.bees.value) : null;
}

function lostYetAlive(read: RowReadings): string | null {
  if (read.lost.state !== 'read') return null;
  if (read.bees.state === 'read' && Number(read.bees.value) > 0) return words.question.lostYetBees(read.bees.value);
  const seen = [read.eggs, read.queen].some((cell) => cell.state === 'read' && cell.value === 'yes');
  return seen ? words.question.lostYetSeen : null;
}

function askIf(reading: Reading, question: string | null): Reading {
  if (question === null || reading.state !== 'read' || reading.question !== undefined) return reading;
  return { ...reading, question };
}
