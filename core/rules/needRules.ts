import type { HouseRule } from '#shared/contract/order.ts';
import type { NeedKey } from '#shared/contract/needs.ts';

type Definition = Omit<HouseRule, 'value'>;
const practice = 'common practice, no source';

function rule(key: string, label: string, unit: string, standard: number, range: [number, number], source = 'House choice', confidence: HouseRule['confidence'] = practice): Definition {
  return { key: `needs.${key}`, label, room: 'needs', unit, type: 'number', default: standard, range, source, confidence };
}
function on(key: string, label: string, standard: string, source: string, confidence: HouseRule['confidence']): Definition {
  return { key: `needs.${key}`, label, room: 'needs', unit: 'month-day', type: 'month-day', default: standard, range: null, source, confidence };
}

/** How grave each is (0: never asked), and its minutes for one colony, or for the yard where it is about a whole yard. */
const weights: Readonly<Record<NeedKey, readonly [name: string, grave: number, minutes: number]>> = {
  walkAwayLaying: ['Walk-away split', 3, 8],
  newQueenLaying: ['New queen', 3, 8],
  queenlessLaying: ['Queen missing', 4, 8],
  swarmCellsLook: ['Swarm cells seen', 4, 12],
  treatmentOff: ['Treatment taken off', 3, 4],
  miteRecount: ['Mites counted after a treatment', 2, 8],
  mitesOver: ['Mites over the threshold', 5, 6],
  mitesCount: ['Mite counts', 2, 8],
  mitesSoon: ['Mites near the threshold', 2, 8],
  winterBees: ['Treatment before the winter bees', 4, 6],
  supersOff: ['Supers off before a treatment', 3, 10],
  storesAutumn: ['Stores short in autumn', 5, 6],
  storesWinter: ['Stores short in winter or spring', 5, 5],
  heft: ['Hefting in winter', 2, 2],
  addBox: ['Box or super', 3, 5],
  swarmRisk: ['Swarm risk', 3, 12],
  splitBy: ['Splits', 1, 25],
  requeen: ['Requeening', 2, 15],
  noEggs: ['No laying queen', 4, 15],
  weakAutumn: ['Weak in autumn', 3, 15],
  winterList: ['Winter list', 3, 4],
  harvest: ['Harvest and supers off', 3, 12],
  look: ['Look', 2, 12],
  deadOut: ['Dead-out', 4, 15],
  renewal: ['Registration of a yard', 2, 15],
  orders: ['Orders', 3, 15],
  mend: ['Equipment to mend', 1, 10],
};

const minutes = 'House choice; a whole look takes 10 to 20 minutes (edbka.org.uk/time), a wash 6 with a helper and 12 alone';

/** By what numbers the list of needs asks, ranks and reckons its minutes: those of `core/attention/needs/`. */
export const needRuleDefinitions: readonly Definition[] = [
  rule('ahead', 'What is coming is shown, before its first day', 'days', 7, [0, 60]),
  rule('rank.step', 'So many days past the last day count as much as one step of gravity', 'days', 14, [1, 120]),
  rule('rank.most', 'Days past or left change the place by at most', 'steps', 2, [0, 10]),
  ...(Object.entries(weights) as [NeedKey, (typeof weights)[NeedKey]][]).flatMap(([key, [name, grave, least]]) => [
    rule(`grave.${key}`, `${name}: how grave, from 1 to 5; 0 never asks`, 'steps', grave, [0, 5]),
    rule(`minutes.${key}`, `${name}: working minutes`, 'minutes', least, [0, 480], minutes),
  ]),
  rule('mites.fresh', 'A mite count says something for', 'days', 60, [14, 180]),
  rule('mites.act', 'Mites over the threshold: act within', 'days', 14, [1, 60]),
  on('mites.from', 'Mites are counted from', '05-01', 'House choice for the northern tier: warm enough to open every hive', practice),
  on('winterBees.from', 'The treatment before the winter bees is asked for from', '08-01', 'Extension calendars: treat in August, before the winter bees are raised', 'from memory'),
  on('winterBees.by', 'Treated before the winter bees by', '08-31', 'Extension calendars: treat in August, before the winter bees are raised', 'from memory'),
  rule('winterBees.early', 'A treatment this long before is early enough for the winter bees', 'days', 21, [0, 60]),
  rule('mites.ahead', 'A yard that will reach the threshold is spoken of before that day', 'days', 14, [0, 60]),
  on('stores.from', 'Autumn stores are judged from', '08-20', 'House choice', practice),
  rule('stores.emergency', 'Stores in winter and spring below which a colony is fed at once', 'lb', 15, [0, 60], 'House choice: two full deep combs', practice),
  on('stores.winterFrom', 'Winter stores are judged from', '12-15', 'House choice', practice),
  on('stores.winterUntil', 'Winter stores are judged until', '05-01', 'House choice', practice),
  rule('stores.fresh', 'A word on stores says something in winter for', 'days', 60, [7, 180]),
  rule('heft.every', 'Hives are hefted in winter every', 'days', 14, [7, 60], 'A UK author (theapiarist.org, weighty matters): every 2 weeks', 'read-weak'),
];
