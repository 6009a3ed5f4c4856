import type { YardId } from '#shared/brands.ts';
import type { SurvivalView } from '#shared/contract/decision.ts';
import type { United } from '#shared/contract/values.ts';
import type { Day } from '#shared/days.ts';
import { seasonOf, type Borders } from '#shared/seasons.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { usLoss, usLossCombinedAsRemoval } from '#core/losses/lossDefinitions.ts';
import { unitCounts } from '#core/losses/lossRows.ts';
import { yardCounts } from '#core/losses/yardCounts.ts';
import { numberRule, textRule, type RuleValues } from '#core/rules/houseRules.ts';
import { betaComponents, type BetaComponent } from '#core/stats/betaBinomialMixture.ts';
import type { Chance } from './chance.ts';
import { pastWindows, planWindow, type PastWindow, type PlanWindow } from './planWindow.ts';
import { drawScenarios, type Scenarios, type WinteringYard } from './scenarios.ts';
import { yardEffects, type YardEffect, type YardWinter } from './yardEffects.ts';

/** Springs drawn for a plan: every share is then within 1/4096 of the forecast's own, which moves no order. */
export const SPRINGS = 4096;

export interface SurvivalFacts {
  readonly states: readonly ColonyState[];
  readonly yards: readonly Yard[];
  readonly borders: Borders;
  readonly rules: RuleValues;
  readonly asOf: Day;
  readonly today: Day;
  readonly united: United;
  readonly views: readonly SurvivalView[];
  /** Goes before what is kept for all. */
  readonly lossRate: number | undefined;
}

export interface YardSurvival extends YardEffect {
  readonly living: number;
  readonly mean: number;
  readonly low: number;
  readonly high: number;
  readonly view: SurvivalView | null;
}

export interface SurvivalForecast {
  readonly window: PlanWindow;
  readonly living: number;
  readonly past: readonly PastWindow[];
  /** Mean loss that is expected. */
  readonly rate: number;
  readonly view: SurvivalView | { readonly rate: number; readonly reason: string } | null;
  readonly scenarios: Scenarios;
  readonly mean: number;
  /** Holds the survivors in 8 of 10 springs. */
  readonly low: number;
  readonly high: number;
  readonly yards: readonly YardSurvival[];
}

/** Survivors in spring as a distribution, for all and by yard, from the record, the published rate and the person's own views. */
export function survivalForecast(facts: SurvivalFacts, chance: Chance, springs = SPRINGS): SurvivalForecast {
  const { states, borders, rules, asOf } = facts;
  const window = planWindow(asOf, borders, textRule(rules, 'order.nextSpringFrom'));
  const begun = states.reduce<Day | null>((first, state) => (first === null || state.start < first ? state.start : first), null);
  const past = begun === null ? [] : pastWindows(states, facts.yards, window, seasonOf(begun, borders), asOf, facts.today, facts.united, borders);
  const fitted = betaComponents(past, { rate: numberRule(rules, 'order.firstLossRate'), weight: numberRule(rules, 'order.priorWeight') });
  const kept = facts.views.find(({ yard }) => yard === null) ?? null;
  const view = facts.lossRate === undefined ? kept : { rate: facts.lossRate, reason: 'A loss that is only asked about.' };
  const components = view === null ? fitted : shiftComponents(fitted, view.rate);
  const effects = yardEffects(facts.yards.map(({ id }) => id), yardWinters(facts, past));
  const standing = livingByYard(states, asOf);
  const wintering = effects.map((effect): WinteringYard & { effect: number } => ({
    yard: effect.yard, living: standing.get(effect.yard) ?? 0, effect: effect.effect, sd: effect.sd, rate: facts.views.find(({ yard }) => yard === effect.yard)?.rate ?? null,
  }));
  const scenarios = drawScenarios(wintering, components, springs, chance);
  const living = scenarios.living;
  const mean = scenarios.shares.reduce((sum, share, alive) => sum + share * alive, 0);
  return {
    window, living, past, rate: living === 0 ? meanRate(components) : 1 - mean / living, view, scenarios, mean, ...middle(scenarios.survivors),
    yards: effects.map((effect, y) => {
      const draws = scenarios.byYard[y] ?? new Int32Array(0);
      return {
        ...effect, living: wintering[y]?.living ?? 0, mean: draws.reduce((sum, alive) => sum + alive, 0) / Math.max(1, draws.length), ...middle(draws),
        view: facts.views.find(({ yard }) => yard === effect.yard) ?? null,
      };
    }),
  };
}

/** Moves every component by the same step of log-odds, so that their mean is the rate; how much winters differ stays. */
export function shiftComponents(components: readonly BetaComponent[], rate: number): BetaComponent[] {
  const moved = (step: number) => components.map(({ alpha, beta, weight }) => {
    const p = alpha / (alpha + beta);
    const next = 1 / (1 + Math.exp(-(Math.log(p / (1 - p)) + step)));
    return { alpha: next * (alpha + beta), beta: (1 - next) * (alpha + beta), weight };
  });
  let [low, high] = [-20, 20];
  for (let turn = 0; turn < 60; turn += 1) {
    const middleStep = (low + high) / 2;
    if (meanRate(moved(middleStep)) < rate) low = middleStep;
    else high = middleStep;
  }
  return moved((low + high) / 2);
}

function meanRate(components: readonly BetaComponent[]): number {
  return components.reduce((sum, { alpha, beta, weight }) => sum + (weight * alpha) / (alpha + beta), 0);
}

/** From the 10 % to the 90 % quantile of drawn numbers. */
function middle(draws: Int32Array): { low: number; high: number } {
  const sorted = draws.toSorted();
  const at = (u: number) => sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(u * sorted.length) - 1))] ?? 0;
  return { low: at(0.1), high: at(0.9) };
}

function livingByYard(states: readonly ColonyState[], asOf: Day): Map<YardId, number> {
  const counts = new Map<YardId, number>();
  for (const state of states) {
    if (!aliveOn(state, asOf)) continue;
    const yard = yardOn(state, asOf);
    if (yard !== null) counts.set(yard, (counts.get(yard) ?? 0) + 1);
  }
  return counts;
}

function yardWinters(facts: SurvivalFacts, past: readonly PastWindow[]): YardWinter[] {
  const rule = facts.united === 'lost' ? usLoss : usLossCombinedAsRemoval;
  return past.flatMap(({ season, from, until }) => [...yardCounts(facts.states, facts.yards.map(({ id }) => id), from, until)].map(([yard, counts]) => {
    const { atRisk, lost } = rule(unitCounts('', counts));
    return { yard, season, atRisk, lost };
  }));
}
