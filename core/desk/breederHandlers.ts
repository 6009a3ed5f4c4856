import type { ColonyId, EntryId } from '#shared/brands.ts';
import { breederWeights, type Breeder, type BreederWeightsView, type BreedersView } from '#shared/contract/breeders.ts';
import type { OutputOf } from '#shared/contract/contract.ts';
import { sourceOf } from '#core/attention/needs/needLines.ts';
import { requeen } from '#core/attention/needs/requeen.ts';
import { requeenReasons } from '#core/attention/needs/requeenReasons.ts';
import { stretch } from '#core/attention/needs/seasonDays.ts';
import type { Store } from '#core/book/store.ts';
import { aliveOn, currentReign } from '#core/journal/colonyState.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { breederRankingInSlices, breederTraits, type BreederTrait, type TraitScore } from '#core/lineage/breeders.ts';
import { breederValues } from '#core/lineage/breederValues.ts';
import { queenView } from '#core/lineage/colonyWords.ts';
import { queenCalendar } from '#core/lineage/queenCalendar.ts';
import { birthsIn } from '#core/lineage/queenDescent.ts';
import { NORMAL_QUANTILE_975 } from '#core/stats/normalQuantile.ts';
import type { Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import { needsNow } from './needsNow.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { breathe, inSlices } from './turns.ts';

const weightsPaper = 'breeder weights';
const evenWeights: BreederWeightsView = { winter: 1, honey: 1, mites: 1, temper: 1, swarming: 1 };

export const breederHandlers: Handlers<'queens.candidates' | 'queens.calendar' | 'queens.breeders' | 'queens.weigh'> = {
  'queens.candidates': async (_, context) => {
    const { facts, today } = await needsNow(context);
    const { from, until } = stretch(facts.rules, 'needs.requeen.from', 'needs.requeen.by', today);
    const yards: OutputOf<'queens.candidates'>['yards'] = [];
    for (const { yard: { id, code, name }, standing } of facts.yards) {
      const colonies = standing.flatMap((colony) => {
        const reasons = requeenReasons(colony, facts).map(({ because, detail, records }) => ({ because, detail, records }));
        return reasons.length === 0 ? [] : [{ id: colony.state.id, label: colony.state.label, queen: colony.reign === null ? null : queenView(colony.reign), reasons }];
      });
      if (colonies.length > 0) yards.push({ id, code, name, standing: standing.length, colonies });
      await breathe();
    }
    return { asOf: today, living: facts.colonies.length, season: { from, until }, yards, sources: requeen.numbers.flatMap((key) => sourceOf(key, facts.rules)) };
  },
  'queens.calendar': async ({ start, on }, context) => {
    const { rules } = await context.open().picture();
    return { steps: queenCalendar(start, on, rules).map(({ step, from, until, rules: keys }) => ({ step, from, until, sources: keys.flatMap((key) => sourceOf(key, rules)) })) };
  },
  'queens.breeders': async (_, context) => {
    const book = context.open();
    const picture = await book.picture();
    const today = await book.today(context.options.now().day);
    const weights = await readWeights(book.store);
    return keptFor(picture, `breeders ${today} ${JSON.stringify(weights)}`, () => rankedIn(book, picture, today, weights));
  },
  'queens.weigh': async (weights, context) => {
    const { store } = context.open();
    const before = await readWeights(store);
    await store.keepPapers([{ kind: weightsPaper, key: 'own', body: JSON.stringify(weights) }]);
    return { before };
  },
};

async function readWeights(store: Store): Promise<BreederWeightsView> {
  const body = (await store.papers(weightsPaper)).get('own');
  return body === undefined ? evenWeights : breederWeights.parse(JSON.parse(body));
}

async function rankedIn(book: Book, picture: Picture, today: BreedersView['asOf'], weights: BreederWeightsView): Promise<BreedersView> {
  const { states, byId, borders } = picture;
  const motherOf = await mothersIn(book, picture, today);
  const homes = new Map<string, Pick<Breeder, 'queen' | 'colony'>>();
  for (const state of states) {
    for (const reign of state.reigns) {
      const had = homes.get(String(reign.queen));
      if (had === undefined || reign.since < had.queen.since) homes.set(String(reign.queen), { queen: queenView(reign), colony: { id: state.id, label: byId.get(state.id)?.label ?? state.label } });
    }
  }
  // Nobody raises daughters from a queen that is gone; the book still learns from hers what is usual.
  const living = new Set(states.flatMap((state) => (aliveOn(state, today) ? [String(currentReign(state)?.queen ?? '')] : [])));
  const values = await inSlices(breederValues(states, motherOf, borders, today));
  const { traits, ranked } = await inSlices(breederRankingInSlices(values, weights, (breeder) => living.has(breeder)));
  const daughters = Map.groupBy([...motherOf.values()], String);
  return {
    asOf: today, weights,
    traits: eachTrait((trait) => ({ says: traits[trait].says, compared: traits[trait].compared })),
    ranked: ranked.flatMap(({ breeder, traits: own, sum, limits, apart }) => {
      const home = homes.get(breeder);
      return home === undefined ? [] : [{ ...home, daughters: daughters.get(breeder)?.length ?? 0, traits: eachTrait((trait) => shown(own[trait])), sum, limits: [limits[0], limits[1]], apart }];
    }),
  };
}

function eachTrait<Value>(of: (trait: BreederTrait) => Value): Record<BreederTrait, Value> {
  const [winter, honey, mites, temper, swarming] = breederTraits;
  return { winter: of(winter), honey: of(honey), mites: of(mites), temper: of(temper), swarming: of(swarming) };
}

function shown(score: TraitScore | null): Breeder['traits'][BreederTrait] {
  if (score === null) return null;
  const half = NORMAL_QUANTILE_975 * score.se;
  return { n: score.n, score: score.score, limits: [score.score - half, score.score + half], shrinkage: score.shrinkage };
}

/** The mother of every queen that was raised here. Only the kinds of entries that begin or end a queen's time by her are read. */
async function mothersIn(book: Book, { states }: Picture, today: BreedersView['asOf']): Promise<Map<EntryId, EntryId>> {
  const stored = await book.store.entries({ kinds: ['install', 'requeen', 'split', 'queen'], until: today });
  const entriesOf = new Map<ColonyId, Entry[]>();
  for (const entry of stored.flatMap(({ entry: one, struck }) => (struck === null ? [one] : [])).toSorted(byOrder)) {
    for (const { colony } of rulesOf(entry.kind).touches(entry.body)) {
      const own = entriesOf.get(colony);
      if (own === undefined) entriesOf.set(colony, [entry]);
      else own.push(entry);
    }
  }
  const mothers = new Map<EntryId, EntryId>();
  for (const [count, state] of states.entries()) {
    if (count % 500 === 0) await breathe();
    for (const { queen, mother } of birthsIn(state, entriesOf.get(state.id) ?? [])) mothers.set(queen, mother.queen);
  }
  return mothers;
}
