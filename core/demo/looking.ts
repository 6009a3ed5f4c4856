import { packageSeller, priceOf } from './ossarPlan.ts';
import { leaveEmpty } from './hiving.ts';
import { framesOfBees, framesOfBrood, type SimulatedColony } from './simulatedColony.ts';
import { halves, money, type Visit, type World } from './world.ts';

const remarks = [
  'chalkbrood, a few mummies', 'bur comb scraped off', 'bees a little short of pollen', 'on the outer frames already', 'good solid brood',
  'spotty brood', 'a wasp nest under the stand, removed', 'fresh wax being drawn', 'propolis everywhere', 'lid blown askew, set right',
  'drone brood uncapped and looked at, few mites', 'ants under the lid', 'moved a frame of stores inward', 'queen missing her mark',
] as const;

/** Opens the colonies of the yard and writes what was seen. */
export function lookThrough(world: World, visit: Visit, share: number): number {
  let looked = 0;
  for (const colony of world.roster.living(visit.yard)) {
    if (world.day - colony.start < 5 || !world.random.chance(share)) continue;
    looked += 1;
    lookAt(world, visit, colony);
    if (colony.end === null) followUp(world, visit, colony);
  }
  if (looked > 0) visit.tasks.add('round');
  return looked;
}

function lookAt(world: World, visit: Visit, colony: SimulatedColony): void {
  const { random, day } = world;
  const bees = framesOfBees(colony, day) + random.normal(0, 0.6);
  const brood = framesOfBrood(colony, day) + random.normal(0, 0.4);
  const laying = colony.queenright && brood > 0.6;
  const cells = queenCells(world, colony, bees);
  const eggs = laying && !random.chance(0.06) ? 'yes' : 'no';
  visit.write('inspection', colony, {
    frames_bees: halves(Math.max(0.5, bees)),
    frames_brood: random.chance(0.95) ? halves(Math.max(0, brood)) : null,
    frames_stores: random.chance(0.9) ? halves(Math.max(0.5, random.normal(storesSeen(world, colony), 1.2))) : null,
    eggs: random.chance(0.94) ? eggs : null,
    queen_seen: random.chance(0.93) ? (laying && random.chance(0.32) ? 'yes' : 'no') : null,
    queen_cells: random.chance(0.93) ? cells : null,
    temper: random.chance(0.8) ? Math.max(1, Math.min(5, colony.temper + random.pick([-1, 0, 0, 0, 1]))) : null,
    note: random.chance(0.08) ? random.pick(remarks) : null,
  });
  visit.minutes += 7;
  if (cells === 'swarm' && random.chance(0.3)) swarmed(world, visit, colony);
  addSecondDeep(world, visit, colony, bees);
}

/** Frames of stores at a look: a few in spring, more after the main flow, and in autumn what it has, a full deep comb holding about 7 lb. */
function storesSeen({ monthDay }: World, colony: SimulatedColony): number {
  return monthDay >= '09-01' ? colony.storesLb / 7 : monthDay >= '07-10' ? 6.5 : 4;
}

function queenCells(world: World, colony: SimulatedColony, bees: number): 'none' | 'swarm' | 'supersedure' | 'emergency' {
  const { random, monthDay, plan } = world;
  if (!colony.queenright) return random.chance(0.4) ? 'emergency' : 'none';
  const age = plan.year - colony.queenYear;
  if (monthDay > '05-08' && monthDay < '06-25' && bees > 9 && random.chance(0.05 + 0.05 * Math.min(2, age))) return 'swarm';
  if (age >= 1 && random.chance(0.03)) return 'supersedure';
  return 'none';
}

function swarmed(world: World, visit: Visit, colony: SimulatedColony): void {
  visit.write('queen', colony, { what: 'swarmed', note: 'far fewer bees than cells promised' });
  colony.setBack = { day: world.day - 3, share: 0.5 };
  colony.queenYear = world.plan.year;
  if (world.random.chance(0.15)) colony.queenright = false;
}

function addSecondDeep(world: World, visit: Visit, colony: SimulatedColony, bees: number): void {
  if (colony.eightFrame || colony.deeps === 2 || bees < 6.5 || world.monthDay < '05-01' || world.monthDay > '08-05') return;
  colony.deeps = 2;
  world.takeOut({ 'deep box': 1, 'deep frame': 10 }, visit.yard);
  visit.minutes += 4;
}

/** What the look leads to: a queen marked, superseded, or found missing and dealt with. */
function followUp(world: World, visit: Visit, colony: SimulatedColony): void {
  const { random, day, plan, monthDay } = world;
  const age = plan.year - colony.queenYear;
  if (colony.queenright) {
    if (age === 0 && monthDay > '05-15' && random.chance(0.05)) visit.write('queen', colony, { what: 'marked' });
    if (age >= 1 && monthDay > '05-20' && monthDay < '09-10' && random.chance(age >= 2 ? 0.012 : 0.005)) {
      visit.write('queen', colony, { what: 'superseded' });
      colony.queenYear = plan.year;
    }
    return;
  }
  if (colony.death !== null || day - colony.start < 20) return;
  visit.write('queen', colony, { what: 'missing' });
  if (random.chance(0.55) && monthDay < '09-05') requeen(world, visit, colony, true);
  else if (!random.chance(0.6) || !unite(world, visit, colony, 'no queen'))
    colony.death = { day: day + random.whole(12, 30), causes: ['queen failure'] };
}

/** Puts a young queen in; bought ones carry seller and price. */
export function requeen(world: World, visit: Visit, colony: SimulatedColony, bought: boolean): void {
  const { random, plan } = world;
  const line = random.pick(['Kestrel', 'Bramble', 'Tarn', 'Ossar'] as const);
  visit.write('requeen', colony, {
    supplier: bought ? packageSeller : null, queen_year: plan.year, queen_source: line, price: bought ? money(priceOf('queen', plan.year)) : null,
    note: bought ? null : 'own cell, mated here',
  });
  if (bought) world.queensBought += 1;
  colony.queenYear = plan.year;
  colony.queenLine = line;
  colony.queenright = !random.chance(0.04);
  visit.minutes += 10;
  visit.tasks.add('requeening');
}

/** Unites a colony into the strongest neighbour that is queenright; true if there was one. */
export function unite(world: World, visit: Visit, colony: SimulatedColony, why: string): boolean {
  const { day, roster } = world;
  const into = roster
    .living(visit.yard)
    .filter((other) => other !== colony && other.queenright && other.death === null)
    .sort((one, other) => framesOfBees(other, day) - framesOfBees(one, day))
    .at(Math.floor(world.random.next() * 3));
  if (into === undefined || colony.supers > 0) return false;
  visit.writeChange('combine', colony, { into: into.label, note: why });
  leaveEmpty(world, colony);
  roster.end(day, colony, 'combined');
  visit.minutes += 12;
  visit.tasks.add('uniting');
  return true;
}

