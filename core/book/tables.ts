import type { Generated } from 'kysely';

/** Row types of the book's tables; domain types differ, and each table has one converter. */
export interface Tables {
  meta: { key: string; value: string };
  gesture: { id: Generated<number>; at: string; kind: string; title: string; undoes: number | null };
  yard: { id: number; code: string; name: string; room: number | null; minutes: number | null };
  yard_detail: { yard_id: number; access: string | null; notes: string | null; registration: string | null; renewal: string | null };
  stand: { yard_id: number; colony_id: number; place: number };
  entry: { id: number; gesture_id: number; day: string; place: number; kind: string; body: string; replaces: number | null };
  mark: { id: Generated<number>; entry_id: number; gesture_id: number; what: string; reason: string };
  draft: { key: string; body: string };
  house_rule: { key: string; value: string };
  paper: { kind: string; key: string; body: string };
  /** Projections: always rebuildable from entries and marks. */
  struck: { entry_id: number; mark_id: number };
  colony_entry: { colony_id: number; entry_id: number };
  colony: {
    id: number;
    label: string;
    yard_id: number;
    origin: string;
    start_day: string;
    end_day: string | null;
    how: string;
    state: string;
  };
}

export const projections = ['struck', 'colony_entry', 'colony'] as const;
