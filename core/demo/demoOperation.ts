import type { LotStep } from '#shared/contract/lots.ts';
import type { OfferBody } from '#shared/contract/offers.ts';
import type { WorkHours } from '#shared/contract/work.ts';
import type { Day } from '#shared/days.ts';
import { columns, type Cells, type Column, type Kind } from '#shared/entryForms.ts';
import { dayText } from './calendar.ts';

/** An invented operation: its yards and everything that was entered at its desk. */
export interface DemoOperation {
  readonly name: string;
  /** The day on which the book is looked at; nothing is dated later. */
  readonly lastDay: Day;
  readonly yards: readonly DemoYard[];
  /** In the order in which they were entered, `at` rising; rows may be dated earlier. */
  readonly acts: readonly DemoAct[];
  /** What sellers offer for the coming spring. */
  readonly offers?: readonly OfferBody[];
  /** What was done with the lots of honey at home, in the order of days. */
  readonly lots?: readonly LotStep[];
  /** When somebody can work, and minutes between yards by their codes. */
  readonly hours?: WorkHours;
  readonly ways?: readonly (readonly [string, string, number])[];
}

export interface DemoYard {
  readonly code: string;
  readonly name: string;
  /** Colonies it holds; null if not recorded. */
  readonly room: number | null;
  /** Minutes from home. */
  readonly minutes: number | null;
}

export interface EnteringAct {
  /** Local time at the desk, `YYYY-MM-DD HH:MM`. */
  readonly at: string;
  readonly title: string;
  readonly rows: readonly Cells[];
}

/** Takes one row of an earlier act out of the count: `act` is an index into `acts`, `row` into that act's rows. */
export interface StrikingAct {
  readonly at: string;
  readonly title: string;
  readonly strike: { readonly act: number; readonly row: number };
  readonly reason: string;
}

export type DemoAct = EnteringAct | StrikingAct;

/** The rows that were not struck, in the order in which they were entered: the journal as a file would hold it. */
export function standingRows(operation: DemoOperation): Cells[] {
  const struck = new Set<string>();
  for (const act of operation.acts) if ('strike' in act) struck.add(`${act.strike.act}/${act.strike.row}`);
  return operation.acts.flatMap((act, index) =>
    'rows' in act ? act.rows.filter((_row, place) => !struck.has(`${index}/${place}`)) : [],
  );
}

export type Values = { readonly [Name in Exclude<Column, 'date' | 'entry'>]?: string | number | null | undefined };

/** A row in the exchange form; what is null or undefined stays empty. */
export function entryRow(day: number, kind: Kind, values: Values): Cells {
  const cells: Cells = { date: dayText(day), entry: kind };
  for (const name of Object.keys(values) as (keyof Values)[]) {
    const value = values[name];
    if (value !== null && value !== undefined && value !== '') cells[name] = String(value);
  }
  return cells;
}

/** Equal for two rows exactly when every cell is equal. */
export function rowKey(row: Cells): string {
  return columns.map((column) => row[column] ?? '').join('\u001f');
}
