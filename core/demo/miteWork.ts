import { dayIn, dayText, seasonOfNumber } from './calendar.ts';
import { activeFor } from './honeyWork.ts';
import { drawMites, type SimulatedColony } from './simulatedColony.ts';
import type { Visit, World } from './world.ts';

/** Colonies washed at least once in a season; the others are never counted. */
const washedShare = 0.4;
/** Mites double in about 33 days while there is brood (r = 0.021 a day), counted back from the middle of August. */
const dailyGrowth = 0.021;

/** Fixes, on 1 August, how many mites each colony will have and which ones the keeper will wash: first those washed in June. */
export function settleMites(world: World): void {
  const { random, roster, plan } = world;
  const living = random.shuffled(roster.living()).sort((one, other) => Number(other.washed) - Number(one.washed));
  const washed = new Set(living.slice(0, Math.round(living.length * washedShare)));
  for (const colony of roster.living()) {
    colony.mites = drawMites(colony, plan.mites, plan.year, seasonOfNumber(colony.start), random);
    colony.washed = washed.has(colony);
  }
}

/** Washes: a few in June, the chosen ones in August before treatment, part of those again after it. */
export function washSome(world: World, visit: Visit): void {
  const { random, monthDay, plan, roster } = world;
  if (monthDay >= '06-08' && monthDay <= '07-05' && world.once(visit.yard, 'june wash')) {
    for (const colony of roster.living(visit.yard)) {
      if (world.day - colony.start < 60 || !random.chance(0.2)) continue;
      colony.washed = true;
      wash(world, visit, colony, Math.max(0.1, random.normal(0.28, 0.12)) * plan.mites);
    }
  } else if (monthDay >= '08-06' && monthDay <= '09-03' && world.once(visit.yard, 'wash')) {
    for (const colony of roster.living(visit.yard)) if (colony.washed) wash(world, visit, colony, colony.mites);
  } else if (monthDay >= '09-18' && monthDay <= '10-12' && world.once(visit.yard, 'second wash')) {
    const left = plan.active === 'amitraz' && plan.year === 2024 ? 0.65 : 0.3;
    for (const colony of roster.living(visit.yard)) {
      if (colony.washed && random.chance(0.45)) wash(world, visit, colony, colony.mites * 1.6 * left);
    }
  }
}

function wash(world: World, visit: Visit, colony: SimulatedColony, per100: number): void {
  const { random, plan } = world;
  const bees = random.pick([280, 290, 300, 300, 300, 300, 310, 320]);
  const days = world.monthDay > '08-01' && world.monthDay < '09-05' ? world.day - dayIn(plan.year, 8, 15) : 0;
  const rate = Math.min(0.5, (per100 / 100) * Math.exp(dailyGrowth * days));
  visit.write('mites', colony, { mites: random.binomial(bees, rate), bees, method: random.chance(plan.year === 2021 ? 0.6 : 0.97) ? 'alcohol wash' : 'sugar roll' });
  visit.minutes += 8;
  visit.tasks.add('mite washes');
}

/** The August or September treatment, one row for the whole yard. */
export function treat(world: World, visit: Visit): void {
  const { day, plan, roster } = world;
  const active = activeFor(world, visit.yard);
  const from = dayIn(plan.year, ...plan.treatFrom);
  if (day < from || day > from + 35 || roster.count(visit.yard) === 0) return;
  // Amitraz and thymol wait until the honey supers are off.
  if (active !== 'formic acid' && roster.living(visit.yard).some((colony) => colony.supers > 0)) return;
  if (!world.once(visit.yard, 'treatment')) return;
  const days = active === 'formic acid' ? 14 : active === 'thymol' ? 28 : 45;
  visit.write('treatment', null, { active_ingredient: active, end_date: dayText(day + days) });
  visit.minutes += 2 * roster.count(visit.yard);
  visit.tasks.add('mite treatment');
}

/** Oxalic acid once the bees are broodless, late in November or early in December. */
export function treatBroodless(world: World, visit: Visit): void {
  const { monthDay, roster, day } = world;
  if (monthDay < '11-14' || monthDay > '12-14' || roster.count(visit.yard) === 0 || !world.once(visit.yard, 'oxalic acid')) return;
  visit.write('treatment', null, { active_ingredient: 'oxalic acid', end_date: dayText(day), note: 'no brood in the two colonies opened' });
  visit.minutes += 2 * roster.count(visit.yard);
  visit.tasks.add('mite treatment');
}
