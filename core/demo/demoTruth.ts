import type { LedgerRow } from '#shared/contract/losses.ts';
import type { Ending } from '#shared/contract/values.ts';
import type { Day } from '#shared/days.ts';
import type { AutumnTruth } from './simulatedColony.ts';

/** What is true of an invented operation, counted while it was simulated and not by reading its rows. */
export interface DemoTruth {
  /** Colonies alive after the last day. */
  readonly living: number;
  /** Season and yard, where anything stood or happened; in order of season, then yard code. */
  readonly ledger: readonly LedgerRow[];
  readonly winters: readonly WinterTruth[];
  readonly colonies: readonly ColonyTruth[];
  /** Pounds of honey put on the scale for whole yards, by season and yard. */
  readonly yardHoneyLb: readonly { readonly season: number; readonly yard: string; readonly lb: number }[];
}

export interface WinterTruth {
  readonly season: number;
  readonly aliveOn1October: number;
  /** Lost from 1 October to 31 March by the day on which they were found. */
  readonly lost: number;
  readonly complete: boolean;
}

export interface ColonyTruth {
  readonly label: string;
  readonly origin: string;
  readonly yard: string;
  readonly start: Day;
  readonly end: Day | null;
  readonly how: Ending;
  /** Pounds weighed for this colony, by season. */
  readonly honeyLb: Readonly<Record<string, number>>;
  readonly autumns: readonly AutumnTruth[];
}

type Counted = Exclude<keyof LedgerRow, 'season' | 'yard'>;

/** Counts what happens in each season and yard at the moment it happens. */
export class LedgerTally {
  readonly #rows = new Map<string, { -readonly [Name in keyof LedgerRow]: LedgerRow[Name] }>();

  add(season: number, yard: string, what: Counted, times = 1): void {
    if (times === 0) return;
    const key = `${season}|${yard}`;
    let row = this.#rows.get(key);
    if (row === undefined) {
      row = {
        season, yard, opening: 0, packages: 0, nucs: 0, swarms: 0, splits: 0, boughtColonies: 0, movedIn: 0, movedOut: 0, sold: 0,
        given: 0, combined: 0, absconded: 0, lostSummer: 0, lostWinter: 0, closing: 0, aliveOn1October: 0,
      };
      this.#rows.set(key, row);
    }
    row[what] += times;
  }

  rows(): LedgerRow[] {
    return [...this.#rows.values()].sort((one, other) => one.season - other.season || (one.yard < other.yard ? -1 : 1));
  }
}
