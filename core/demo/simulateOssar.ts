import { dayIn, dayText, yearOfNumber } from './calendar.ts';
import type { DemoOperation } from './demoOperation.ts';
import type { DemoTruth } from './demoTruth.ts';
import { feedAutumn, requeenOld, settleStores, uniteWeak, weighStores } from './autumnWork.ts';
import { keepBooks } from './bookkeeping.ts';
import { honeyLots } from './honeyLots.ts';
import { countShed } from './shedCounting.ts';
import { bringHome, hiveBought } from './hiving.ts';
import { addSupers, harvest, superForGoldenrod } from './honeyWork.ts';
import { mistype, onTheDay, onTheRound } from './incidents.ts';
import { lookThrough } from './looking.ts';
import { settleMites, treat, treatBroodless, washSome } from './miteWork.ts';
import { ossarYards, type YardCode } from './ossarPlan.ts';
import { nucDay, packageDay, scheduleSeason, type Schedule } from './schedule.ts';
import { SeededRandom } from './seededRandom.ts';
import { makeSplits } from './splitting.ts';
import { feedWinter, findDead, settleWinter } from './winterWork.ts';
import { closeVisit, Visit, World, yardName } from './world.ts';

const firstYear = 2021;
const lastYear = 2026;
const lastDay = dayIn(lastYear, 11, 25);

/** Runs the operation day by day; the truth is counted along the way. Takes a small part of a second. */
export function simulateOssar(seed: number): { operation: DemoOperation; truth: DemoTruth } {
  const random = new SeededRandom(seed);
  const schedule: Schedule = new Map();
  const travel = random.branch();
  for (let year = firstYear; year <= lastYear; year += 1) scheduleSeason(year, travel, schedule);
  keepClearOfTheFlood(schedule);
  endOnAWednesday(schedule);
  const world = new World(random.branch(), firstYear, lastDay);
  for (let day = dayIn(firstYear, 4, 1); day <= lastDay; day += 1) {
    world.day = day;
    world.roster.keepAccount(day);
    turnOfTheYear(world);
    keepBooks(world);
    onTheDay(world);
    const hoursWritten = world.random.chance(2 / 3);
    for (const yard of schedule.get(day) ?? []) goTo(world, yard, hoursWritten);
    world.closeEvening();
    countShed(world);
  }
  const truth: DemoTruth = { living: world.roster.living().length, yardHoneyLb: world.yardHoneyLb, ...world.roster.account(lastDay) };
  return { operation: { name: 'Ossar Valley', lastDay: dayText(lastDay), yards: ossarYards, ...honeyLots(world.desk.acts(lastDay), seed, dayText(lastDay)) }, truth };
}

function turnOfTheYear(world: World): void {
  const { monthDay, random, roster } = world;
  if (monthDay === '04-01') {
    for (const colony of roster.living()) {
      colony.splitThisYear = false;
      colony.washed = false;
      colony.setBack = null;
      // Some queens come out of winter laying drones only.
      if (colony.death === null && random.chance(0.025)) colony.queenright = false;
    }
  }
  if (monthDay === '08-01') settleMites(world);
  if (monthDay === '09-01') settleStores(world);
  if (monthDay === '10-21') settleWinter(world, lastDay);
}

/** The week of the flood has a page of its own. */
function keepClearOfTheFlood(schedule: Schedule): void {
  for (let day = dayIn(2023, 7, 9); day <= dayIn(2023, 7, 18); day += 1) {
    schedule.set(day, (schedule.get(day) ?? []).filter((yard) => yard !== 'LB' && yard !== 'KF'));
  }
}

/** The last week: three yards treated on the weekend, the yard behind the house on Wednesday evening. */
function endOnAWednesday(schedule: Schedule): void {
  for (let day = dayIn(lastYear, 11, 14); day <= lastDay; day += 1) schedule.delete(day);
  schedule.set(dayIn(lastYear, 11, 21), ['QY', 'KF']);
  schedule.set(dayIn(lastYear, 11, 22), ['LB']);
  schedule.set(lastDay, ['OO']);
}

function goTo(world: World, yard: YardCode, hoursWritten: boolean): void {
  const { day, monthDay, plan, roster } = world;
  const visit = new Visit(day, yard);
  const year = yearOfNumber(day);
  const packages = day === packageDay(year) ? (plan.packages[yard] ?? 0) : 0;
  const nucs = day === nucDay(year) ? (plan.nucs[yard] ?? 0) : 0;
  if (packages + nucs > 0) {
    hiveBought(world, visit, packages > 0 ? 'package' : 'nuc', packages + nucs);
  }
  if (!world.openYards.has(yard)) return;
  if (roster.count(yard) === 0 && !world.deadOuts.has(yard)) return;
  const dead = findDead(world, visit);
  if (monthDay >= '04-01' && monthDay <= '11-10' && bringHome(world, yard)) visit.tasks.add('cleaning dead-outs');
  if (monthDay >= '04-05' && monthDay <= '10-15') lookThrough(world, visit, monthDay < '09-10' ? 0.7 : 0.5);
  onTheRound(world, visit);
  makeSplits(world, visit);
  addSupers(world, visit);
  harvest(world, visit);
  washSome(world, visit);
  mistype(world, visit);
  treat(world, visit);
  superForGoldenrod(world, visit);
  requeenOld(world, visit);
  uniteWeak(world, visit);
  feedAutumn(world, visit);
  weighStores(world, visit);
  treatBroodless(world, visit);
  feedWinter(world, visit);
  if (visit.rows.length === 0 && (monthDay > '10-15' || monthDay < '04-05')) {
    visit.write('note', null, { note: monthDay > '10-15' && monthDay < '11-20' ? 'entrances reduced, wraps on' : 'all humming, entrances clear' });
    visit.tasks.add('winter check');
  }
  closeVisit(world, visit, titleOf(visit, dead, roster.count(yard)), hoursWritten);
}

function titleOf(visit: Visit, dead: number, living: number): string {
  const name = yardName(visit.yard);
  const count = `${living} ${living === 1 ? 'colony' : 'colonies'}`;
  const tasks = [...visit.tasks];
  for (const [task, words] of [
    ['hiving packages', 'Packages hived'], ['hiving nucs', 'Nucs hived'], ['harvest', 'Harvest'], ['splits', 'Splits'], ['mite washes', 'Mite washes'],
    ['mite treatment', 'Treatment'], ['feeding', 'Feeding'], ['weighing stores', 'Stores weighed'],
  ] as const) {
    if (tasks.includes(task)) return `${words} at ${name}, ${count}`;
  }
  if (dead > 0 && !tasks.includes('round')) return `${dead} found dead at ${name}`;
  return tasks.includes('round') ? `Round at ${name}, ${count}` : `Look in at ${name}, ${count}`;
}
