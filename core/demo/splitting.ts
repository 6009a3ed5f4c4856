import { newHive, startColony } from './hiving.ts';
import type { YardCode } from './ossarPlan.ts';
import { framesOfBees, type SimulatedColony } from './simulatedColony.ts';
import { roomIn, type Visit, type World } from './world.ts';

/** Splits strong colonies of the yard, late May to mid June, until the yards have what the keeper wants. */
export function makeSplits(world: World, visit: Visit): void {
  const { day, random, roster, monthDay, plan } = world;
  if (monthDay < '05-22' || monthDay > '06-18') return;
  const sharePerVisit = monthDay < '06-04' ? 0.6 : 0.85;
  const leastBees = monthDay < '06-04' ? 8 : 7;
  const fit = roster
    .living(visit.yard)
    .filter((colony) => !colony.splitThisYear && colony.queenright && colony.supers < 2 && framesOfBees(colony, day) >= leastBees)
    .sort((one, other) => framesOfBees(other, day) - framesOfBees(one, day));
  for (const parent of fit.slice(0, Math.ceil(fit.length * sharePerVisit))) {
    const to = neediestYard(world, visit.yard);
    if (to === null) return;
    split(world, visit, parent, to);
    // A very strong colony gives two.
    const again = framesOfBees(parent, day) > 13 && plan.year >= 2023 && random.chance(0.6) ? neediestYard(world, visit.yard) : null;
    if (again !== null) split(world, visit, parent, again);
  }
}

function neediestYard(world: World, here: string): YardCode | null {
  const want = (yard: YardCode) => Math.min(world.plan.goal[yard] ?? 0, roomIn(yard)) - world.roster.count(yard);
  const yards = (Object.keys(world.plan.goal) as YardCode[]).filter((yard) => world.openYards.has(yard) && want(yard) > 0);
  if (yards.some((yard) => yard === here)) return here as YardCode;
  return yards.sort((one, other) => want(other) - want(one))[0] ?? null;
}

function split(world: World, visit: Visit, parent: SimulatedColony, to: YardCode): void {
  const { day, random, plan, roster } = world;
  const label = roster.freeLabel(day, to);
  const newQueen = random.pick(['walk-away', 'walk-away', 'cell', 'cell', 'cell', 'mated', 'mated', 'mated', 'virgin'] as const);
  const moves = newQueen !== 'mated' && random.chance(0.15);
  const fails = newQueen !== 'mated' && random.chance(0.14);
  const child = startColony(world, label, to, 'split', moves ? parent.queenYear : plan.year, { queenright: moves || !fails });
  if (moves) {
    child.queenLine = parent.queenLine;
    parent.queenYear = plan.year;
    parent.queenright = !fails;
  } else if (newQueen !== 'mated') child.queenLine = parent.queenLine;
  visit.writeChange('split', parent, {
    new_colony: label, to_yard: to === visit.yard ? null : to, queen: moves ? 'moves' : 'stays', new_queen: newQueen,
    queen_year: plan.year, queen_source: newQueen === 'mated' ? child.queenLine : parent.queenLine,
    frames_bees: random.pick([3, 4, 4, 4, 5]), frames_brood: random.pick([2, 3, 3, 3]), frames_stores: random.pick([1, 1, 2]),
  });
  parent.splitThisYear = true;
  parent.setBack = { day, share: Math.min(0.6, (parent.setBack !== null && parent.setBack.day === day ? parent.setBack.share : 0) + 0.28) };
  world.takeOut(newHive(10), to);
  visit.minutes += 16;
  visit.tasks.add('splits');
}
