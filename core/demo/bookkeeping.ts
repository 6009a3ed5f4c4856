import { saturday, sunday, weekday, yearOfNumber } from './calendar.ts';
import { entryRow } from './demoOperation.ts';
import { hardwareSeller, nucSeller, packageSeller, planOf, priceOf, type ByYard } from './ossarPlan.ts';
import { equipment, hiveBase, type Equipment } from './shed.ts';
import { takeStockOfOldHives } from './shedCounting.ts';
import { money, type World } from './world.ts';

/** Entries made at home: orders, equipment for the season, workshop, extracting, honey sold. */
export function keepBooks(world: World): void {
  const { day, monthDay, random } = world;
  const year = yearOfNumber(day);
  if (monthDay === (year === 2021 ? '04-03' : '03-06')) buyForSeason(world, year);
  if (monthDay === '04-03' && year === 2021) takeStockOfOldHives(world);
  if (monthDay === '01-24') orderNote(world, `Ordered ${sum(planOf(year).packages)} packages and ${planOf(year).queens} queens from ${packageSeller}, bees late in April`);
  if (monthDay === '02-11') orderNote(world, `Ordered ${sum(planOf(year).nucs)} four-frame nucs from ${nucSeller}, to come in the middle of May`);
  const workshop = monthDay > '01-05' && monthDay < '03-20' && weekday(day) === saturday && random.chance(0.45);
  if (workshop) {
    const task = random.pick(['assembling frames', 'painting boxes', 'mending lids', 'wiring foundation']);
    work(world, { hours: random.pick([1.5, 2, 2.5, 3, 4]), people: random.pick([1, 1, 2]), task });
  }
  if (world.supersHome > 0 && (weekday(day) === sunday || weekday(day) === 2)) {
    // A quarter of an hour a super in a small extractor (practice, from memory).
    work(world, { hours: Math.max(1, Math.round(world.supersHome * 0.24 * 2) / 2), people: 2, task: 'extracting' });
    world.supersHome = 0;
  }
  if (monthDay === '08-02') buyJars(world, year);
  if (weekday(day) === saturday && (monthDay > '08-15' || monthDay < '01-10') && random.chance(0.3)) sellHoney(world, year);
}

function buyForSeason(world: World, year: number): void {
  const colonies = sum(planOf(year).goal);
  const first = year === 2021;
  const each: Partial<Record<Equipment, number>> = {
    'deep box': 1.85, 'deep frame': 18.5, 'medium super': first ? 1 : 1.9, 'medium frame': first ? 10 : 19, 'queen excluder': 0.5,
  };
  for (const item of hiveBase) each[item] = 1.05;
  for (const item of equipment) {
    const pack = item.endsWith('frame') ? 50 : 5;
    const lacking = colonies * (each[item] ?? 0) - world.shed.owned(item);
    world.buyEquipment(item, Math.max(0, Math.ceil(lacking / pack)) * pack);
  }
}

function orderNote(world: World, note: string): void {
  world.desk.enter(world.day, world.nextMinute(), 'Bees ordered', [entryRow(world.day, 'note', { note })]);
}

function work(world: World, values: { hours: number; people: number; task: string }): void {
  world.desk.enter(world.day, world.nextMinute(), `At home: ${values.task}`, [entryRow(world.day, 'work', values)]);
}

function buyJars(world: World, year: number): void {
  const jars = Math.ceil(Math.max(120, world.roster.living().length * 14) / 60) * 60;
  world.buy('honey jar, 1 lb', jars, priceOf('honey jar, 1 lb', year), hardwareSeller);
}

function sellHoney(world: World, year: number): void {
  const jars = Math.min(world.random.whole(12, 60 + 10 * (year - 2021)), Math.floor(world.honeyHome));
  if (jars < 6) return;
  world.honeyHome -= jars;
  const row = entryRow(world.day, 'sale', { item: 'honey, 1 lb jar', quantity: jars, price: money(jars * priceOf('honey', year)) });
  world.desk.enter(world.day, world.nextMinute(), 'Honey sold at the market', [row]);
}

export function sum(byYard: ByYard): number {
  return Object.values(byYard).reduce((total, count) => total + count, 0);
}
