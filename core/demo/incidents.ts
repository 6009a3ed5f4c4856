import { dayText } from './calendar.ts';
import { entryRow } from './demoOperation.ts';
import { hiveOf, leaveEmpty, bringHome, newHive, startColony } from './hiving.ts';
import type { YardCode } from './ossarPlan.ts';
import { framesOfBees, type SimulatedColony } from './simulatedColony.ts';
import { recordLoss } from './winterWork.ts';
import { closeVisit, money, Visit, type World } from './world.ts';

/** What happened on one day only, apart from the rounds. */
export function onTheDay(world: World): void {
  const today = dayText(world.day);
  if (today === '2022-06-11') catchSwarm(world);
  if (today === '2023-07-15') flood(world);
  if (today === '2023-07-16') leaveTheFlood(world);
  if (today === '2024-04-13') returnToTheBend(world);
  if (today === '2025-08-13') toTheGoldenrod(world);
  if (today === '2025-10-05') backFromTheGoldenrod(world);
}

function catchSwarm(world: World): void {
  const label = 'Plum Tree';
  startColony(world, label, 'OO', 'swarm', world.plan.year - 1);
  world.takeOut(newHive(10), 'OO');
  // Its queen's age is not known, so nothing is written about it; and it was entered four evenings later.
  const row = entryRow(world.day, 'install', { yard: 'OO', colony: label, origin: 'swarm', note: 'hung in the plum tree, about a pailful' });
  world.desk.enter(world.day + 4, 20 * 60 + 15, 'A swarm, entered late', [row]);
}

function flood(world: World): void {
  const visit = new Visit(world.day, 'LB');
  const { roster, random } = world;
  for (const colony of random.shuffled(roster.living('LB')).slice(0, 2)) recordLoss(world, visit, colony, ['flood'], 'the lower stand was under water');
  visit.writeChange('note', null, { note: 'River over the bank in the night. The rest stand dry for now and go to Kiln Field tomorrow.' });
  visit.tasks.add('flood');
  visit.minutes = 120;
  closeVisit(world, visit, 'Flood at Larch Bend', true);
}

function leaveTheFlood(world: World): void {
  const visit = new Visit(world.day, 'LB');
  for (const colony of world.roster.living('LB')) move(world, visit, colony, 'KF');
  bringHome(world, 'LB');
  visit.tasks.add('moving');
  visit.minutes = 240;
  closeVisit(world, visit, `Larch Bend moved to Kiln Field, ${visit.rows.length} colonies`, true);
}

function returnToTheBend(world: World): void {
  const visit = new Visit(world.day, 'KF');
  for (const colony of world.roster.living('KF')) if (colony.label.startsWith('LB-') && colony.death === null) move(world, visit, colony, 'LB');
  visit.tasks.add('moving');
  visit.minutes = 200;
  closeVisit(world, visit, 'Back to Larch Bend, on the terrace above the old stands', true);
}

function toTheGoldenrod(world: World): void {
  const visit = new Visit(world.day, 'OO');
  const strong = world.roster
    .living('OO')
    .filter((colony) => colony.death === null && colony.queenright && !colony.eightFrame)
    .sort((one, other) => framesOfBees(other, world.day) - framesOfBees(one, world.day));
  for (const colony of strong.slice(0, 3)) move(world, visit, colony, 'KF');
  visit.tasks.add('moving');
  visit.minutes = 100;
  closeVisit(world, visit, 'To the goldenrod', true);
}

function backFromTheGoldenrod(world: World): void {
  const visit = new Visit(world.day, 'KF');
  for (const colony of world.roster.living('KF')) if (colony.label.startsWith('OO-') && colony.supers === 0) move(world, visit, colony, 'OO');
  visit.tasks.add('moving');
  visit.minutes = 100;
  closeVisit(world, visit, 'Home from the goldenrod', true);
}

function move(world: World, visit: Visit, colony: SimulatedColony, to: YardCode): void {
  visit.writeChange('move', colony, { to_yard: to });
  world.shed.carry(hiveOf(colony), colony.yard, to);
  world.roster.move(world.day, colony, to);
}

/** What the keeper came upon, or did once, on a round. */
export function onTheRound(world: World, visit: Visit): void {
  const { plan, monthDay, roster, day } = world;
  const year = plan.year;
  const happens = (inYear: number, yard: YardCode, from: string, until: string, what: string) =>
    year === inYear && visit.yard === yard && monthDay >= from && monthDay <= until && roster.count(yard) > 3 && world.once(yard, what);
  if (happens(2022, 'OO', '08-24', '09-20', 'robbed') || happens(2025, 'LB', '08-24', '09-20', 'robbed')) {
    const weak = weakest(world, visit.yard);
    if (weak !== null) recordLoss(world, visit, weak, ['robbing'], 'robbed out, wax crumbs on the board');
  }
  if (happens(2023, 'KF', '04-30', '05-12', 'absconded')) {
    const gone = roster.living('KF').find((colony) => colony.origin === 'package' && day - colony.start < 25);
    if (gone !== undefined) {
      visit.writeChange('absconded', gone, { note: 'empty box, comb just begun' });
      leaveEmpty(world, gone);
      roster.end(day, gone, 'absconded');
    }
  }
  if (happens(2024, 'QY', '06-26', '07-20', 'sprayed')) {
    const colony = roster.living('QY').filter((one) => one.supers > 0).at(2);
    if (colony !== undefined) recordLoss(world, visit, colony, ['pesticide'], 'heaps of dead bees in front, the bean field was sprayed');
  }
  if (happens(2025, 'NS', '05-01', '05-31', 'bear')) {
    const colony = roster.living('NS').find((one) => day - one.start > 20);
    if (colony !== undefined) recordLoss(world, visit, colony, ['bear or vandal'], 'a bear; frames all over the slope');
  }
  if (happens(2024, 'OO', '07-08', '08-05', 'gift')) {
    const colony = young(world, 'OO');
    if (colony !== undefined) {
      visit.writeChange('gift', colony, { note: 'to the helper, the hive stays' });
      leaveEmpty(world, colony);
      roster.end(day, colony, 'given');
    }
  }
  sellColonies(world, visit);
  if (happens(2023, 'QY', '08-01', '09-03', 'forgotten queen')) rememberLate(world, visit);
}

function weakest(world: World, yard: string): SimulatedColony | null {
  const without = world.roster.living(yard).filter((colony) => colony.supers === 0);
  return without.sort((one, other) => framesOfBees(one, world.day) - framesOfBees(other, world.day))[0] ?? null;
}

/** A split of the year, queenright, with no supers on. */
function young(world: World, yard: string): SimulatedColony | undefined {
  return world.roster
    .living(yard)
    .find((colony) => colony.origin === 'split' && colony.queenright && colony.death === null && colony.supers === 0 && world.day - colony.start > 28 && world.day - colony.start < 80);
}

/** Split colonies sold in July: one in 2024, two in 2025, four in 2026. */
function sellColonies(world: World, visit: Visit): void {
  const { plan, monthDay, day, roster } = world;
  if (monthDay < '07-01' || monthDay > '08-10') return;
  const atMost = { 2024: 1, 2025: 2, 2026: 4 }[plan.year] ?? 0;
  for (let number = 1; number <= atMost; number += 1) {
    const colony = roster.count(visit.yard) > 9 && visit.yard !== 'NS' ? young(world, visit.yard) : undefined;
    if (colony === undefined || !world.once('all', `sale ${number}`)) continue;
    visit.writeChange('sale', colony, { price: money(235 + 10 * (plan.year - 2024)), note: 'on five frames' });
    world.shed.move('deep frame', 5, visit.yard, 'scrap', 'went with the bees sold');
    leaveEmpty(world, colony, 5);
    roster.end(day, colony, 'sold');
    return;
  }
}

/** A queen put in and remembered three weeks later. */
function rememberLate(world: World, visit: Visit): void {
  const colony = world.roster.living(visit.yard).find((one) => one.queenright && one.death === null && world.plan.year - one.queenYear >= 1);
  if (colony === undefined) return;
  const year = world.plan.year;
  const row = entryRow(visit.day, 'requeen', { yard: visit.yard, colony: colony.label, queen_year: year, queen_source: colony.queenLine, note: 'own cell, mated here; remembered three weeks later' });
  colony.queenYear = year;
  world.desk.enter(visit.day + 21, 21 * 60, 'A requeening entered late', [row]);
}

/** One wash of August 2024 was typed with a nought too many and put right the next evening. */
export function mistype(world: World, visit: Visit): void {
  if (world.plan.year !== 2024 || visit.yard !== 'QY' || world.monthDay < '08-01' || world.monthDay > '09-03') return;
  const place = visit.rows.findIndex((row) => row.entry === 'mites' && Number(row.mites) >= 3 && Number(row.mites) <= 12);
  const row = visit.rows[place];
  if (row === undefined || !world.once('QY', 'mistyped')) return;
  visit.rows[place] = { ...row, mites: `${row.mites}0` };
  visit.structural = true;
  visit.later.push({ row: place, day: visit.day + 1, reason: `typed ${row.mites}0 for ${row.mites}`, instead: row });
}
