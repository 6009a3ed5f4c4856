import type { Cells } from '#shared/entryForms.ts';
import { dayText } from './calendar.ts';
import { rowKey, type DemoAct } from './demoOperation.ts';

/** A place in the journal that can be struck later. */
export interface WrittenRow {
  readonly act: object;
  readonly row: number;
}

interface Pending {
  readonly day: number;
  /** Minutes after midnight wished for. */
  readonly minute: number;
  readonly title: string;
  readonly rows: readonly Cells[];
  readonly strike: WrittenRow | null;
  readonly reason: string;
}

/** The evening desk: gathers what is entered and when, and gives it back in the order of entering. */
export class EntryDesk {
  readonly #pending: Pending[] = [];
  readonly #keys = new Set<string>();

  /** True when a row with exactly these cells was entered before. */
  knows(row: Cells): boolean {
    return this.#keys.has(rowKey(row));
  }

  /** Throws a RangeError when a row is equal in every cell to an earlier one. */
  enter(day: number, minute: number, title: string, rows: readonly Cells[]): object {
    for (const row of rows) {
      const key = rowKey(row);
      if (this.#keys.has(key)) throw new RangeError(`entered twice: ${key.replaceAll('\u001f', ',')}`);
      this.#keys.add(key);
    }
    const act = { day, minute, title, rows, strike: null, reason: '' };
    this.#pending.push(act);
    return act;
  }

  strike(day: number, minute: number, title: string, row: WrittenRow, reason: string): void {
    this.#pending.push({ day, minute, title, rows: [], strike: row, reason });
  }

  /** All acts by time of entering; two wished for the same minute follow each other a minute apart. */
  acts(lastDay: number): DemoAct[] {
    const inOrder = this.#pending
      .filter((act) => act.day <= lastDay)
      .sort((one, other) => one.day - other.day || one.minute - other.minute);
    const places = new Map<object, number>(inOrder.map((act, index) => [act, index]));
    let clock = { day: 0, minute: 0 };
    return inOrder.map(({ day, minute, title, rows, strike, reason }) => {
      const next = day === clock.day ? Math.max(minute, clock.minute + 1) : minute;
      clock = { day, minute: next };
      const at = `${dayText(day)} ${String(Math.floor(next / 60)).padStart(2, '0')}:${String(next % 60).padStart(2, '0')}`;
      if (strike === null) return { at, title, rows };
      const act = places.get(strike.act);
      if (act === undefined) throw new RangeError('a row was struck that was never entered');
      return { at, title, strike: { act, row: strike.row }, reason };
    });
  }
}
