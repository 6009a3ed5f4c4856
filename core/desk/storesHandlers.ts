import type { StoresColony, StoresList, StoresTotals, StoresYard } from '#shared/contract/stores.ts';
import { daysBetween, type Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { houseRules, numberRule } from '#core/rules/houseRules.ts';
import { inSeasonOf } from '#core/rules/yearWindow.ts';
import { hiveBoxesOf, splitDaysOf } from '#core/space/hiveBoxes.ts';
import { combsHold } from '#core/stores/combsHold.ts';
import { liftingCaution } from '#core/stores/lifting.ts';
import { storesSentence } from '#core/stores/storesSentence.ts';
import { storesPhase, storesToday, winterPlace } from '#core/stores/storesToday.ts';
import { winterTarget } from '#core/stores/storesVerdict.ts';
import { supersToTake, type SupersToTake } from '#core/stores/supersToTake.ts';
import { uniteCandidates } from '#core/stores/uniteWeak.ts';
import { shortOfWinter, winterList, winterWorkIn, type TreatmentDays, type WinterWork } from '#core/stores/winterList.ts';
import type { Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { stockBookOf } from './stockAccount.ts';
import { yardsWithColonies } from './yardsWithColonies.ts';
import { standingIn } from './standing.ts';

export const storesHandlers: Handlers<'stores.list' | 'stores.winter'> = {
  'stores.list': async (_, context) => {
    const book = context.open();
    const picture = await book.picture();
    const asOf = await book.today(context.options.now().day);
    return keptFor(picture, `stores ${asOf}`, () => listOf(book, picture, asOf));
  },
  'stores.winter': async (_, context) => {
    const book = context.open();
    const picture = await book.picture();
    const asOf = await book.today(context.options.now().day);
    return keptFor(picture, `winter list ${asOf}`, () => winterOf(book, picture, asOf));
  },
};

async function listOf(book: Book, picture: Picture, asOf: Day): Promise<StoresList> {
  const { rules } = picture;
  const unit = (await book.settings()).massUnit;
  const account = await stockBookOf(book, asOf);
  const yards = yardsWithColonies(picture, asOf).map(({ yard, states }): StoresYard => {
    const colonies = states.map((state): StoresColony => {
      const boxes = hiveBoxesOf(account, state.id, rules);
      const facts = { day: asOf, rules, unit, holds: combsHold(boxes, state, rules) };
      const stores = storesToday(state, facts);
      const { told, age, fed, reckoned, target, say, amount, feed, reason, rests } = stores;
      const supers = supersToTake(state, facts, boxes?.frames ?? (numberRule(rules, 'stock.frames') < 9 ? 8 : 10));
      return {
        id: state.id, label: state.label, told: told === null ? null : { grams: told.mass, day: told.day, from: told.from, age: age ?? 0 }, fed: { times: fed.times, grams: fed.mass, notReckoned: fed.notReckoned },
        reckoned, target, say, amount, wentShort: shortOfWinter(stores, facts)?.amount ?? null, feed: feed === null ? null : { mix: feed.mix, volume: feed.volume, sugar: feed.sugar }, reason, rests, supers: supers === null ? null : supersView(supers),
      };
    });
    const byId = new Map(states.map((state) => [state.id, state]));
    const named = (id: ColonyState['id']) => ({ id, label: byId.get(id)?.label ?? '' });
    const known = states.map((state) => ({ state, splitDays: splitDaysOf(state, picture.byId, asOf) }));
    return {
      id: yard.id, code: yard.code, name: yard.name, colonies, totals: totalsOf(colonies),
      unite: uniteCandidates(known, asOf, rules).map(({ colony, queenless, reason, partner }) => ({
        colony: named(colony), queenless, reason, partner: partner === null ? null : { ...named(partner.colony), reason: partner.reason },
      })),
    };
  });
  const totals = totalsOf(yards.flatMap(({ colonies }) => colonies));
  const [phase, place] = [storesPhase(asOf, rules), winterPlace(rules)];
  const target = winterTarget(place, rules);
  const feedBy = inSeasonOf(asOf, 'stores.feedBy', rules);
  const daysLeft = daysBetween(asOf, feedBy);
  const on = (key: string) => inSeasonOf(asOf, key, rules);
  return {
    asOf, phase, place, target, feedBy, daysLeft, autumnFrom: on('stores.autumnFrom'), uniteFrom: on('stores.unite.from'), uniteUntil: on('stores.unite.until'), takeFrom: on('stores.takeFrom'),
    totals, yards, sentence: storesSentence(totals, { phase, target, feedBy, daysLeft, unit }), lifting: liftingCaution(), rules: houseRules(rules).filter(({ room }) => room === 'stores'),
  };
}

function supersView({ on, count, say, leaveInstead, reason }: SupersToTake): NonNullable<StoresColony['supers']> {
  const words = (['deep', 'medium', 'shallow'] as const).flatMap((depth) => (on[depth] === 0 ? [] : [`${on[depth]} ${depth}${on[depth] === 1 ? '' : 's'}`])).join(', ');
  return { count, words, say, leaveInstead, reason };
}

function totalsOf(colonies: readonly StoresColony[]): StoresTotals {
  const says = (...wanted: StoresColony['say'][]) => colonies.filter(({ say }) => wanted.includes(say)).length;
  const sum = (of: (colony: StoresColony) => number) => colonies.reduce((total, colony) => total + of(colony), 0);
  return {
    colonies: colonies.length, told: colonies.filter(({ reckoned }) => reckoned !== null).length, take: says('take'), leave: says('leave'), feed: says('feed'), unknown: colonies.filter(({ reckoned }) => reckoned === null).length,
    short: sum(({ say, amount }) => (say === 'feed' ? amount : 0)), wentShort: colonies.filter(({ wentShort }) => wentShort !== null).length, heavy: sum(({ feed }) => (feed?.mix === 'heavy' ? feed.volume : 0)), light: sum(({ feed }) => (feed?.mix === 'light' ? feed.volume : 0)),
    sugar: sum(({ feed }) => feed?.sugar ?? 0), supers: sum(({ supers }) => (supers !== null && supers.say !== 'leave' && supers.say !== 'look first' ? supers.count : 0)),
  };
}

async function winterOf(book: Book, picture: Picture, asOf: Day) {
  const { rules } = picture;
  const unit = (await book.settings()).massUnit;
  const from = inSeasonOf(asOf, 'stores.autumnFrom', rules);
  const feedBy = inSeasonOf(asOf, 'stores.feedBy', rules);
  const began = asOf >= from;
  if (!began) return { asOf, from, feedBy, began, yards: [] };
  const account = await stockBookOf(book, asOf);
  const entries = await standingIn(book.store, { kinds: ['work', 'treatment'], from, until: asOf });
  const yards = yardsWithColonies(picture, asOf).map(({ yard, states }) => ({
    id: yard.id, code: yard.code, name: yard.name,
    colonies: states.map((state) => {
      const facts = {
        day: asOf, rules, unit, holds: combsHold(hiveBoxesOf(account, state.id, rules), state, rules), splitDays: splitDaysOf(state, picture.byId, asOf),
        treatments: entries.flatMap((entry) => treatmentOf(entry, state)), work: entries.flatMap((entry) => workOf(entry, state)),
      };
      return { id: state.id, label: state.label, lines: winterList(state, facts) };
    }),
  }));
  return { asOf, from, feedBy, began, yards };
}

/** True for an entry of the colony itself, or of the whole yard in which it stood that day. */
function isAbout(entry: { readonly day: Day; readonly body: { readonly colony?: ColonyState['id'] | undefined; readonly yard?: ColonyState['stays'][number]['yard'] | undefined } }, state: ColonyState): boolean {
  const { colony, yard } = entry.body;
  return colony === undefined ? yard !== undefined && state.start <= entry.day && yardOn(state, entry.day) === yard : colony === state.id;
}

function treatmentOf(entry: Entry, state: ColonyState): TreatmentDays[] {
  return entry.kind === 'treatment' && isAbout(entry, state) ? [{ day: entry.day, until: entry.body.endDate ?? null, ingredient: entry.body.activeIngredient }] : [];
}

function workOf(entry: Entry, state: ColonyState): WinterWork[] {
  return entry.kind === 'work' && isAbout(entry, state) ? winterWorkIn(entry.body.task ?? '').map((item) => ({ item, day: entry.day })) : [];
}
