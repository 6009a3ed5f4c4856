import { leftOut, type SheetMapping, type SheetQuestion } from '#shared/contract/sheets.ts';
import { entryForms, fields, type Column } from '#shared/entryForms.ts';
import { dataOf, findings, isQuantity } from './findings.ts';
import { splitUnit } from './readNumbers.ts';
import type { Sheet } from './sheet.ts';

/**
 * What has to be decided by a person before the sheet can be read: nothing here is ever decided by default, and no
 * filled column goes unread without their word. Empty when all is said.
 */
export function openQuestions(sheet: Sheet, mapping: SheetMapping): SheetQuestion[] {
  const questions: SheetQuestion[] = [];
  const ask = (about: SheetQuestion['about'], sentence: string, header: string | null = null, column: Column | null = null) => questions.push({ about, header, column, sentence });
  const targets = new Map<Column, string>();
  const byColumn = mapping.columns.some(({ becomes }) => becomes === 'entry');
  if (mapping.kind === null && !byColumn) ask('kind', 'Say what kind of record each row is.');
  mapping.columns.forEach(({ header, becomes, unit }, at) => {
    const filled = dataOf(sheet, at);
    if (becomes === null) {
      if (filled.length > 0) ask('column', `Say what “${header}” becomes, or leave it out.`, header);
      return;
    }
    if (becomes === leftOut) return;
    const before = targets.get(becomes);
    if (before !== undefined && becomes !== 'note') ask('twice', `“${before}” and “${header}” would become the same. Choose another for one of them, or leave it out.`, header, becomes);
    targets.set(becomes, header);
    if (isQuantity(becomes) && unit === null && filled.some((cell) => splitUnit(cell.text).unit === null) && !says(mapping, 'unit')) {
      ask('unit', `Say which unit the figures of “${header}” have.`, header, becomes);
    }
  });
  if (mapping.kind !== null) {
    for (const column of ['date', ...entryForms[mapping.kind].must] as const) {
      if (column === 'unit' && mapping.columns.some(({ becomes }) => becomes !== null && isQuantity(becomes))) continue;
      if (!says(mapping, column)) ask('missing', `No column says ${column === 'date' ? 'the day' : `“${fields[column as Exclude<Column, 'date' | 'entry'>].label}”`}. Choose one, or write what holds for every row.`, null, column);
    }
  }
  const found = findings(sheet, mapping);
  if (mapping.dateOrder === null && found.days !== 'none' && found.days !== 'clear') {
    ask('dates', found.days === 'mixed' ? 'Some days can only be month first, and others only day first. Say which holds; the others go to the rows to sort out.' : 'Every day can be read month first and day first. Say which it is.');
  }
  if (mapping.decimal === null && found.decimal !== 'none') {
    ask('decimal', found.decimal === 'mixed' ? 'Some figures have a decimal comma, and others a decimal point. Say which holds; the others go to the rows to sort out.' : 'Figures such as 1,250 can be thousands or decimals. Say which sign parts the decimals.');
  }
  return questions;
}

function says(mapping: SheetMapping, column: Column): boolean {
  return (mapping.fixed[column] ?? '').trim() !== '' || mapping.columns.some(({ becomes }) => becomes === column);
}
