import type { HouseRule } from '#shared/contract/order.ts';

type Definition = Omit<HouseRule, 'value'>;
const practice = 'common practice, no source';
const place = 'House choice for the northern tier; put in the days of your place';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source = 'House choice', confidence: HouseRule['confidence'] = practice): Definition {
  return { key: `work.${key}`, label, room: 'work', unit, type: 'number', default: standard, range, source, confidence };
}

function on(key: string, label: string, standard: string, source = place): Definition {
  return { key: `work.${key}`, label, room: 'work', unit: 'month-day', type: 'month-day', default: standard, range: null, source, confidence: practice };
}

const labour = 'Time commitment of beekeeping by operation size (docslib.org/doc/5575782), sideline: up to 50 h for a round of 250 colonies; the table calls itself an upper bound';
const seldom = 'Time commitment of beekeeping by operation size (docslib.org/doc/5575782)';

/** What the plan of the work reckons with: days of the place, how often yards are seen, and minutes. */
export const workRuleDefinitions: readonly Definition[] = [
  rule('frost', 'There is frost in winter (1 yes, 0 no)', 'yes or no', 1, [0, 1], 'House choice; without frost there are no mouse guards and no last day before it'),
  on('frost.first', 'The first autumn frost is about', '09-28'),
  on('flow.from', 'The main flow begins about', '06-10'),
  on('flow.until', 'The main flow ends about', '07-20'),
  rule('buildUp.before', 'Rounds begin, before the main flow', 'days', 84, [0, 200], 'A first full look in early April where the flow begins in June'),
  rule('swarm.before', 'Swarm season begins, before the main flow', 'days', 35, [0, 120], 'Main swarm season of the northern states: late April to June', 'from memory'),
  rule('swarm.after', 'Swarm season ends, after the main flow has begun', 'days', 10, [0, 60]),
  rule('rounds.buildUp', 'Rounds while colonies build up, every', 'days', 14, [3, 60], 'Extension calendars: 10 to 14 days', 'from memory'),
  rule('rounds.swarm', 'Rounds in swarm season, every', 'days', 7, [3, 30], 'A queen cell is sealed 8 days after the egg, so a look every 7 days: Southport and District Beekeepers, Numbers', 'read'),
  rule('rounds.flow', 'Rounds in the flow, every', 'days', 21, [5, 60], 'Extension calendars: 14 to 21 days; every 2 to 3 weeks in summer (docslib.org/doc/5575782, read)', 'from memory'),
  rule('rounds.late', 'Rounds after the flow, every', 'days', 35, [7, 90], `Every 4 to 6 weeks in the fall: ${seldom}`, 'read'),
  rule('rounds.winter', 'Rounds in winter, every', 'days', 49, [7, 120], `Every 6 to 8 weeks: ${seldom}`, 'read'),
  rule('grave.season', 'What the season brings: how grave, from 1 to 5, where not all of it fits', 'steps', 3, [1, 5]),
  rule('grave.delivery', 'Bees and queens that come: how grave, from 1 to 5', 'steps', 5, [1, 5]),
  rule('grave.own', 'Your own tasks: how grave, from 1 to 5', 'steps', 3, [1, 5]),
  rule('minutes.setUp', 'Smoker, suit and tools at each yard', 'minutes', 8, [0, 60]),
  rule('minutes.round', 'A full look, each colony', 'minutes', 12, [1, 60], labour, 'read'),
  rule('minutes.swarm', 'A look for swarm cells, each colony', 'minutes', 5, [1, 60], 'House choice: tipped boxes, and a full look only where cells are seen'),
  rule('minutes.flow', 'A look at the supers in the flow, each colony', 'minutes', 4, [1, 60]),
  rule('minutes.winter', 'Hefting and a look at the entrance in winter, each colony', 'minutes', 2, [1, 60]),
  rule('minutes.super', 'A super put on, each colony', 'minutes', 5, [1, 60]),
  rule('minutes.guard', 'A mouse guard, each colony', 'minutes', 2, [1, 60]),
  rule('minutes.unpack', 'A package hived, each', 'minutes', 15, [1, 120]),
  rule('minutes.nuc', 'A nuc put in its hive, each', 'minutes', 15, [1, 120]),
  rule('minutes.check', 'A short look at one colony', 'minutes', 5, [1, 60]),
  rule('ownHours.weight', 'Weight of these minutes against your own recorded rounds', 'rounds', 8, [1, 100], 'House choice: so many rounds of your own count as much as the published minutes'),
  rule('firstSupers.before', 'First supers go on, before the main flow, from', 'days', 14, [0, 60], 'Before the flow, so that there is room when it comes'),
  rule('firstSupers.by', 'First supers are on, before the main flow, by', 'days', 3, [0, 60], 'Before the flow, so that there is room when it comes'),
  rule('supersOff.by', 'Supers come off, after the main flow, within', 'days', 14, [0, 90], 'Before the treatment of late summer'),
  rule('guards.by', 'Mouse guards are on, after the first frost, within', 'days', 21, [0, 60], 'Tasks by month, northern states: October', 'from memory'),
];
