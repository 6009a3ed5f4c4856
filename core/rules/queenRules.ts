import type { HouseRule } from '#shared/contract/order.ts';

function days(key: string, label: string, standard: number, range: [number, number], source: string, confidence: HouseRule['confidence']): Omit<HouseRule, 'value'> {
  return { key: `queens.${key}`, label, room: 'queens', unit: 'days', type: 'number', default: standard, range, source, confidence };
}

const californian = 'UC Agriculture and Natural Resources, Beekeeping in California 1987';
const mature = 'McNeil in The Hive and the Honey Bee 2015 (americanhoneyproducers.org): 5 to 6 days; others say 7 or 10';
const walkAway = 'A practice page on splits (buttsbees.com): cells at 4 to 5 days';
const hiving = 'A page that compares packages: out 2 to 5 days after hiving, eggs 2 to 5 days after that';

/** The days of a queen, from the egg or from what was put into the hive. */
export const queenRuleDefinitions: readonly Omit<HouseRule, 'value'>[] = [
  days('sealed', 'A queen cell is sealed, from the egg, on day', 8, [7, 9], 'Southport and District Beekeepers, Numbers (southportbeekeepers.co.uk)', 'read'),
  days('emerges', 'A queen emerges, from the egg, on day', 16, [15, 18], `${californian}; 15 in a warm nest (scientificbeekeeping.co.uk)`, 'read'),
  days('mature.from', 'A queen can mate, after she emerged, from day', 5, [3, 14], mature, 'read'),
  days('mature.by', 'A queen can mate, after she emerged, by day', 6, [3, 21], mature, 'read'),
  days('eggs.from', 'A young queen’s first eggs, from her own egg, from day', 23, [20, 40], 'An encyclopedia’s table: day 23 and later (liquisearch.com/queen_bee/development)', 'read-weak'),
  days('eggs.by', 'A young queen’s first eggs, from her own egg, by day', 35, [23, 60], 'Planning range of extension texts: day 26 to 35', 'from memory'),
  days('unmated', 'A queen not mated is likely to lay drones, after she emerged, from day', 28, [14, 42], 'A Welsh association’s article (breconshirebeekeeping.co.uk, 2 September 2025): 3 to 4 weeks', 'read'),
  days('larva', 'Age of the larva of a graft or an emergency cell, from the egg', 4, [3, 6], 'Three days as an egg and one as a larva', 'arithmetic'),
  days('ripe', 'Age of a ripe cell that is put in, from the egg', 14, [9, 16], 'Custom of queen rearing: ten days after the graft', 'from memory'),
  days('cells.from', 'A walk-away split is looked at for cells from day', 4, [2, 10], walkAway, 'read-weak'),
  days('cells.by', 'A walk-away split is looked at for cells by day', 5, [2, 12], walkAway, 'read-weak'),
  days('cage.outFrom', 'A caged queen is out from day', 2, [0, 10], hiving, 'read-weak'),
  days('cage.outBy', 'A caged queen is out by day', 5, [0, 14], hiving, 'read-weak'),
  days('cage.eggsFrom', 'Her first eggs, after she is out, from day', 2, [0, 10], hiving, 'read-weak'),
  days('cage.eggsBy', 'Her first eggs, after she is out, by day', 5, [0, 21], hiving, 'read-weak'),
  days('cage.giveUp', 'A caged queen without eggs is replaced from day', 14, [7, 40], 'Extension package guides: no eggs by day 10 to 14', 'from memory'),
];
