import { refuse, FaultError, type Answer } from '#shared/faults.ts';
import type { Curve, LedgerRow, LossRow } from '#shared/contract/losses.ts';
import type { LossFactors } from '#shared/contract/lossFactors.ts';
import type { Grouping } from '#shared/contract/lossSections.ts';
import type { Ending, United } from '#shared/contract/values.ts';
import type { Day } from '#shared/days.ts';
import type { Season } from '#shared/seasons.ts';
import type { YardId } from '#shared/brands.ts';
import { curveOf, spansSinceStart, type SpanSet } from '#core/losses/curves.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { keepNew, lossAnswers, type AnswerFacts } from '#core/losses/lossAnswers.ts';
import { lossReview } from '#core/losses/lossReview.ts';
import { lossRows } from '#core/losses/lossRows.ts';
import { seasonsOf, type ReviewFacts } from '#core/losses/reviewFacts.ts';
import { ledgerRows, seasonYards } from '#core/losses/seasonLedger.ts';
import { yardTreatmentsOf } from '#core/losses/winterCovariates.ts';
import { orderPlan } from '#core/order/orderPlan.ts';
import { foldStock, stockKinds } from '#core/stock/foldStock.ts';
import { equipmentAvailable } from '#core/stock/stockTable.ts';
import type { ReviewPaper } from '#shared/contract/paper.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import type { Store } from '#core/book/store.ts';
import { reviewPaper } from '#core/losses/paper/reviewPaper.ts';
import { memoryStore } from '#core/book/memoryStore.ts';
import { honeyBySeason } from './colonyHandlers.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { importBytes } from './importFile.ts';
import { seasonNotes } from './lossFactorHandlers.ts';
import { massUnitOf } from './openBook.ts';
import { readPicture, type Picture } from './picture.ts';
import { standing, standingIn } from './standing.ts';

export interface ReportOptions {
  readonly bytes: Uint8Array;
  readonly fileName: string;
  readonly season?: number;
  readonly asOf?: Day;
  readonly target?: number;
  readonly confidence?: number;
  readonly source?: 'package' | 'nuc';
  readonly hiveFrames?: 8 | 10;
  /** Of the page only: whether united colonies count as lost, and a grouping whose curves are wanted beside the usual ones. */
  readonly united?: United;
  readonly by?: Grouping | null;
  /** The clock's day: tells which periods are over. */
  readonly today: Day;
}

/** What is asked of a report, wherever the records come from. */
export type ReportChoices = Omit<ReportOptions, 'bytes' | 'fileName' | 'asOf'>;

/** A report with the review as it goes on paper, which the page shows and the figures leave out. */
export interface WholeReport {
  readonly report: Report;
  /** The season that the review is of. */
  readonly season: Season;
  /** Made only when it is wanted. */
  readonly paper: () => ReviewPaper;
}

type Loss = Pick<LossRow, 'season' | 'period' | 'group' | 'united' | 'atRisk' | 'lost' | 'rate' | 'wilson' | 'clopperPearson' | 'quasi' | 'complete'>;
type ReportCurve = Pick<Curve, 'times' | 'atRisk' | 'lost' | 'survival' | 'low' | 'high'>;

export interface Report {
  readonly asOf: Day | null;
  /** Null for a report on a book, which reads no file. */
  readonly import: {
    readonly read: number;
    readonly entered: number;
    readonly living: number;
    readonly repeats: number;
    readonly toSortOut: readonly { line: number; column: string | null; value: string; sentence: string }[];
  } | null;
  readonly living: number;
  readonly ledger: readonly LedgerRow[];
  readonly losses: readonly Loss[];
  /** Time in days since the colony's start; the band is the log-log one. */
  readonly survival: { readonly all: ReportCurve; readonly byYard: Readonly<Record<string, ReportCurve>> };
  readonly colonies: readonly {
    label: string; start: Day; end: Day | null; how: Ending; origin: string; yard: string; honeyLb: Readonly<Record<string, number>>;
  }[];
  readonly order: {
    readonly target: number;
    readonly confidence: number;
    readonly survivors: { mean: number; low: number; high: number };
    readonly buy: number;
    readonly equipment: readonly { item: string; need: number; have: number; order: number }[];
    readonly orders: readonly { what: string; quantity: number; seller: string | null; orderBy: Day; reason: string }[];
  };
  /** What went with the losses of the season's winter, their causes, and what the numbers can say. */
  readonly factors: LossFactors;
  readonly sentences: { readonly losses: readonly string[]; readonly order: readonly string[] };
}

/** Reads a journal file into a scratch book in memory and reports on it: the ledger, losses, survival and the order. */
export async function reportFromJournal(options: ReportOptions): Promise<Answer<WholeReport>> {
  const store = memoryStore();
  try {
    const found = await importBytes(store, options.bytes, options.fileName, 'month-first');
    await store.commit(
      { at: `${options.today} 00:00`, kind: 'import', title: options.fileName, undoes: null, yards: found.newYards, entries: found.entries.map((entry) => ({ entry, replaces: null })), marks: [], states: found.states, vanished: [] },
      found.position,
    );
    const last = found.entries.at(-1)?.day ?? null;
    const asOf = options.asOf ?? last ?? options.today;
    const imported = { read: found.read, entered: found.entries.length, living: found.living, repeats: found.repeats.length, toSortOut: found.toSortOut.map(({ line, column, value, sentence }) => ({ line, column, value, sentence })) };
    return await reportOfStore(store, { ...options, asOf, lastDay: last, imported });
  } catch (error) {
    if (error instanceof FaultError) return error.fault;
    throw error;
  } finally {
    await store.close();
  }
}

export interface StoreReportOptions extends ReportChoices {
  readonly asOf: Day;
  /** The day of the last entry; null where there is none. */
  readonly lastDay: Day | null;
  readonly imported: Report['import'];
}

/** Reports on what a store holds: the ledger, losses, survival, the order, and the review as it goes on paper. */
export async function reportOfStore(store: Store, options: StoreReportOptions): Promise<Answer<WholeReport>> {
  const { asOf, lastDay: last, imported } = options;
  const picture = await readPicture(store);
  // Seen from an earlier day, what was written down of later ones is not known yet.
  const states = last !== null && asOf < last ? statesAsOf(await standingIn(store, { until: asOf })) : picture.states;
  const facts: ReviewFacts = { states, yards: picture.yardList, borders: picture.borders, asOf, today: options.today };
  const seasons = seasonsOf(facts);
  if (options.season !== undefined && !seasons.includes(options.season)) {
    return refuse('unknown', `The journal has no records of the season ${options.season}.`, { mend: seasons.length === 0 ? 'It has no records at all.' : `It has the seasons ${seasons[0]} to ${seasons.at(-1)}.` });
  }
  const wanted = options.season === undefined ? seasons : [options.season];
  const review = lossReview(facts, options.season, 'lost');
  const answers = lossAnswers(await answerFacts(store, facts, picture), keepNew());
  const notes = await seasonNotes(store, review.season);
  const moved = await standingIn(store, { kinds: stockKinds, until: asOf });
  const account = foldStock(moved.toSorted(byOrder), picture);
  const plan = orderPlan(
    { target: options.target, confidence: options.confidence, source: options.source ?? 'package', hiveFrames: options.hiveFrames ?? 10, united: 'lost', asOf, today: options.today },
    { states, yards: picture.yardList, borders: picture.borders, rules: picture.rules, there: (item) => equipmentAvailable(account, item) },
  );
  return {
    ok: true,
    value: {
      season: review.season,
      paper: () => reviewPaper({ answers, united: options.united ?? 'lost', by: options.by ?? null, notes }, options.season),
      report: {
        asOf: last === null ? null : asOf,
        import: imported,
        living: picture.states.filter((state) => aliveOn(state, asOf)).length,
        ledger: wanted.flatMap((season) => ledgerRows(season, seasonYards(facts.states, facts.yards, season, asOf, facts.borders))),
        losses: wanted.flatMap((season) => lossesOf(facts, season)),
        survival: survivalOf(facts),
        colonies: states.map((state) => ({
          label: state.label, start: state.start, end: state.end, how: state.how, origin: state.origin, yard: codeOf(facts, state.stays.at(-1)?.yard),
          honeyLb: Object.fromEntries(honeyBySeason(state, picture.borders).filter(({ season }) => wanted.includes(season)).map(({ season, lb }) => [String(season), lb])),
        })),
        order: {
          target: plan.target, confidence: plan.confidence, survivors: { mean: plan.survivors.mean, low: plan.survivors.low, high: plan.survivors.high }, buy: plan.buy,
          equipment: plan.equipment.map(({ item, need, have, order }) => ({ item, need, have, order })),
          orders: plan.orders.map(({ what, quantity, seller, orderBy, reason }) => ({ what, quantity, seller, orderBy, reason })),
        },
        factors: answers.factors(review.season, 'season'),
        sentences: { losses: review.sentences, order: plan.sentences },
      },
    },
  };
}

/** With the treatments and settings that the comparisons need, none of them later than the as-of day. */
async function answerFacts(store: Store, facts: ReviewFacts, { rules }: Picture): Promise<AnswerFacts> {
  const treatments = await store.entries({ kinds: ['treatment'], until: facts.asOf });
  return {
    ...facts, rules, byId: new Map(facts.states.map((state) => [state.id, state])), massUnit: massUnitOf(await store.settings()),
    yardTreatments: yardTreatmentsOf(standing(treatments)),
  };
}

function lossesOf(facts: ReviewFacts, season: Season): Loss[] {
  const counted = seasonYards(facts.states, facts.yards, season, facts.asOf, facts.borders);
  return (['winter', 'summer', 'year'] as const).flatMap((period) =>
    (['lost', 'takenOut'] as const).flatMap((united) =>
      lossRows(season, period, counted, united, facts.asOf, facts.today, facts.borders).map(({ group, atRisk, lost, rate, wilson, clopperPearson, quasi, complete }) => ({ season, period, group, united, atRisk, lost, rate, wilson, clopperPearson, quasi, complete })),
    ),
  );
}

function survivalOf({ states, yards, asOf }: ReviewFacts): Report['survival'] {
  const spans = spansSinceStart(states, asOf);
  const curve = (own: SpanSet['all']): ReportCurve => {
    const { times, atRisk, lost, survival, low, high } = curveOf(own, 0, 1);
    return { times, atRisk, lost, survival, low, high };
  };
  return { all: curve(spans.all), byYard: Object.fromEntries(yards.map((yard) => [yard.code, curve(spans.byYard.get(yard.id) ?? [])])) };
}

function codeOf(facts: ReviewFacts, id: YardId | undefined): string {
  return facts.yards.find((yard) => yard.id === id)?.code ?? '';
}
