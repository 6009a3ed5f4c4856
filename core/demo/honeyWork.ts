import type { Cells } from '#shared/entryForms.ts';
import { dayOfYear } from './calendar.ts';
import { weighedTogether, yardTraits } from './ossarPlan.ts';
import { framesOfBees, type SimulatedColony } from './simulatedColony.ts';
import { entryRow } from './demoOperation.ts';
import type { Visit, World } from './world.ts';

/** What a medium super of ten frames holds when full, pounds of honey. */
const fullSuper = 38;

/** Adds supers where the bees will need the room in the main flow. */
export function addSupers(world: World, visit: Visit): void {
  const { day, monthDay, roster } = world;
  if (monthDay < '05-20' || monthDay > '07-12') return;
  for (const colony of roster.living(visit.yard)) {
    if (!colony.queenright || colony.death !== null || day - colony.start < 30) continue;
    const bees = framesOfBees(colony, day);
    const wanted = bees < 9 ? 0 : bees < 12 || monthDay < '06-05' ? 1 : bees < 15 || monthDay < '06-22' ? 2 : bees < 17.5 ? 3 : 4;
    if (colony.supers < wanted) putOn(world, visit, colony, Math.min(colony.supers === 0 || monthDay < '06-15' ? 1 : 2, wanted - colony.supers));
  }
}

function putOn(world: World, visit: Visit, colony: SimulatedColony, count: number): void {
  const { shed, random } = world;
  // Eight-frame supers were there from before; ten-frame ones are used as far as the shed goes.
  if (!colony.eightFrame) {
    if (shed.count('shed', 'medium super') < count || shed.count('shed', 'medium frame') < 10 * count) return;
    world.takeOut({ 'medium super': count, 'medium frame': 10 * count }, visit.yard);
    if (!colony.excluder && random.chance(0.45) && shed.count('shed', 'queen excluder') > 0) {
      shed.move('queen excluder', 1, 'shed', visit.yard);
      colony.excluder = true;
    }
  }
  colony.supers += count;
  visit.write('supers on', colony, { box: 'medium', count });
  visit.minutes += 4;
  visit.tasks.add('supers on');
}

/** Takes all supers off; returns how many. */
export function takeOff(world: World, visit: Visit, colony: SimulatedColony): number {
  const count = colony.supers;
  if (count === 0) return 0;
  visit.write('supers off', colony, { box: 'medium', count });
  if (!colony.eightFrame) {
    world.shed.carry({ 'medium super': count, 'medium frame': 10 * count, 'queen excluder': colony.excluder ? 1 : 0 }, visit.yard, 'shed');
  }
  colony.excluder = false;
  colony.supers = 0;
  return count;
}

/** The main harvest, once a yard late in July or early in August, and the goldenrod one in September. */
export function harvest(world: World, visit: Visit): void {
  const { monthDay } = world;
  const main = monthDay >= '07-21' && monthDay <= '08-20';
  const second = monthDay >= '09-15' && monthDay <= '10-10';
  if (!main && !second) return;
  const supered = world.roster.living(visit.yard).filter((colony) => colony.supers > 0);
  if (supered.length === 0 || !world.once(visit.yard, main ? 'harvest' : 'second harvest')) return;
  const { plan, random } = world;
  const lot = `${plan.year}-${visit.yard}-${main ? 1 : 2}`;
  const moisture = random.chance(0.5) ? random.normal(main ? 17.3 : 18, 0.5).toFixed(1) : null;
  const together = { gross: 0, tare: 0 };
  for (const colony of supered) {
    const honey = Math.max(0, honeyOf(world, colony, main));
    const count = takeOff(world, visit, colony);
    visit.minutes += 5 * count;
    world.supersHome += count;
    world.honeyHome += Math.min(honey, count * fullSuper);
    for (const net of bySuper(honey, count, random)) {
      // Ten-frame medium with its drawn frames 14 to 18 lb (from memory, scale readings), eight-frame a fifth less.
      const tare = Math.round((colony.eightFrame ? 0.8 : 1) * random.between(14.5, 17.5) * 10) / 10;
      if (weighedTogether.has(visit.yard)) {
        together.gross += net + tare;
        together.tare += tare;
      } else weigh(world, visit, colony, net, tare, moisture, lot);
    }
  }
  if (together.gross > 0) {
    const [gross, tare] = [together.gross.toFixed(1), together.tare.toFixed(1)];
    visit.write('harvest', null, { gross, tare, unit: 'lb', moisture, lot });
    world.yardHoneyLb.push({ season: plan.year, yard: visit.yard, lb: Math.round((Number(gross) - Number(tare)) * 10) / 10 });
  }
  visit.tasks.add('harvest');
}

function weigh(world: World, visit: Visit, colony: SimulatedColony, net: number, tare: number, moisture: string | null, lot: string): void {
  let gross = Math.round((net + tare) * 10) / 10;
  const row = (): Cells =>
    entryRow(visit.day, 'harvest', { yard: visit.yard, colony: colony.label, gross: gross.toFixed(1), tare: tare.toFixed(1), unit: 'lb', moisture, lot });
  // Two supers of one colony may weigh the same to the tenth; the scale is then read a tenth finer on the heavy side.
  while (visit.rows.some((other) => other.entry === 'harvest' && other.colony === colony.label && other.gross === gross.toFixed(1) && other.tare === tare.toFixed(1))) {
    gross += 0.1;
  }
  visit.rows.push(row());
  const year = world.plan.year;
  const weighed = Math.round((Number(gross.toFixed(1)) - tare) * 10) / 10;
  colony.honeyLb.set(year, (colony.honeyLb.get(year) ?? 0) + weighed);
}

/** Pounds a colony gives: strength at the flow, yard, year and queen age count; line and seller do not. */
function honeyOf(world: World, colony: SimulatedColony, main: boolean): number {
  const { plan, random, day } = world;
  const traits = yardTraits[colony.yard as keyof typeof yardTraits];
  const bees = framesOfBees(colony, main ? day - (dayOfYear(day) - 188) : day);
  const age = plan.year - colony.queenYear >= 2 ? 0.8 : 1;
  const flow = main ? 66 * traits.flow : 52 * traits.goldenrod;
  return flow * plan.flow * age * (bees / (main ? 16 : 11)) ** 2 * Math.exp(random.normal(-0.05, 0.32));
}

function bySuper(honey: number, supers: number, random: World['random']): number[] {
  const nets: number[] = [];
  let left = Math.min(honey, supers * fullSuper);
  for (let number = 0; number < supers && left >= 6; number += 1) {
    const net = Math.min(left, Math.max(6, fullSuper * random.between(0.82, 1.02)));
    nets.push(Math.round(net * 10) / 10);
    left -= net;
  }
  return nets;
}

/** Wet supers go back for goldenrod and aster where it pays and what treats the mites allows it. */
export function superForGoldenrod(world: World, visit: Visit): void {
  const { monthDay, roster, plan, day } = world;
  const traits = yardTraits[visit.yard];
  if (monthDay < '08-06' || monthDay > '08-28' || traits.goldenrod < 0.4) return;
  if (activeFor(world, visit.yard) !== 'formic acid' || !world.done.has(`${plan.year} ${visit.yard} harvest`)) return;
  if (!world.once(visit.yard, 'goldenrod supers')) return;
  for (const colony of roster.living(visit.yard)) {
    const bees = framesOfBees(colony, day);
    if (colony.death === null && colony.queenright && colony.supers === 0 && bees > (visit.yard === 'KF' ? 9 : 12)) {
      putOn(world, visit, colony, visit.yard === 'KF' && bees > 13 ? 2 : 1);
    }
  }
}

/** Kiln Field keeps its supers for goldenrod, so only what the label allows with supers on goes in there. */
export function activeFor(world: World, yard: string): string {
  return yard === 'KF' ? 'formic acid' : world.plan.active;
}
