import { dayFromIso } from '#shared/days.ts';
import { entryForms, fields, type Cells, type Column, type Kind } from '#shared/entryForms.ts';

/** One row as it bears on one colony label. */
interface Happening {
  readonly date: string;
  readonly place: number;
  readonly role: 'begins' | 'named' | 'joined';
  readonly row: Cells;
}

/** One colony between its beginning and its end. */
export interface Life {
  readonly label: string;
  readonly start: string;
  readonly origin: string;
  readonly startYard: string;
  yard: string;
  end: string | null;
  how: string;
  readonly moves: { readonly date: string; readonly from: string; readonly to: string }[];
}

const endings: Partial<Record<string, string>> = { loss: 'lost', gift: 'given', absconded: 'absconded', combine: 'combined' };

/**
 * Checks rows against the exchange form's own promises, knowing nothing of how they were made: cells that a kind may
 * fill, labels that are alive on the date, one end, supers off at most those on. Rows may come in any order of dates.
 */
export class RecordChecker {
  readonly #byLabel = new Map<string, Happening[]>();
  #place = 0;

  /** Enters rows and answers what is wrong with the record now, in sentences. */
  enter(rows: readonly Cells[]): string[] {
    const faults = rows.flatMap(formFaults);
    const touched = new Set<string>();
    for (const row of rows) {
      this.#place += 1;
      for (const [label, role] of rolesIn(row)) {
        touched.add(label);
        const happenings = this.#byLabel.get(label) ?? [];
        happenings.push({ date: row.date ?? '', place: this.#place, role, row });
        this.#byLabel.set(label, happenings);
      }
    }
    for (const label of touched) faults.push(...this.#livesOf(label).faults);
    return faults;
  }

  strike(row: Cells): string[] {
    const faults: string[] = [];
    for (const [label] of rolesIn(row)) {
      const happenings = this.#byLabel.get(label) ?? [];
      const kept = happenings.filter((happening) => happening.row !== row);
      if (kept.length === happenings.length) faults.push(`${label}: nothing to strike`);
      this.#byLabel.set(label, kept);
      faults.push(...this.#livesOf(label).faults);
    }
    return faults;
  }

  lives(): Life[] {
    return [...this.#byLabel.keys()].flatMap((label) => this.#livesOf(label).lives);
  }

  #livesOf(label: string): { lives: Life[]; faults: string[] } {
    const happenings = (this.#byLabel.get(label) ?? []).toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.place - b.place));
    const lives: Life[] = [];
    const faults: string[] = [];
    let now: Life | null = null;
    let on = new Map<string, number>();
    for (const { date, role, row } of happenings) {
      const said = `${date} ${row.entry} ${label}`;
      if (role === 'begins') {
        if (now !== null) faults.push(`${said}: the label is alive`);
        // The yard of a split is the mother's; whether she stands there is checked under her own label.
        const yard = row.to_yard ?? row.yard ?? '?';
        now = { label, start: date, origin: row.entry === 'split' ? 'split' : (row.origin ?? '?'), startYard: yard, yard, end: null, how: 'alive', moves: [] };
        lives.push(now);
        on = new Map();
        continue;
      }
      if (now === null) {
        faults.push(`${said}: not alive on that day`);
        continue;
      }
      if (role === 'joined') continue;
      if (row.yard !== undefined && row.yard !== now.yard) faults.push(`${said}: stands in ${now.yard}, not in ${row.yard}`);
      const box = row.box ?? '';
      if (row.entry === 'supers on') on.set(box, (on.get(box) ?? 0) + Number(row.count));
      if (row.entry === 'supers off') {
        on.set(box, (on.get(box) ?? 0) - Number(row.count));
        if ((on.get(box) ?? 0) < 0) faults.push(`${said}: more off than on`);
      }
      if (row.entry === 'move') {
        now.moves.push({ date, from: now.yard, to: row.to_yard ?? '?' });
        now.yard = row.to_yard ?? '?';
      }
      const how = row.entry === 'sale' ? 'sold' : endings[row.entry ?? ''];
      if (how === undefined) continue;
      now.end = date;
      now.how = how;
      now = null;
    }
    return { lives, faults };
  }
}

function rolesIn(row: Cells): [string, Happening['role']][] {
  const roles: [string, Happening['role']][] = [];
  if (row.colony !== undefined) roles.push([row.colony, row.entry === 'install' ? 'begins' : 'named']);
  if (row.new_colony !== undefined) roles.push([row.new_colony, 'begins']);
  if (row.into !== undefined) roles.push([row.into, 'joined']);
  return roles;
}

function formFaults(row: Cells): string[] {
  const said = `${row.date} ${row.entry} ${row.colony ?? row.yard ?? ''}`;
  if (dayFromIso(row.date ?? '') === null) return [`${said}: bad date`];
  const form = entryForms[row.entry as Kind] as (typeof entryForms)[Kind] | undefined;
  if (form === undefined) return [`${said}: unknown kind`];
  const allowed = new Set<Column>(['date', 'entry', 'note', ...form.must, ...form.may]);
  const faults = form.must.filter((column) => (row[column] ?? '') === '').map((column) => `${said}: ${column} is missing`);
  for (const [column, value] of Object.entries(row) as [Column, string][]) {
    if (!allowed.has(column)) faults.push(`${said}: ${column} is not for this kind`);
    if (value === '') faults.push(`${said}: ${column} is there but empty`);
    if (column !== 'date' && column !== 'entry' && !fits(column, value)) faults.push(`${said}: ${column} reads ${value}`);
  }
  if (row.entry === 'combine' && row.into === row.colony) faults.push(`${said}: into itself`);
  if (row.entry === 'split' && row.new_colony === row.colony) faults.push(`${said}: into its own label`);
  if (row.entry === 'mites' && Number(row.mites) > Number(row.bees)) faults.push(`${said}: more mites than bees`);
  if (row.entry === 'harvest' && Number(row.gross) < Number(row.tare)) faults.push(`${said}: lighter full than empty`);
  if (row.end_date !== undefined && row.end_date < (row.date ?? '')) faults.push(`${said}: ends before it begins`);
  return faults;
}

function fits(column: Exclude<Column, 'date' | 'entry'>, value: string): boolean {
  const field = fields[column];
  const number = /^\d+(\.\d+)?$/.test(value) ? Number(value) : Number.NaN;
  switch (field.type) {
    case 'number':
      return number >= field.min && number <= (field.max ?? Infinity) && (field.whole !== true || Number.isInteger(number));
    case 'money':
      return /^\d+(\.\d{1,2})?$/.test(value);
    case 'year':
      return number >= 2015 && number <= 2026;
    case 'day':
      return dayFromIso(value) !== null;
    case 'yes-no':
      return value === 'yes' || value === 'no';
    case 'choice':
      return field.of.includes(value);
    case 'causes': {
      const parts = value.split('; ');
      return new Set(parts).size === parts.length && parts.every((part) => (causesKnown as readonly string[]).includes(part));
    }
    default:
      return value.trim() === value && value !== '';
  }
}

const causesKnown = [
  'starvation', 'mites', 'queen failure', 'weak in autumn', 'cold', 'moisture', 'robbing', 'pesticide', 'bear or vandal', 'flood', 'disease', 'unknown',
] as const;
