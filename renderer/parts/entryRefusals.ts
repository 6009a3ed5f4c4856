import { fields, kinds, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import type { Fault } from '#shared/faults.ts';
import { columnsOf } from './entryColumns.ts';
import { entryWords } from './entryWords.ts';

/** What was refused, by the column it names. */
export type Refusals = Partial<Record<Column, string>>;

/** Each refusal at the field it names; what names none the form shows stands above the button. */
export function refusalsOf(fault: Fault, rows: readonly Cells[], kind: Kind): { byColumn: Refusals; rest: Fault | undefined; first: Column | undefined } {
  const byColumn: Refusals = {};
  const told = new Map<Column, Map<string, string[]>>();
  const shown: readonly string[] = ['date', ...columnsOf(kind)];
  const elsewhere: string[] = [];
  let first: Column | undefined;
  for (const refused of fault.rows ?? []) {
    const label = rows.length > 1 ? rows[refused.line]?.colony : undefined;
    const column = shown.includes(refused.column ?? '') ? (refused.column as Column) : undefined;
    if (column === undefined) {
      elsewhere.push(label === undefined ? refused.sentence : entryWords.atColony(label, refused.sentence));
      continue;
    }
    first ??= column;
    const here = told.get(column) ?? new Map<string, string[]>();
    told.set(column, here.set(refused.sentence, [...(here.get(refused.sentence) ?? []), ...(label === undefined ? [] : [label])]));
  }
  for (const [column, sentences] of told) byColumn[column] = [...sentences].map(([sentence, labels]) => (labels.length === 0 || labels.length === rows.length ? sentence : entryWords.atColony(labels.join(', '), sentence))).join(' ');
  if (first !== undefined && elsewhere.length === 0) return { byColumn, rest: undefined, first };
  const rest: Fault = elsewhere.length > 0 ? { ok: false, code: fault.code, sentence: elsewhere.join(' ') } : fault;
  return { byColumn, rest, first };
}

/** A kept draft of the form; null if the text is none (an older or damaged one is simply not restored). */
export function readDraft(body: string): { kind: Kind; cells: Cells } | null {
  try {
    const kept: unknown = JSON.parse(body);
    if (typeof kept !== 'object' || kept === null || !('kind' in kept) || !('cells' in kept)) return null;
    const kind = kinds.find((known) => known === kept.kind);
    if (kind === undefined || typeof kept.cells !== 'object' || kept.cells === null) return null;
    const cells: Cells = {};
    for (const [column, value] of Object.entries(kept.cells)) {
      if (typeof value === 'string' && (column === 'date' || column in fields)) cells[column as Column] = value;
    }
    return { kind, cells };
  } catch {
    return null;
  }
}
