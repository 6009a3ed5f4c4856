import { dayIn, dayText, seasonOfNumber } from './calendar.ts';
import { entryRow } from './demoOperation.ts';
import { leaveEmpty } from './hiving.ts';
import { takeOff } from './honeyWork.ts';
import { yardTraits } from './ossarPlan.ts';
import type { SeededRandom } from './seededRandom.ts';
import { framesOfBees, type SimulatedColony } from './simulatedColony.ts';
import type { Visit, World } from './world.ts';

/**
 * Decides on 21 October which colonies will not see April. The log-odds of loss rise with August mites, an old
 * queen, light stores, few bees and the windy yard, and carry noise of their own; nothing else counts.
 */
export function settleWinter(world: World, lastDay: number): void {
  const { random, roster, plan, day } = world;
  const complete = dayIn(plan.year + 1, 3, 31) <= lastDay;
  for (const colony of roster.living()) {
    const queenAge = Math.max(0, plan.year - colony.queenYear);
    const bees = framesOfBees(colony, day);
    const risks = {
      mites: 0.95 * Math.log(colony.mites / 2.3),
      'queen failure': queenAge >= 2 ? 1.1 : queenAge === 1 ? 0.55 : 0,
      starvation: Math.max(0, (74 - colony.storesLb) / 10) * 0.4,
      'weak in autumn': Math.max(0, 8 - bees) * 0.18,
      cold: yardTraits[colony.yard as keyof typeof yardTraits].winter,
    };
    const odds = -1.5 + plan.winter + random.normal(0, 0.7) + Object.values(risks).reduce((sum, risk) => sum + risk, 0);
    const dies = colony.death !== null || random.chance(1 / (1 + Math.exp(-odds)));
    if (dies && colony.death === null) colony.death = fate(risks, plan.year, random);
    colony.autumns.push({
      season: plan.year, yard: colony.yard, mites: colony.mites, queenAge, storesLb: colony.storesLb, framesBees: bees, washed: colony.washed,
      lost: complete ? false : null,
    });
  }
}

/** When colonies die of what, days from 1 January of the autumn's year: mites before midwinter, hunger in March. */
const deathDays: Readonly<Record<string, { mean: number; spread: number }>> = {
  mites: { mean: 345, spread: 30 },
  starvation: { mean: 418, spread: 18 },
  'queen failure': { mean: 400, spread: 35 },
  'weak in autumn': { mean: 375, spread: 25 },
  cold: { mean: 395, spread: 22 },
};

function fate(risks: Record<string, number>, year: number, random: SeededRandom): { day: number; causes: string[] } {
  // Each risk against what it is in an ordinary colony, so that none is named only because it is common.
  const ordinary: Record<string, number> = { mites: 0, 'queen failure': 0.25, starvation: 0.4, 'weak in autumn': 0.1, cold: 0.15 };
  const ranked = Object.entries(risks).map(([cause, risk]) => ({ cause, weight: risk - (ordinary[cause] ?? 0) + random.normal(0, 0.4) }));
  ranked.sort((one, other) => other.weight - one.weight);
  const first = ranked[0]?.cause ?? 'unknown';
  const second = ranked[1];
  const causes = [first];
  if (second !== undefined && second.weight > 0.6 && random.chance(0.5)) causes.push(second.cause);
  if (first === 'cold' && random.chance(0.4)) causes.push('moisture');
  const { mean, spread } = deathDays[first] ?? { mean: 395, spread: 25 };
  const at = Math.round(random.normal(mean, spread));
  return { day: dayIn(year, 1, 1) + Math.max(300, Math.min(448, at)), causes };
}

const signs: Readonly<Record<string, readonly string[]>> = {
  starvation: ['heads in the cells, no stores above', 'starved a hand from full combs'],
  mites: ['spotty capped brood, hardly a bee left', 'a cupful of bees and mite dirt in the cells'],
  'queen failure': ['drone brood only', 'no queen found among the dead'],
  'weak in autumn': ['a fist of bees', ''],
  cold: ['small cluster, honey left', ''],
  unknown: ['', 'nothing to see'],
};

/** Finds what has died since the last visit. The day of a loss is the day on which it is found. */
export function findDead(world: World, visit: Visit): number {
  const { day, random, roster } = world;
  let found = 0;
  // In two Februaries it was too cold to open the dead hives: the cause came two weeks later.
  const unopened = visitInCold(world);
  for (const colony of roster.living(visit.yard)) {
    if (colony.death === null || colony.death.day > day) continue;
    const late = unopened && found < 3;
    const causes = !late && random.chance(0.2) ? ['unknown'] : colony.death.causes;
    const sign = random.pick(signs[causes[0] ?? 'unknown'] ?? ['']);
    if (late) {
      const row = recordLoss(world, visit, colony, [], 'dead, too cold to open');
      const instead = entryRow(day, 'loss', { yard: visit.yard, colony: colony.label, cause: causes.join('; '), note: sign });
      visit.later.push({ row, day: day + random.whole(14, 16), reason: 'cause known now that the hive was opened', instead });
    } else recordLoss(world, visit, colony, causes, sign);
    found += 1;
  }
  if (found > 0) visit.minutes += 10 * found;
  return found;
}

function visitInCold(world: World): boolean {
  return world.monthDay.startsWith('02-') && (world.plan.year === 2022 || world.plan.year === 2024);
}

/** Writes a loss and ends the colony; returns the row's place. */
export function recordLoss(world: World, visit: Visit, colony: SimulatedColony, causes: readonly string[], note: string): number {
  const { day, roster } = world;
  takeOff(world, visit, colony);
  const row = visit.writeChange('loss', colony, { cause: causes.join('; '), note });
  leaveEmpty(world, colony);
  roster.end(day, colony, 'lost');
  const monthDay = dayText(day).slice(5);
  const autumn = colony.autumns.at(-1);
  if (autumn !== undefined && autumn.season === seasonOfNumber(day) && (monthDay >= '10-01' || monthDay < '04-01')) autumn.lost = true;
  return row;
}

/** Emergency fondant in February and March for what feels light. */
export function feedWinter(world: World, visit: Visit): void {
  const { random, monthDay, roster, day } = world;
  if (monthDay < '02-01' || monthDay > '03-31') return;
  for (const colony of roster.living(visit.yard)) {
    const light = colony.storesLb < 66 && random.chance(0.4);
    if (!light || colony.fedGallons < 0) continue;
    visit.write('feed', colony, { feed: 'fondant', amount: random.pick([2, 3, 4, 5]), unit: 'lb' });
    if (random.chance(0.5)) colony.fedGallons = -1;
    visit.minutes += 3;
    visit.tasks.add('fondant');
  }
  for (const colony of roster.living(visit.yard)) {
    if (monthDay > '02-25' || !random.chance(0.15)) continue;
    visit.write('stores', colony, { weight: Math.max(5, Math.round(colony.storesLb - (day % 7) - 34)), unit: 'lb', note: 'by heft' });
  }
}
