import type { Cells, Kind } from '#shared/entryForms.ts';
import { dayText, yearOfNumber } from './calendar.ts';
import { entryRow, type Values } from './demoOperation.ts';
import { EntryDesk, type WrittenRow } from './entryDesk.ts';
import { hardwareSeller, ossarYards, planOf, priceOf, type Priced, type SeasonPlan, type YardCode } from './ossarPlan.ts';
import { Roster } from './roster.ts';
import type { SeededRandom } from './seededRandom.ts';
import { Shed, type Equipment, type Parts } from './shed.ts';
import type { SimulatedColony } from './simulatedColony.ts';

/** Everything the simulation of one operation carries along from day to day. */
export class World {
  readonly random: SeededRandom;
  readonly roster = new Roster();
  readonly shed = new Shed();
  readonly desk = new EntryDesk();
  /** Jobs done once a season and yard: "2024 QY harvest". */
  readonly done = new Set<string>();
  readonly openYards = new Set<string>();
  readonly yardHoneyLb: { season: number; yard: string; lb: number }[] = [];
  /** Empty hives that still stand in their yards. */
  readonly deadOuts = new Map<string, Parts>();
  /** The day at which the book ends; what would be entered later is entered on it. */
  readonly lastDay: number;
  queensBought = 0;
  /** Pounds of sugar at home. */
  sugarLb = 0;
  /** Supers taken off and not yet extracted, and honey extracted and not yet sold, pounds. */
  supersHome = 0;
  honeyHome = 0;
  readonly #bills = new Map<string, { item: string; supplier: string; quantity: number; each: number }>();
  #plan: SeasonPlan;
  #day = 0;
  #page = 0;

  constructor(random: SeededRandom, firstYear: number, lastDay: number) {
    this.random = random;
    this.lastDay = lastDay;
    this.#plan = planOf(firstYear);
  }

  get day(): number {
    return this.#day;
  }

  set day(day: number) {
    this.#day = day;
    this.#page = 0;
    const text = dayText(day);
    if (!text.endsWith('-04-01')) return;
    this.#plan = planOf(yearOfNumber(day));
    this.queensBought = 0;
  }

  /** Plan of the running season. */
  get plan(): SeasonPlan {
    return this.#plan;
  }

  get monthDay(): string {
    return dayText(this.#day).slice(5);
  }

  /** True the first time it is asked for a season and job. */
  once(yard: string, job: string): boolean {
    const key = `${this.#plan.year} ${yard} ${job}`;
    if (this.done.has(key)) return false;
    this.done.add(key);
    return true;
  }

  /** Minute of the evening at which the next page is entered; pages follow one another. */
  nextMinute(): number {
    this.#page += 1;
    return 19 * 60 + 5 + 17 * this.#page;
  }

  buy(item: string, quantity: number, each: number, supplier: string): void {
    const before = this.#bills.get(item);
    this.#bills.set(item, { item, supplier, each, quantity: quantity + (before?.quantity ?? 0) });
  }

  buyEquipment(item: Equipment, quantity: number): void {
    if (quantity <= 0) return;
    this.buy(item, quantity, priceOf(item as Priced, yearOfNumber(this.#day)), hardwareSeller);
    this.shed.move(item, quantity, 'supplier', 'shed');
  }

  /** Takes parts from the shed to a yard; what the shed lacks is bought on the way, in small packs. */
  takeOut(parts: Parts, yard: string): void {
    for (const [item, quantity] of Object.entries(parts) as [Equipment, number][]) {
      const lacking = quantity - this.shed.count('shed', item);
      const pack = item.endsWith('frame') ? 20 : 2;
      if (lacking > 0) this.buyEquipment(item, Math.ceil(lacking / pack) * pack);
      this.shed.move(item, quantity, 'shed', yard);
    }
  }

  useSugar(pounds: number): void {
    if (pounds > this.sugarLb) {
      const bags = Math.ceil((pounds - this.sugarLb) / 50) + 4;
      this.buy('white sugar, 50 lb bag', bags, Math.round(priceOf('sugar', yearOfNumber(this.#day)) * 100) / 2, hardwareSeller);
      this.sugarLb += bags * 50;
    }
    this.sugarLb -= pounds;
  }

  /** Writes the day's bills and equipment movements. */
  closeEvening(): void {
    const bills = [...this.#bills.values()].map(({ item, supplier, quantity, each }) =>
      entryRow(this.#day, 'purchase', {
        item, supplier, quantity, price: money(quantity * each), note: quantity === 1 ? null : `${money(each)} each`,
      }),
    );
    this.#bills.clear();
    if (bills.length > 0) this.desk.enter(this.#day, 22 * 60, `Bills, ${bills.length} ${bills.length === 1 ? 'item' : 'items'}`, bills);
    const moved = this.shed.takeRows(this.#day);
    if (moved.length > 0) this.desk.enter(this.#day, 22 * 60 + 10, 'Equipment moved', moved);
  }
}

export function money(amount: number): string {
  return Number.isInteger(amount) ? String(amount) : amount.toFixed(2);
}

export function halves(value: number): string {
  return String(Math.round(value * 2) / 2);
}

/** What is written down at one yard on one day. */
export class Visit {
  readonly day: number;
  readonly yard: YardCode;
  readonly rows: Cells[] = [];
  readonly tasks = new Set<string>();
  minutes = 12;
  /** Rows to be struck and written anew later, by place in `rows`. */
  readonly later: { row: number; day: number; reason: string; instead: Cells }[] = [];
  /** Something began, ended or moved: such a page is never left for another evening. */
  structural = false;

  constructor(day: number, yard: YardCode) {
    this.day = day;
    this.yard = yard;
  }

  /** Writes a row about a colony; returns its place. */
  write(kind: Kind, colony: SimulatedColony | null, values: Values = {}): number {
    this.rows.push(entryRow(this.day, kind, { yard: this.yard, ...(colony === null ? {} : { colony: colony.label }), ...values }));
    return this.rows.length - 1;
  }

  /** As `write`, for kinds that end, make or move a colony. */
  writeChange(kind: Kind, colony: SimulatedColony | null, values: Values = {}): number {
    this.structural = true;
    return this.write(kind, colony, values);
  }
}

export function yardName(code: string): string {
  return ossarYards.find((yard) => yard.code === code)?.name ?? code;
}

export function minutesTo(code: string): number {
  return ossarYards.find((yard) => yard.code === code)?.minutes ?? 0;
}

export function roomIn(code: string): number {
  return ossarYards.find((yard) => yard.code === code)?.room ?? 0;
}

/** Writes a finished visit at the desk, that evening or, when nothing hangs on it, now and then some evenings later. */
export function closeVisit(world: World, visit: Visit, title: string, hoursWritten: boolean): void {
  if (visit.rows.length === 0) return;
  const { random } = world;
  if (hoursWritten) {
    const people = visit.minutes > 150 || random.chance(0.25) ? 2 : 1;
    visit.write('work', null, {
      hours: Math.max(1, Math.round((visit.minutes * random.between(0.9, 1.15)) / 15 / people)) / 4,
      people,
      miles: Math.round(minutesTo(visit.yard) * 1.15),
      task: [...visit.tasks].slice(0, 3).join(', ') || 'round',
    });
  }
  const late = !visit.structural && random.chance(0.13) ? Math.min(random.whole(1, 3), world.lastDay - visit.day) : 0;
  const act = world.desk.enter(visit.day + late, late > 0 ? 19 * 60 : world.nextMinute(), title, visit.rows);
  for (const { row, day, reason, instead } of visit.later) {
    const written: WrittenRow = { act, row };
    world.desk.strike(day, 20 * 60 + 5, `Struck: ${reason}`, written, reason);
    world.desk.enter(day, 20 * 60 + 6, 'Entered in its place', [instead]);
  }
}
