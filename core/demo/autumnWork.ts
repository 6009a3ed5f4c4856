import { requeen, unite } from './looking.ts';
import { yardTraits } from './ossarPlan.ts';
import { framesOfBees } from './simulatedColony.ts';
import { halves, type Visit, type World } from './world.ts';

/** Old queens, and now and then a poor one, are replaced in July and August: bought ones as far as they go, others raised here. */
export function requeenOld(world: World, visit: Visit): void {
  const { random, monthDay, plan, roster } = world;
  if (monthDay < '07-05' || monthDay > '09-03') return;
  for (const colony of roster.living(visit.yard)) {
    const age = plan.year - colony.queenYear;
    if (!colony.queenright || colony.death !== null || !random.chance(age >= 2 ? 0.06 : age === 1 ? 0.05 : 0)) continue;
    const bought = world.queensBought < plan.queens && random.chance(0.75);
    requeen(world, visit, colony, bought);
  }
}

/** Colonies too small to winter are united with a neighbour in September. */
export function uniteWeak(world: World, visit: Visit): void {
  const { random, monthDay, roster, day } = world;
  if (monthDay < '09-01' || monthDay > '09-30') return;
  for (const colony of roster.living(visit.yard)) {
    const small = framesOfBees(colony, day) < 7;
    if (small && colony.death === null && colony.supers === 0 && random.chance(0.4)) unite(world, visit, colony, 'too small to winter alone');
  }
}

/** On 1 September each colony has what the summer left it. */
export function settleStores(world: World): void {
  const { random, roster } = world;
  for (const colony of roster.living()) {
    const traits = yardTraits[colony.yard as keyof typeof yardTraits];
    const young = world.day - colony.start < 130 ? -9 : 0;
    colony.storesLb = Math.max(12, random.normal(45 + 14 * traits.goldenrod + young, 12) * Math.min(1.2, colony.vigor));
    colony.fedGallons = 0;
    colony.storesWeighed = null;
  }
}

/** Heavy syrup from September to the middle of October; the far yard is seen less often and gets less. */
export function feedAutumn(world: World, visit: Visit): void {
  const { random, monthDay, roster } = world;
  if (monthDay < '09-04' || monthDay > '10-16') return;
  if (roster.living(visit.yard).some((colony) => colony.supers > 0)) return;
  let fed = 0;
  for (const colony of roster.living(visit.yard)) {
    const guess = colony.storesLb + random.normal(0, 10);
    if (colony.death !== null || guess > 84 || colony.fedGallons >= 5 || !random.chance(0.85)) continue;
    const gallons = guess < 55 ? random.pick([1.5, 2, 2]) : random.pick([1, 1, 1.5]);
    visit.write('feed', colony, { feed: 'syrup 2:1', amount: gallons, unit: 'gal' });
    colony.fedGallons += gallons;
    // About 7 lb of stores from a gallon (extension rule of thumb, from memory).
    colony.storesLb += gallons * random.between(6.2, 7.6);
    visit.minutes += 3;
    fed += gallons;
  }
  if (fed === 0) return;
  visit.tasks.add('feeding');
  // 7.4 lb of sugar in a gallon of 2:1 (sucrose solution density, from memory).
  world.useSugar(fed * 7.4);
}

/** Stores by the scale under the hive in October; most colonies, not all. */
export function weighStores(world: World, visit: Visit): void {
  const { random, monthDay, roster } = world;
  if (monthDay < '10-03' || monthDay > '11-02' || !world.once(visit.yard, 'stores')) return;
  for (const colony of roster.living(visit.yard)) {
    if (!random.chance(0.82)) continue;
    colony.storesWeighed = Math.max(8, Math.round(colony.storesLb + random.normal(0, 4)));
    visit.write('stores', colony, { weight: halves(colony.storesWeighed), unit: 'lb' });
    visit.minutes += 3;
  }
  visit.tasks.add('weighing stores');
}
