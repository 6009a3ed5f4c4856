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
  rule('rank.most', 'Days past or left change the place by at most', 'steps', 1, [0, 10]),
  ...(Object.entries(weights) as [NeedKey, (typeof weights)[NeedKey]][]).flatMap(([key, [name, grave, least]]) => [
    rule(`grave.${key}`, `${name}: how grave, from 1 to 5; 0 never asks`, 'steps', grave, [0, 5]),
    rule(`minutes.${key}`, `${name}: working minutes`, 'minutes', least, [0, 480], minutes),
  ]),
  rule('mites.act', 'Mites over the threshold: act within', 'days', 14, [1, 60]),
  on('mites.from', 'Mites are counted from', '05-01', 'House choice for the northern tier: warm enough to open every hive', practice),
  on('winterBees.from', 'The treatment before the winter bees is asked for from', '08-01', 'Extension calendars: treat in August, before the winter bees are raised', 'from memory'),
  on('winterBees.by', 'Treated before the winter bees by', '08-31', 'Extension calendars: treat in August, before the winter bees are raised', 'from memory'),
  rule('winterBees.early', 'A treatment this long before is early enough for the winter bees', 'days', 21, [0, 60]),
  rule('mites.ahead', 'A yard that will reach the threshold is spoken of before that day', 'days', 14, [0, 60]),
  rule('heft.every', 'Hives are hefted in winter every', 'days', 14, [7, 60], 'A UK author (theapiarist.org, weighty matters): every 2 weeks', 'read-weak'),
  rule('heft.within', 'A hefting that is due is done within', 'days', 7, [1, 30]),
  rule('heft.before', 'Stores are weighed or hefted in autumn, before feeding ends, by', 'days', 14, [0, 45], 'House choice: time is left to feed what is short'),
  on('heft.autumn', 'Stores are weighed or hefted in autumn from', '09-10', 'House choice: time is left to feed what is short', practice),
  on('heft.from', 'Hives are hefted in winter from', '12-01', 'House choice for the northern tier', practice),
  on('heft.until', 'Hives are hefted in winter until', '04-10', 'House choice for the northern tier: most stores go in early spring (Moeller 1977)', practice),
  on('feed.from', 'Heavy syrup is fed from', '09-05', 'House choice for the northern tier: once the last supers are off', practice),
  rule('starving.within', 'A colony that may starve is seen to within', 'days', 7, [1, 30]),
  rule('fedHolds', 'After emergency food a hive is left alone for', 'days', 21, [7, 60]),
  rule('box.within', 'A box that is wanted is given within', 'days', 7, [1, 30], 'Southport and District Beekeepers, Numbers: a cell is sealed 8 days after the egg', 'read'),
  rule('look.buildUp', 'Days between looks in spring and after swarm season', 'days', 14, [7, 60], 'Extension calendars: 10 to 14 days in build-up, 14 to 21 in a flow', 'from memory'),
  rule('look.flow', 'Days between looks in summer', 'days', 21, [7, 60], 'Extension calendars: 14 to 21 days in a flow', 'from memory'),
  rule('look.late', 'Days between looks in late season', 'days', 28, [7, 90], 'Extension calendars: every 3 to 4 weeks to the autumn close-down', 'from memory'),
  rule('look.before', 'A look may be had before its last day by', 'days', 2, [0, 14]),
  on('look.from', 'Hives are looked into from', '04-10', 'House choice for the northern tier: 60 °F and bees flying', practice),
  on('look.lateFrom', 'Late season begins on', '08-15', 'House choice for the northern tier', practice),
  on('look.until', 'Hives are looked into until', '10-10', 'House choice for the northern tier', practice),
  rule('noEggs.within', 'A colony without signs of a laying queen is looked at again within', 'days', 7, [1, 30]),
  rule('noEggs.doubt', 'Without signs of a laying queen for so long, laying workers or a drone layer are suspected', 'days', 28, [14, 60], 'Most texts: 3 to 4 weeks queenless, once all worker brood has emerged; 2 weeks at the earliest (Collison, basprings.com/laying-workers, read)', 'from memory'),
  rule('requeen.age', 'A queen is old from her summer', 'summers', 3, [2, 6], 'A queen lives 2 to 3 years (UC Agriculture and Natural Resources, Beekeeping in California 1987); one-year-old queens made 26.5 % more honey (MATE journal, article 6456)', 'read'),
  rule('requeen.temper', 'A colony is fierce from a temper of', 'of 5', 4, [2, 5], 'House choice: twice in a row', practice),
  rule('requeen.spotty', 'A new queen is spoken of after looks whose notes tell of spotty brood', 'looks', 2, [1, 5], 'House choice: one may be a cold night or a shortage of pollen'),
  rule('requeen.brood', 'Little brood is less than this share of the middle of the yard', 'share', 0.5, [0.1, 0.9], 'House choice: at two looks in a row'),
  rule('requeen.mites', 'Many mites are this many times those of the rest of the yard', 'times', 2, [1, 10], 'House choice: at two counts in a row, each beyond its own 95 % limits'),
  rule('requeen.swarms', 'A queen is of swarming stock from swarm cells or swarms in', 'seasons', 2, [1, 5], 'House choice; whether there was room then is not written down'),
  rule('requeen.others', 'A colony is held against its yard where others were counted', 'colonies', 3, [2, 50], 'House choice: the middle of fewer tells nothing'),
  rule('requeen.settled', 'What is seen is a queen’s own from this long after she came', 'days', 42, [21, 90], 'Two worker brood cycles of 21 days', 'arithmetic'),
  on('requeen.from', 'Queens are replaced from', '07-01', 'Extension calendars: requeen in July or August', 'from memory'),
  on('requeen.by', 'Queens are replaced by', '09-05', 'House choice: eggs must be seen before the hives are shut', practice),
  rule('tally.swarm', 'A swarm came of what a rule asked for within', 'days', 21, [7, 60], 'House choice: two looks of swarm season and one more week'),
  rule('tally.soon', 'A loss came of short stores within', 'days', 60, [14, 120], 'House choice'),
  rule('tally.few', 'Fewer colonies than this are not compared', 'colonies', 8, [3, 50], 'House choice: of 7 the interval of any share spans nearly half of all'),
  on('winter.reduce', 'Entrances are reduced against mice by', '10-20', 'Moeller 1977, part 6: lower entrance screened or reduced; the day is a house choice', practice),
  on('winter.wrap', 'Hives are wrapped by', '11-25', 'Extension calendars: wrap in November', 'from memory'),
  on('winter.from', 'The winter list begins on', '10-01', 'House choice', practice),
  on('harvest.first', 'After the main flow supers are looked through from', '07-15', 'At least two thirds of the comb sealed (Czech veterinary faculty note, read); the day is a house choice', practice),
  on('harvest.firstBy', 'The main crop is taken by', '08-05', 'House choice for the northern tier: time is left to treat', practice),
  rule('harvest.early', 'A crop taken so long before is the main crop too', 'days', 21, [0, 90]),
  on('harvest.last', 'The last supers are looked through from', '09-12', 'House choice for the northern tier: the second flow ends', practice),
  on('harvest.lastBy', 'The last supers are off by', '09-30', 'House choice for the northern tier: time is left to feed', practice),
  rule('harvest.stays', 'Last supers that are still on are asked for, after their last day, for', 'days', 30, [0, 120]),
  rule('deadOut.until', 'A dead-out that nobody looked at is asked for', 'days', 60, [1, 365]),
  rule('orders.before', 'A seller’s last day is spoken of before it', 'days', 30, [1, 90]),
  rule('deadOut.by', 'A dead-out is looked at and closed within', 'days', 3, [0, 60], 'House choice: before it is robbed', practice),
  on('mend.from', 'Equipment is mended from', '12-01', 'Extension calendars: repair and assemble in January', 'from memory'),
  on('mend.by', 'Equipment is mended by', '03-31', 'House choice: before the season', practice),
];
