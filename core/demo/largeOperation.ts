import type { Cells } from '#shared/entryForms.ts';
import { dayIn, dayText } from './calendar.ts';
import type { DemoOperation, DemoYard, EnteringAct } from './demoOperation.ts';
import { packageSeller } from './ossarPlan.ts';
import { SeededRandom } from './seededRandom.ts';

export interface LargeSize {
  readonly seed: number;
  /** Places for colonies; about that many live each summer. */
  readonly colonies: number;
  /** Full seasons, the last one ending on 31 March 2026. */
  readonly seasons: number;
}

const perYard = 50;
const lastYear = 2026;
/** A round takes two weeks, some yards each day. */
const daysOfRound = 14;

interface Place {
  readonly label: string;
  alive: boolean;
  supers: number;
}

type Doing = (write: Writing, random: SeededRandom, year: number) => void;

/** The page of one yard on one day. */
interface Writing {
  readonly date: string;
  readonly yard: string;
  readonly places: readonly Place[];
  readonly rows: Cells[];
}

/** The year's rounds, first day and what is done; at least two weeks apart. */
const rounds: readonly (readonly [number, number, Doing])[] = [
  [4, 5, inspect], [4, 20, restock], [5, 10, inspect], [6, 1, superUp], [6, 20, inspect], [7, 8, inspect], [7, 25, harvest], [8, 12, washAndTreat],
  [9, 1, feedAndRequeen], [9, 20, feed], [10, 8, weigh], [11, 20, findDead(0.09)], [12, 26, findDead(0.1)], [14, 10, findDead(0.07)],
];

/**
 * An operation of any size for measuring: every place has about twelve rows a season, a quarter of the colonies die
 * in winter and are replaced in April. Acts come one by one, so that memory holds only one page; rows rise in date.
 */
export function* largeOperationActs(size: LargeSize): Generator<EnteringAct> {
  const { random, yards } = prepare(size);
  const perDay = Math.ceil(yards.length / daysOfRound);
  if (perDay > 240) throw new RangeError('more yards than a day has evening minutes: ask for fewer colonies');
  for (let year = lastYear - size.seasons; year < lastYear; year += 1) {
    for (const [month, dayOfMonth, doing] of rounds) {
      const first = month > 12 ? dayIn(year + 1, month - 12, dayOfMonth) : dayIn(year, month, dayOfMonth);
      for (let turn = 0; turn < daysOfRound; turn += 1) {
        const date = dayText(first + turn);
        for (let index = turn, minute = 19 * 60; index < yards.length; index += daysOfRound, minute += 1) {
          const yard = yards[index];
          if (yard === undefined) break;
          const rows: Cells[] = [];
          doing({ date, yard: yard.code, places: yard.places, rows }, random, year);
          if (rows.length === 0) continue;
          const at = `${date} ${Math.floor(minute / 60)}:${String(minute % 60).padStart(2, '0')}`;
          yield { at, title: `Page of ${yard.code}`, rows };
        }
      }
    }
  }
}

/** The rows alone, one by one. */
export function* largeOperationRows(size: LargeSize): Generator<Cells> {
  for (const act of largeOperationActs(size)) yield* act.rows;
}

/** The whole operation at once; 10,000 colonies over 10 seasons hold some hundred megabytes. */
export function largeOperation(size: LargeSize): DemoOperation {
  const yards: DemoYard[] = prepare(size).yards.map(({ code }) => ({ code, name: `Yard ${code}`, room: perYard + 10, minutes: 20 }));
  return { name: `${size.colonies} colonies`, lastDay: dayText(dayIn(lastYear, 3, 31)), yards, acts: [...largeOperationActs(size)] };
}

function prepare(size: LargeSize): { random: SeededRandom; yards: { code: string; places: Place[] }[] } {
  const yards: { code: string; places: Place[] }[] = [];
  for (let begun = 0; begun < size.colonies; begun += perYard) {
    const code = `Y${String(yards.length + 1).padStart(3, '0')}`;
    const places = Math.min(perYard, size.colonies - begun);
    yards.push({ code, places: Array.from({ length: places }, (_, place) => ({ label: `${code}-${String(place + 1).padStart(2, '0')}`, alive: false, supers: 0 })) });
  }
  return { random: new SeededRandom(size.seed), yards };
}

function inspect({ date, yard, places, rows }: Writing, random: SeededRandom): void {
  for (const place of places) {
    if (!place.alive) continue;
    rows.push({
      date, entry: 'inspection', yard, colony: place.label, frames_bees: halfSteps(random, 8, 36), frames_brood: halfSteps(random, 4, 18),
      frames_stores: halfSteps(random, 3, 14), eggs: random.chance(0.93) ? 'yes' : 'no', queen_seen: random.chance(0.3) ? 'yes' : 'no',
    });
  }
}

/** Empty places are filled by a split of a neighbour or by a package. */
function restock({ date, yard, places, rows }: Writing, random: SeededRandom, year: number): void {
  const living = places.filter((place) => place.alive);
  for (const place of places) {
    if (place.alive) continue;
    if (living.length > 3 && random.chance(0.6)) {
      rows.push({ date, entry: 'split', yard, colony: random.pick(living).label, new_colony: place.label, queen: 'stays', new_queen: 'mated', queen_year: String(year) });
    } else {
      rows.push({ date, entry: 'install', yard, colony: place.label, origin: 'package', supplier: packageSeller, queen_year: String(year), price: '150' });
    }
    place.alive = true;
  }
}

function superUp(write: Writing, random: SeededRandom): void {
  const { date, yard, places, rows } = write;
  inspect(write, random);
  for (const place of places) {
    if (!place.alive || random.chance(0.1)) continue;
    place.supers = random.whole(1, 3);
    rows.push({ date, entry: 'supers on', yard, colony: place.label, box: 'medium', count: String(place.supers) });
  }
}

function harvest({ date, yard, places, rows }: Writing, random: SeededRandom, year: number): void {
  for (const place of places) {
    if (!place.alive || place.supers === 0) continue;
    rows.push({ date, entry: 'supers off', yard, colony: place.label, box: 'medium', count: String(place.supers) });
    const tare = 16 * place.supers;
    rows.push({ date, entry: 'harvest', yard, colony: place.label, gross: String(tare + random.whole(6, 38 * place.supers)), tare: String(tare), unit: 'lb', lot: `${year}-${yard}` });
    place.supers = 0;
  }
}

function washAndTreat(write: Writing, random: SeededRandom): void {
  const { date, yard, places, rows } = write;
  inspect(write, random);
  for (const place of places) {
    if (place.alive && random.chance(0.4)) {
      rows.push({ date, entry: 'mites', yard, colony: place.label, mites: String(Math.floor(9 * random.next() * random.next() * 2)), bees: '300', method: 'alcohol wash' });
    }
  }
  if (rows.length > 0) rows.push({ date, entry: 'treatment', yard, active_ingredient: 'formic acid' });
}

function feedAndRequeen(write: Writing, random: SeededRandom, year: number): void {
  for (const place of write.places) {
    if (place.alive && random.chance(0.2)) write.rows.push({ date: write.date, entry: 'requeen', yard: write.yard, colony: place.label, queen_year: String(year) });
  }
  feed(write, random);
}

function feed({ date, yard, places, rows }: Writing, random: SeededRandom): void {
  for (const place of places) {
    if (place.alive && random.chance(0.9)) rows.push({ date, entry: 'feed', yard, colony: place.label, feed: 'syrup 2:1', amount: String(random.whole(1, 3)), unit: 'gal' });
  }
}

function weigh({ date, yard, places, rows }: Writing, random: SeededRandom): void {
  for (const place of places) {
    if (place.alive && random.chance(0.85)) rows.push({ date, entry: 'stores', yard, colony: place.label, weight: String(random.whole(40, 100)), unit: 'lb' });
  }
}

function findDead(share: number): Doing {
  return ({ date, yard, places, rows }, random) => {
    for (const place of places) {
      if (!place.alive || !random.chance(share)) continue;
      rows.push({ date, entry: 'loss', yard, colony: place.label, cause: random.pick(['mites', 'starvation', 'queen failure', 'unknown']) });
      place.alive = false;
    }
  };
}

/** From `low` to `high` half frames, as text. */
function halfSteps(random: SeededRandom, low: number, high: number): string {
  return String(random.whole(low, high) / 2);
}
