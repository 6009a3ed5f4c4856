import { dayFromTyped, type DateOrder } from '#shared/days.ts';
import type { Cells, Kind } from '#shared/entryForms.ts';
import type { RoundKind } from '#shared/roundSheets.ts';
import { feedUnit, readFeed, readSupers, readWeight, weightIn } from './sheetAmounts.ts';
import { columnKeys, fieldsOf, isActKey, sheetColumns, type Act, type ColumnEntry, type ColumnKey } from './sheetColumns.ts';
import { actOf, sampleOf, tareOf, wideAmount, type RowReadings, type SheetWide } from './sheetRow.ts';
import type { SheetSetting } from './sheetSetting.ts';
import { words } from './words.ts';
import { milesDriven, readWorkedTime, workedTime } from './workedTime.ts';

/** One entry of a row, and the cells it is made of. */
export interface RowEntry {
  readonly kind: Kind;
  readonly columns: readonly ColumnKey[];
  readonly cells: Cells;
}

/**
 * In the order of the work at a hive: what was seen, what was taken, what was given. The act comes last, so that the
 * day's look at a colony that is lost or combined still stands.
 */
const order: readonly Exclude<ColumnEntry, 'note'>[] = ['inspection', 'mites', 'stores', 'supers off', 'harvest', 'treatment', 'feed', 'supers on', 'act'];

const actKinds: Readonly<Record<Act, Kind>> = { split: 'split', requeened: 'requeen', combined: 'combine' };

/**
 * The entries of one row. A note goes with the inspection, else with the act, else with the first of the others, and is
 * an entry of its own only when it stands alone.
 */
export function entriesOfRow(read: RowReadings, wide: SheetWide, setting: SheetSetting): RowEntry[] {
  const made = order.flatMap((entry) => entriesFor(entry, read, wide, setting));
  if (read.note.state !== 'read') return made;
  if (made.length === 0) return [{ kind: 'note', columns: ['note'], cells: { note: read.note.value } }];
  const act = sheetColumns.act.entry;
  const holder = made.find(({ kind }) => kind === 'inspection') ?? made.find(({ columns }) => columns.some((key) => sheetColumns[key].entry === act)) ?? made[0];
  const { value } = read.note;
  return made.map((one) => (one === holder ? { ...one, columns: [...one.columns, 'note'], cells: { ...one.cells, note: value } } : one));
}

function entriesFor(entry: Exclude<ColumnEntry, 'note'>, read: RowReadings, wide: SheetWide, setting: SheetSetting): RowEntry[] {
  const columns = columnKeys.filter((key) => sheetColumns[key].entry === entry && read[key].state === 'read' && !isActKey(key));
  const plain = () => cellsOf(columns, read);
  const text = (key: ColumnKey) => (read[key].state === 'read' ? read[key].value : null);
  switch (entry) {
    case 'inspection':
      return columns.length === 0 ? [] : [{ kind: 'inspection', columns, cells: plain() }];
    case 'mites': {
      if (read.mites.state !== 'read') return [];
      const sample = sampleOf(read.sample, wide, setting);
      return [{ kind: 'mites', columns, cells: { ...plain(), ...(sample.state === 'read' ? { bees: sample.value } : {}), ...(wide.method === '' ? {} : { method: wide.method }) } }];
    }
    case 'stores': {
      const weight = readWeight(text('weight') ?? '', setting);
      return weight === null ? [] : [{ kind: 'stores', columns, cells: { weight: String(weight.amount), unit: weight.unit } }];
    }
    case 'supers on':
    case 'supers off':
      return (readSupers(text(entry === 'supers on' ? 'supersOn' : 'supersOff') ?? '', setting) ?? []).map(({ count, box }) => ({ kind: entry, columns, cells: { box, count: String(count) } }));
    case 'harvest':
      return harvestOf(columns, read, wide, setting);
    case 'treatment': {
      const given = text('treat');
      if (given === null) return [];
      return [{ kind: 'treatment', columns, cells: { active_ingredient: given === 'yes' ? wide.ingredient.trim() : given, ...(wide.until.trim() === '' ? {} : { end_date: wide.until.trim() }) } }];
    }
    case 'feed': {
      const fed = text('feed');
      return fed === null ? [] : [{ kind: 'feed', columns, cells: feedCells(fed, wide, setting) }];
    }
    case 'act':
      return actEntry(read);
  }
}

function harvestOf(columns: readonly ColumnKey[], read: RowReadings, wide: SheetWide, setting: SheetSetting): RowEntry[] {
  const tare = tareOf(read.empty, wide, setting);
  const gross = read.full.state === 'read' ? readWeight(read.full.value, setting) : null;
  const less = tare.state === 'read' ? readWeight(tare.value, setting) : null;
  if (gross === null || less === null) return [];
  const lot = read.lot.state === 'read' ? read.lot.value : wide.lot.trim();
  const cells: Cells = { gross: String(gross.amount), tare: String(weightIn(less, gross.unit)), unit: gross.unit };
  if (read.moisture.state === 'read') cells.moisture = read.moisture.value;
  if (lot !== '') cells.lot = lot;
  return [{ kind: 'harvest', columns, cells }];
}

function feedCells(fed: string, wide: SheetWide, setting: SheetSetting): Cells {
  const given = readFeed(fed, setting);
  const feed = given?.feed ?? (wide.feed === '' ? null : wide.feed);
  const ofSheet = wideAmount(wide, setting);
  const amount = given?.amount ?? (ofSheet === 'refused' ? null : ofSheet);
  if (feed === null) return {};
  return amount === null ? { feed } : { feed, amount: String(amount.amount), unit: amount.unit ?? feedUnit(feed, setting) };
}

function actEntry(read: RowReadings): RowEntry[] {
  if (read.act.state !== 'read') return [];
  const act = actOf(read);
  if (act === null) return [{ kind: 'loss', columns: ['act'], cells: { cause: read.act.value } }];
  const fields = fieldsOf[act].filter((key) => read[key].state === 'read');
  return [{ kind: actKinds[act], columns: ['act', ...fields], cells: cellsOf(fields, read) }];
}

function cellsOf(columns: readonly ColumnKey[], read: RowReadings): Cells {
  const cells: Cells = {};
  for (const key of columns) {
    const cell = read[key];
    if (cell.state === 'read') cells[sheetColumns[key].sentAs[0]] = cell.value;
  }
  return cells;
}

/** Farther than anybody drives to a round and back: a slip of the hand. */
const mostMiles = 2000;

/** Why the day until which the sheet's treatment stays on cannot be taken; null when it can, or none is said. */
export function untilTrouble({ until }: SheetWide, order: DateOrder): string | null {
  return until.trim() === '' || dayFromTyped(until, order) !== null ? null : words.refused.until(until.trim());
}

/** Why what is said of the work cannot be entered; null when it can, or nothing is said. */
export function workTrouble({ also, hours, people, miles }: SheetWide): string | null {
  const [h, p, m] = [hours.trim(), people.trim(), miles.trim()];
  const time = readWorkedTime(h);
  if (h !== '' && !time.ok) return time.sentence;
  if (time.ok && time.hours > 24) return words.refused.dayHours(h);
  if (p !== '' && !/^[1-9]\d{0,2}$/.test(p)) return words.refused.people(p);
  const way = milesDriven(m);
  if (m !== '' && (way === null || way > mostMiles)) return words.refused.miles(m);
  return p !== '' && h === '' && m === '' && also === '' ? words.refused.peopleAlone : null;
}

/** The work of the round as an entry; null when none is said. */
export function workCells({ also, hours, people, miles }: SheetWide, kind: RoundKind): Cells | null {
  const [time, m] = [workedTime(hours), milesDriven(miles)];
  if (time === null && m === null && also === '') return null;
  const rounds = time === null && m === null ? [] : [words.task[kind]];
  return { ...(time === null ? {} : { hours: String(time.hours) }), ...(time === null || time.clock === null ? {} : { note: time.clock }), ...(people.trim() === '' ? {} : { people: people.trim() }), ...(m === null ? {} : { miles: String(m) }), task: [...rounds, ...alsoDone(also)].join('; ') };
}

const parted = '; ';

export function alsoDone(also: string): string[] {
  return also === '' ? [] : also.split(parted);
}

export function withAlsoDone(also: string, task: string, done: boolean): string {
  return [...alsoDone(also).filter((one) => one !== task), ...(done ? [task] : [])].join(parted);
}
