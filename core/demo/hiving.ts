import { yearOfNumber } from './calendar.ts';
import { nucSeller, packageSeller, priceOf } from './ossarPlan.ts';
import { hiveBase, type Parts } from './shed.ts';
import type { SimulatedColony, SimulatedOrigin } from './simulatedColony.ts';
import { money, type Visit, type World } from './world.ts';

/** Equipment a new colony needs: one deep box on a complete stand. */
export function newHive(frames: number): Parts {
  const parts: Parts = { 'deep box': 1, 'deep frame': frames };
  for (const item of hiveBase) parts[item] = 1;
  return parts;
}

/** Equipment a colony stands on now. */
export function hiveOf(colony: SimulatedColony): Parts {
  if (colony.eightFrame) return {};
  const parts = newHive(10 * colony.deeps);
  parts['deep box'] = colony.deeps;
  if (colony.supers > 0) {
    parts['medium super'] = colony.supers;
    parts['medium frame'] = 10 * colony.supers;
  }
  if (colony.excluder) parts['queen excluder'] = 1;
  return parts;
}

/** Hives bought packages or nucs on the day they come. */
export function hiveBought(world: World, visit: Visit, origin: 'package' | 'nuc', quantity: number): void {
  const { day, random } = world;
  const year = yearOfNumber(day);
  for (let number = 0; number < quantity; number += 1) {
    // The first hives of the book stand on the eight-frame boxes that were there already.
    const eightFrame = year === 2021 && origin === 'package' && visit.yard === 'OO' && number < 3;
    const label = eightFrame ? `E-${number + 1}` : world.roster.freeLabel(day, visit.yard);
    const queenYear = origin === 'nuc' && random.chance(0.35) ? year - 1 : year;
    const colony = startColony(world, label, visit.yard, origin, queenYear, { eightFrame });
    const supplier = origin === 'package' ? packageSeller : nucSeller;
    visit.writeChange('install', colony, {
      origin, supplier, queen_year: queenYear, queen_source: colony.queenLine, price: money(priceOf(origin, year)),
      note: eightFrame ? 'eight-frame hive' : null,
    });
    if (origin === 'package' || random.chance(0.5)) visit.write('feed', colony, { feed: 'syrup 1:1', amount: 1, unit: 'gal' });
    if (!eightFrame) {
      world.takeOut(newHive(origin === 'nuc' ? 6 : 10), visit.yard);
      if (origin === 'nuc') world.shed.move('deep frame', 4, 'supplier', visit.yard, 'came with the nucs');
    }
    visit.minutes += 14;
  }
  world.openYards.add(visit.yard);
  visit.tasks.add(origin === 'package' ? 'hiving packages' : 'hiving nucs');
}

export function startColony(
  world: World, label: string, yard: string, origin: SimulatedOrigin, queenYear: number,
  more: { eightFrame?: boolean; queenright?: boolean } = {},
): SimulatedColony {
  return world.roster.begin(world.day, { label, origin, yard, queenYear, ...more }, world.random);
}

/** Lays a hive's parts aside in its yard until the next clean-up takes them home, less the frames that went with the bees. */
export function leaveEmpty(world: World, colony: SimulatedColony, framesGone = 0): void {
  const aside = { ...world.deadOuts.get(colony.yard) };
  for (const [item, quantity] of Object.entries(hiveOf(colony)) as [keyof Parts, number][]) aside[item] = (aside[item] ?? 0) + quantity;
  aside['deep frame'] = (aside['deep frame'] ?? 0) - framesGone;
  world.deadOuts.set(colony.yard, aside);
}

/** Takes empty hives home; part of the old comb is thrown out in spring. */
export function bringHome(world: World, yard: string): boolean {
  const aside = world.deadOuts.get(yard);
  if (aside === undefined) return false;
  world.deadOuts.delete(yard);
  world.shed.carry(aside, yard, 'shed');
  const frames = aside['deep frame'] ?? 0;
  if (world.monthDay < '06-01' && frames >= 10) {
    world.shed.move('deep frame', Math.round(frames * world.random.between(0.1, 0.25)), 'shed', 'scrap', 'old comb');
    if (world.random.chance(0.2)) world.shed.move('deep box', 1, 'shed', 'scrap', 'rotten corner');
  }
  return frames > 0;
}
