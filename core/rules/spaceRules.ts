import type { HouseRule } from '#shared/contract/order.ts';

type Definition = Omit<HouseRule, 'value'>;
const practice = 'common practice, no source';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source: string, confidence: HouseRule['confidence']): Definition {
  return { key: `space.${key}`, label, room: 'space', unit, type: 'number', default: standard, range, source, confidence };
}
function yearDay(key: string, label: string, standard: string, source: string, confidence: HouseRule['confidence']): Definition {
  return { key: `space.${key}`, label, room: 'space', unit: 'month-day', type: 'month-day', default: standard, range: null, source, confidence };
}

const seven = 'A teaching page and a hobby rule: seven of ten frames (mhfmbeeapiary.edublogs.org, thebeejournal.blogspot.com); published from 5 to 6 frames of brood to 80 to 90 % full';
const queenAge = 'Older British work (Simpson, 1960s): second-year queens swarm about twice as often as first-year ones, third-year about three times; fewer swarm cells with young queens (Hauser and Lensky 1994)';
const trunch = 'Trunch Beekeepers: every 5 days at high risk, 7 to 10 at lower';
const novice = 'A club’s novice guide: bees on 8 drawn frames, brood on at least 4, better 5 to 6';
const cutOff = '8 to 10 weeks before the last useful flow ends with a mated queen, 12 with a cell, 13 to 14 walk-away; Michigan and Minnesota practice: 1 to 15 July, walk-away by mid June';

/** When a colony wants room, how likely it is to swarm, and until when it may be split. */
export const spaceRuleDefinitions: readonly Definition[] = [
  yearDay('from', 'Boxes are added from', '04-15', 'House choice for the northern tier; put in your own', practice),
  yearDay('until', 'Boxes are added until', '07-20', 'House choice for the northern tier: the main flow ends; later where a second one follows', practice),
  rule('full', 'A box is wanted when bees cover', 'share', 0.7, [0.3, 1], seven, 'read-weak'),
  rule('watch', 'Room is watched from bees covering', 'share', 0.6, [0.2, 1], 'Six of ten frames, one less than what asks for a box', practice),
  rule('lookHolds', 'A look tells of a colony’s strength for', 'days', 21, [5, 60], 'House choice: one worker brood cycle', practice),
  yearDay('swarm.from', 'Swarm season begins on', '04-25', 'Northern US: late April to June; UK May to July, peak late May to June (Trunch Beekeepers, read)', 'from memory'),
  yearDay('swarm.until', 'Swarm season ends on', '06-30', 'Northern US: late April to June; UK May to July, peak late May to June (Trunch Beekeepers, read)', 'from memory'),
  rule('swarm.look', 'Days between looks in swarm season', 'days', 7, [3, 21], 'Southport and District Beekeepers, Numbers: a cell is sealed 8 days after the egg, so every 7 days', 'read'),
  rule('swarm.lookHigh', 'Days between looks at high swarm risk', 'days', 5, [2, 14], trunch, 'read'),
  rule('swarm.cast', 'After a prime swarm the first cast may leave from day', 'days', 8, [4, 14], 'Southport and District Beekeepers, Numbers: first virgin on day 16, 8 days after the prime swarm', 'read'),
  rule('risk.season', 'Swarm risk: in swarm season', 'points', 1, [0, 10], 'House choice', practice),
  rule('risk.lastYear', 'Swarm risk: queen of last year', 'points', 1, [0, 10], queenAge, 'from memory'),
  rule('risk.older', 'Swarm risk: older queen', 'points', 2, [0, 10], queenAge, 'from memory'),
  rule('risk.full', 'Swarm risk: bees on as many frames as ask for a box', 'points', 1, [0, 10], 'House choice', practice),
  rule('risk.packed', 'Swarm risk: packed', 'points', 2, [0, 10], 'House choice', practice),
  rule('packed', 'A colony is packed when bees cover', 'share', 0.85, [0.4, 1], 'House choice, from the 80 to 90 % full at which some add a box', practice),
  rule('risk.cells', 'Swarm risk: swarm cells at the last look', 'points', 4, [0, 10], 'House choice: cells say more than all the rest', practice),
  rule('risk.split', 'Swarm risk: taken off for a split this season', 'points', 2, [0, 10], 'House choice', practice),
  rule('risk.some', 'Swarm risk is called some from', 'points', 3, [1, 20], 'House choice', practice),
  rule('risk.high', 'Swarm risk is called high from', 'points', 4, [1, 30], 'House choice', practice),
  rule('split.bees', 'A colony may be split from frames of bees', 'frames', 8, [4, 30], novice, 'read-weak'),
  rule('split.brood', 'A colony may be split from frames of brood', 'frames', 4, [2, 20], novice, 'read-weak'),
  yearDay('split.from', 'Splits are made from', '05-01', 'House choice for the northern tier: drones fly and nights are mild', practice),
  yearDay('frost', 'First autumn frost', '09-28', 'House choice for a cold valley; put in your own', practice),
  rule('split.weeks', 'From a split’s first eggs to the first frost at least', 'weeks', 11, [4, 26], cutOff, 'from memory'),
];
