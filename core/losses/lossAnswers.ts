import type { LossFactors } from '#shared/contract/lossFactors.ts';
import type { LossEnded, LossFrame, LossLedger, LossRates, LossSurvival } from '#shared/contract/lossSections.ts';
import type { United } from '#shared/contract/values.ts';
import type { ColonyId, YardId } from '#shared/brands.ts';
import { periodDays, seasonName, type Season } from '#shared/seasons.ts';
import { whole, type Slices } from '#shared/slices.ts';
import type { MassUnit } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { RuleValues } from '#core/rules/houseRules.ts';
import type { LogRankPair } from '#core/stats/logRank.ts';
import { cohortLoss } from './cohortLoss.ts';
import { chosenRows, lossFactorsInSlices, wintersOf, type FactorFacts } from './lossFactors.ts';
import { lossRatesPart } from './lossRatesPart.ts';
import { endedIn } from './lossReview.ts';
import { isOver, seasonsOf, type ReviewFacts } from './reviewFacts.ts';
import { reviewFrame } from './reviewFrame.ts';
import { ledgerBalances, ledgerRows, ledgerTotal, seasonYards, type SeasonYard } from './seasonLedger.ts';
import { survivalPairs, survivalPart, type SurvivalFacts } from './survivalPart.ts';
import { winterSpans } from './watchedRows.ts';
import { winterRows } from './winterRows.ts';
import { covariateRules, winterCovariates, type YardTreatment } from './winterCovariates.ts';

/** Everything the season-end review is made from. */
export interface AnswerFacts extends ReviewFacts {
  readonly byId: ReadonlyMap<ColonyId, ColonyState>;
  readonly rules: RuleValues;
  readonly massUnit: MassUnit;
  readonly yardTreatments: readonly YardTreatment[];
}

/** Gives what stands under a key, made only once; the key says all that it depends on beside the book. */
export type Keep = <Value>(key: string, make: () => Value) => Value;

/** The parts of the review; screen, paper, files and the command line all ask these. */
export interface LossAnswers {
  readonly facts: AnswerFacts;
  readonly survivalFacts: SurvivalFacts;
  readonly factorFacts: FactorFacts;
  frame(season: Season | undefined): LossFrame;
  ledger(season: Season): LossLedger;
  ended(season: Season): LossEnded;
  rates(season: Season, united: United): LossRates;
  survival(asked: LossSurvival['asked']): LossSurvival;
  pairs(asked: LossSurvival['asked']): { pairs: LogRankPair[]; sentence: string };
  factors(season: Season | undefined, scope: 'season' | 'all'): LossFactors;
  /** The same; of all seasons it takes seconds in a large book. */
  factorsInSlices(season: Season | undefined, scope: 'season' | 'all'): Slices<LossFactors>;
}

export function lossAnswers(facts: AnswerFacts, keep: Keep): LossAnswers {
  const { states, byId, yards, borders, asOf, today, rules } = facts;
  const codes = new Map(yards.map(({ id, code }) => [id, code]));
  const named = yards.map(({ code, name }) => ({ code, name }));
  const counted = (season: Season): SeasonYard[] => keep(`account ${season} ${asOf}`, () => seasonYards(states, yards, season, asOf, borders));
  const survival = survivalFacts(facts, keep);
  // A figure is asked for again by its pairs, and when one comes back to it.
  const survivalKept = (asked: LossSurvival['asked']): LossSurvival =>
    keep(`survival ${asOf} ${facts.massUnit} ${asked.season} ${asked.axis} ${asked.by} ${asked.united}`, () => survivalPart(survival, asked));
  const winters = {
    states, byId, borders, today, asOf, rules: covariateRules(rules), yardTreatments: facts.yardTreatments,
    codeOf: (yard: YardId) => codes.get(yard) ?? '', covariates: survival.covariates,
  };
  const own: FactorFacts = { ...winters, yardList: yards, kept: rules, rowsOf: (season) => keep(`winter rows ${season} ${asOf} ${today}`, () => winterRows(winters, season)) };
  function* factorsInSlices(season: Season | undefined, scope: 'season' | 'all'): Slices<LossFactors> {
    const kept = keep<{ found: LossFactors | null }>(`factors ${season ?? 'last'} ${scope} ${asOf} ${today}`, () => ({ found: null }));
    if (kept.found !== null) return kept.found;
    const seasons = seasonsOf(facts);
    // Each winter is worked out by itself and kept; then they are put together.
    for (const one of scope === 'all' ? wintersOf(own, seasons) : []) {
      survival.covariates(one);
      yield;
      own.rowsOf?.(one);
      yield;
    }
    kept.found = yield* lossFactorsInSlices(own, chosenRows(own, season, scope, seasons));
    return kept.found;
  }
  return {
    facts,
    survivalFacts: survival,
    frame(asked) {
      const { seasons, season } = reviewFrame(facts, asked);
      return {
        asOf, season, yards: named, empty: seasons.length === 0,
        seasons: seasons.toReversed().map((one) => ({ season: one, name: seasonName(one), complete: isOver(periodDays(one, 'year', borders).until, facts) })),
        winter: periodDays(season, 'winter', borders),
      };
    },
    ledger(season) {
      const own = counted(season);
      return { season, running: !isOver(periodDays(season, 'year', borders).until, facts), yards: named, ledger: [...ledgerRows(season, own), ledgerTotal(season, own)], balances: ledgerBalances(own) };
    },
    ended: (season) => ({ yards: named, ended: endedIn(facts, season) }),
    rates: (season, united) => lossRatesPart(facts, season, united, counted, (one) => keep(`cohort ${one} ${asOf}`, () => cohortLoss(facts, one))),
    survival: survivalKept,
    pairs: (asked) => survivalPairs(survival, asked, survivalKept(asked)),
    factorFacts: own,
    factors: (season, scope) => whole(factorsInSlices(season, scope)),
    factorsInSlices,
  };
}

/** What the curves are made from; what colonies went into a winter with is worked out once a winter. */
function survivalFacts(facts: AnswerFacts, keep: Keep): SurvivalFacts {
  const rules = covariateRules(facts.rules);
  const stateOf: SurvivalFacts['stateOf'] = (id) => {
    const state = facts.byId.get(id);
    if (state === undefined) throw new Error(`no colony has the id ${id}`);
    return state;
  };
  const covariates: SurvivalFacts['covariates'] = (season) =>
    keep(`covariates ${season} ${facts.asOf}`, () => winterCovariates({ states: facts.states, yardTreatments: facts.yardTreatments, borders: facts.borders, rules, asOf: facts.asOf }, season));
  return { ...facts, stateOf, covariates, spans: (season) => keep(`spans ${season} ${facts.asOf}`, () => winterSpans(facts, season, covariates(season), stateOf)) };
}

/** Keeps what was made for as long as it is itself kept. */
export function keepNew(): Keep {
  const made = new Map<string, unknown>();
  return <Value>(key: string, make: () => Value): Value => {
    if (!made.has(key)) made.set(key, make());
    // What stands under a key was put there by the same make.
    return made.get(key) as Value;
  };
}
