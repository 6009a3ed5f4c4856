import { leftOut, type SheetMapping, type Target } from '#shared/contract/sheets.ts';
import { columns, entryForms, fields, type Column } from '#shared/entryForms.ts';
import { words } from './words.ts';

const weighed: ReadonlySet<Target> = new Set(['gross', 'tare', 'weight']);

/** What a column can become while the rows are of that kind; all of the form where a column names the kind. */
export function targetsFor(mapping: SheetMapping): readonly Target[] {
  if (mapping.kind !== null) return unlike(['date', ...entryForms[mapping.kind].must, ...entryForms[mapping.kind].may, 'note', 'entry', leftOut]);
  if (mapping.columns.some(({ becomes }) => becomes === 'entry')) return [...columns, leftOut];
  return ['date', 'entry', 'yard', 'colony', 'note', leftOut];
}

export function targetName(target: Target): string {
  if (target === leftOut) return words.leaveOut;
  return columnName(target);
}

export function columnName(column: Column): string {
  return column === 'date' ? words.day : column === 'entry' ? words.kindOfRecord : fields[column].label;
}

export function unitsFor(target: Target | null): readonly ('lb' | 'kg' | 'gal' | 'l')[] {
  if (target === null) return [];
  return weighed.has(target) ? ['lb', 'kg'] : target === 'amount' ? ['gal', 'l', 'lb', 'kg'] : [];
}

/** Columns that every row needs and no header gives, and those already filled for all rows. */
export function sameForAll(mapping: SheetMapping): readonly Column[] {
  const mapped = new Set<Target | null>(mapping.columns.map(({ becomes }) => becomes));
  const withUnit = mapping.columns.some(({ becomes }) => unitsFor(becomes).length > 0);
  const must: readonly Column[] = mapping.kind === null ? [] : ['date', ...entryForms[mapping.kind].must];
  return unlike([...must.filter((column) => !mapped.has(column) && !(column === 'unit' && withUnit)), ...(Object.keys(mapping.fixed) as Column[]).filter((column) => !mapped.has(column))]);
}

function unlike<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}
