import type { Grams } from '#shared/brands.ts';
import { dayInWords, monthDayInWords, type Day } from '#shared/days.ts';
import { number } from '#shared/figures.ts';
import { winterTasks, type WinterTask } from '#shared/winterTasks.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RestsOn } from '#core/journal/restsOn.ts';
import { judgeMites, miteThresholdsOn } from '#core/mites/miteThresholds.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { inSeasonOf } from '#core/rules/yearWindow.ts';
import { latestStrength } from '#core/space/latestLook.ts';
import { mass, storesToday, winterPlace, type StoresFacts, type StoresToday } from './storesToday.ts';
import { storesVerdict, type StoresVerdict } from './storesVerdict.ts';
import { queenright } from './uniteWeak.ts';

/** What a colony is made ready with, in the order in which it is gone through. */
export const winterItems = ['fed', 'mites', 'queen', 'strength', 'reduce', 'wrap', 'dry'] as const;
export type WinterItem = (typeof winterItems)[number];

/** `short`: not fed enough, and too late to feed syrup; `not told`: the record says nothing of it since the autumn began. */
export interface WinterLine {
  readonly item: WinterItem;
  readonly state: 'done' | 'to do' | 'short' | 'not told';
  readonly words: string;
  readonly rests: RestsOn | null;
}

/** Work on the colony or its yard that was written down: entrances reduced, hives wrapped, dryness seen to. */
export interface WinterWork {
  readonly item: WinterTask;
  readonly day: Day;
}

/** A treatment of the colony or of its yard while it stood there. */
export interface TreatmentDays {
  readonly day: Day;
  readonly until: Day | null;
  readonly ingredient: string;
}

export interface WinterFacts extends StoresFacts {
  readonly splitDays: readonly Day[];
  readonly treatments: readonly TreatmentDays[];
  readonly work: readonly WinterWork[];
}

/** How the task of a work entry names what is done to a hive for winter. Notes are not read: they also say what was not done. */
const workWords: readonly { readonly item: WinterWork['item']; readonly says: RegExp }[] = [
  { item: 'reduce', says: /\breduc(e|ed|er|ers|ing)\b|\bmouse ?guards?\b/i },
  { item: 'wrap', says: /\bwrap(s|ped|ping)?\b|\binsulat(e|ed|ion)\b/i },
  { item: 'dry', says: /\bmade dry\b|\btilt(ed)?\b|\btop entrances?\b|\bupper entrances?\b|\bquilts?\b|\bmoisture boards?\b/i },
];

/** What a task tells to have been done for winter. */
export function winterWorkIn(task: string): WinterWork['item'][] {
  return workWords.filter(({ says }) => says.test(task)).map(({ item }) => item);
}

/** The list of one colony for the winter of a day's season, from what was written down since that autumn began. */
export function winterList(state: ColonyState, facts: WinterFacts): WinterLine[] {
  const since = inSeasonOf(facts.day, 'stores.autumnFrom', facts.rules);
  return [fed(state, facts), mites(state, facts, inSeasonOf(facts.day, 'mites.begins.decrease', facts.rules)), queen(state, facts, since), strength(state, facts, since), ...(Object.keys(winterTasks) as WinterTask[]).map((item) => worked(item, facts, since))];
}

/** In winter, what a colony lacked of its winter stores by what was last told and fed since; null where it lacked nothing, or nothing that holds was told. */
export function shortOfWinter({ phase, told, fed: since, reckoned }: StoresToday, { rules, holds }: StoresFacts): StoresVerdict | null {
  if (phase !== 'winter' || reckoned === null || told === null) return null;
  const verdict = storesVerdict((told.mass + since.mass) as Grams, winterPlace(rules), rules, holds);
  return verdict.say === 'feed' ? verdict : null;
}

/** Fed for the winter or not, in winter too: then by what there was when feeding was over. */
function fed(state: ColonyState, facts: StoresFacts): WinterLine {
  const stores = storesToday(state, facts);
  const { told, rests } = stores;
  if (stores.reckoned === null || told === null) return { item: 'fed', state: 'not told', words: stores.reason, rests };
  if (stores.phase !== 'winter') return { item: 'fed', state: stores.say === 'feed' ? 'to do' : 'done', words: stores.reason, rests };
  const verdict = shortOfWinter(stores, facts);
  if (verdict === null) return { item: 'fed', state: 'done', words: stores.reason, rests };
  const over = monthDayInWords(inSeasonOf(facts.day, 'stores.feedBy', facts.rules));
  return { item: 'fed', state: 'short', words: `${mass(verdict.amount, facts.unit)} short of ${mass(verdict.target, facts.unit)} when feeding was over; liquid feed is past its day, ${over}. ${stores.reason}`, rests };
}

function mites({ miteCounts, looks }: ColonyState, { day, rules, treatments }: WinterFacts, since: Day): WinterLine {
  const count = miteCounts.findLast((one) => one.day >= since && one.day <= day);
  const treated = treatments.filter((one) => one.day >= since && one.day <= day).toSorted((a, b) => (a.day < b.day ? -1 : 1)).at(-1);
  const winter = inSeasonOf(day, 'season.winter', rules);
  // Hives stay shut then: a treatment of the winter is the last word, and nobody counts after it.
  if (treated !== undefined && treated.day >= winter && (count === undefined || count.day <= treated.day)) return { item: 'mites', state: 'done', words: `Treated with ${treated.ingredient} from ${dayInWords(treated.day)}; in winter it is not counted again.`, rests: { kind: 'treatment', day: treated.day } };
  const treatedWords = treated === undefined ? '' : `treated with ${treated.ingredient} from ${dayInWords(treated.day)}`;
  if (count === undefined) return { item: 'mites', state: 'not told', words: treated === undefined ? 'Neither counted nor treated this autumn.' : `${capital(treatedWords)}, not counted since.`, rests: treated === undefined ? null : { kind: 'treatment', day: treated.day } };
  const brood = looks.findLast((one) => one.day <= day && one.framesBrood !== null)?.framesBrood !== 0;
  const per100 = (100 * count.mites) / count.bees;
  const found = `${number(per100, 1)} mites in 100 bees on ${dayInWords(count.day)}`;
  const rests: RestsOn = { kind: 'mites', day: count.day };
  if (judgeMites(per100, miteThresholdsOn(count.day, brood, rules)) !== 'act') return { item: 'mites', state: 'done', words: `${found}, under the threshold.`, rests };
  // A treatment that began on the day of the count or later answers it; whether it worked, only a count tells.
  if (treated !== undefined && treated.day >= count.day) return { item: 'mites', state: 'not told', words: `${found}; ${treatedWords}, not counted since.`, rests };
  return { item: 'mites', state: 'to do', words: `${found}, over the threshold, and no treatment since.`, rests };
}

function queen(state: ColonyState, { day, rules }: StoresFacts, since: Day): WinterLine {
  const look = state.looks.findLast((one) => one.day >= since && one.day <= day && (one.eggs !== null || one.queenSeen === true));
  const reign = state.reigns.findLast((one) => one.since <= day && (one.until === null || one.until > day));
  if (reign === undefined) return { item: 'queen', state: 'to do', words: 'No queen in the record.', rests: null };
  const year = reign.year === null ? 'of a year not written down' : `of ${reign.year}`;
  if (look === undefined) return { item: 'queen', state: 'not told', words: `Queen ${year}; neither she nor eggs were looked for this autumn.`, rests: null };
  const rests: RestsOn = { kind: 'inspection', day: look.day };
  if (!queenright(state, day, rules)) return { item: 'queen', state: 'to do', words: `Queen ${year}, but no eggs on ${dayInWords(look.day)}.`, rests };
  return { item: 'queen', state: 'done', words: `Queen ${year}; ${look.eggs === true ? 'eggs seen' : look.queenSeen === true ? 'she was seen' : 'no eggs, as is usual then,'} on ${dayInWords(look.day)}.`, rests };
}

function strength(state: ColonyState, { day, rules, splitDays }: WinterFacts, since: Day): WinterLine {
  const found = latestStrength(state, { day, rules, splitDays });
  if (found === null || found.look.day < since) return { item: 'strength', state: 'not told', words: 'Frames of bees were not told this autumn.', rests: null };
  const { framesBees, day: on } = found.look;
  const least = numberRule(rules, 'stores.winterFrames');
  const enough = framesBees >= least;
  return { item: 'strength', state: enough ? 'done' : 'to do', words: `${number(framesBees, 2)} frames of bees on ${dayInWords(on)}${enough ? '' : `, fewer than ${number(least, 1)}: unite it`}.`, rests: { kind: 'inspection', day: on } };
}

const notWritten: Readonly<Record<WinterWork['item'], string>> = {
  reduce: 'Not written down that its entrance was made small.', wrap: 'Not written down that it was wrapped.', dry: 'Not written down that its damp can get out and rain runs off.',
};
const written: Readonly<Record<WinterWork['item'], string>> = { reduce: 'Entrance made small', wrap: 'Wrapped', dry: 'Made dry' };

function worked(item: WinterWork['item'], { day, work }: WinterFacts, since: Day): WinterLine {
  const done = work.filter((one) => one.item === item && one.day >= since && one.day <= day).toSorted((a, b) => (a.day < b.day ? -1 : 1)).at(-1);
  return done === undefined ? { item, state: 'not told', words: notWritten[item], rests: null } : { item, state: 'done', words: `${written[item]} on ${dayInWords(done.day)}.`, rests: { kind: 'work', day: done.day } };
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
