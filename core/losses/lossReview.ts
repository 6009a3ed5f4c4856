import type { CurveSet, LossReview } from '#shared/contract/losses.ts';
import type { United } from '#shared/contract/values.ts';
import { dayInWords, daysBetween, type Day } from '#shared/days.ts';
import { periodDays, seasonName, type Period, type Season } from '#shared/seasons.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { winterBase } from './cohortLoss.ts';
import { curveOf, spansSince, spansSinceStart, type SpanSet } from './curves.ts';
import { lossRows } from './lossRows.ts';
import { ageCurveSentence, lossSentences, winterCurveSentence } from './lossWords.ts';
import { isOver, type ReviewFacts } from './reviewFacts.ts';
import { reviewFrame } from './reviewFrame.ts';
import { ledgerBalances, ledgerRows, ledgerTotal, seasonYards, type SeasonYard } from './seasonLedger.ts';

/** The season-end review of one season, with every season's rates beside it. `account`: the counts of a season's yards. */
export function lossReview(facts: ReviewFacts, chosen: Season | undefined, united: United, account: (one: Season) => readonly SeasonYard[] = (one) => seasonYards(facts.states, facts.yards, one, facts.asOf, facts.borders)): LossReview {
  const { yards, borders, asOf, today } = facts;
  const { seasons, season, lastRecord, silence } = reviewFrame(facts, chosen);
  const own = account(season);
  const rates = seasons.flatMap((one) => {
    const counted = one === season ? own : account(one);
    // Where nothing was written down any more, none lost would be a guess.
    const told = (period: Period) => one === season || (lastRecord !== null && lastRecord >= periodDays(one, period, borders).from);
    return (['winter', 'summer', 'year'] as const).filter(told).flatMap((period) => lossRows(one, period, counted, united, asOf, today, borders));
  });
  const october = sinceOctober(facts, season, united);
  const nameOf = (code: string) => yards.find((yard) => yard.code === code)?.name ?? code;
  return {
    asOf,
    seasons: seasons.toReversed().map((one) => ({ season: one, name: seasonName(one), complete: isOver(periodDays(one, 'year', borders).until, facts) })),
    season,
    united,
    yards: yards.map(({ code, name }) => ({ code, name })),
    ledger: [...ledgerRows(season, own), ledgerTotal(season, own)],
    balances: ledgerBalances(own),
    rates,
    sentences: lastRecord === null ? [] : silence !== null ? [silence] : [...lossSentences(season, rates, nameOf, winterBase(facts, season)), ...stale(lastRecord, season, facts)],
    sinceOctober: silence === null ? october : { ...october, sentence: silence },
    sinceStart: sinceStart(facts),
    ended: endedIn(facts, season),
  };
}

/** The colonies that ended in a season, by day. */
export function endedIn({ states, yards, borders, asOf }: ReviewFacts, season: Season): LossReview['ended'] {
  const { from, until } = periodDays(season, 'year', borders);
  const code = new Map(yards.map((yard) => [yard.id, yard.code]));
  return states
    .flatMap((state) => {
      const yard = state.stays.at(-1)?.yard;
      if (state.end === null || state.end < from || state.end >= until || state.end > asOf) return [];
      return [{ id: state.id, label: state.label, yard: yard === undefined ? '' : (code.get(yard) ?? ''), day: state.end, how: state.how, causes: [...state.causes] }];
    })
    .toSorted((a, b) => (a.day < b.day ? -1 : 1));
}

/** A winter whose records stop long before its end (or before the day it is looked at) may have losses that nobody wrote down. */
export function stale(lastRecord: Day, season: Season, facts: ReviewFacts): string[] {
  const { borders, asOf, states } = facts;
  const { until } = periodDays(season, 'winter', borders);
  // Of none that lived on can a loss have been missed.
  if (states.every(({ end }) => end !== null && end <= lastRecord)) return [];
  const end = isOver(until, facts) ? until : asOf;
  if (lastRecord >= end || daysBetween(lastRecord, end) <= 60) return [];
  return [`The last record of a colony is of ${dayInWords(lastRecord)}; what was lost after it is not known here.`];
}

function sinceOctober(facts: ReviewFacts, season: Season, united: United): CurveSet {
  const { states, yards, borders, asOf } = facts;
  const { from, until } = periodDays(season, 'winter', borders);
  const last = daysBetween(from, until);
  const spans = spansSince(states, from, until, asOf);
  const unitedAlive = united === 'takenOut' ? 0 : states.filter((state) => state.how === 'combined' && state.end !== null && state.end >= from && state.end < until && state.end <= asOf).length;
  const all = curveOf(spans.all, last, last / 6);
  return {
    axis: `days since ${dayInWords(from)}`,
    all,
    byYard: yardCurves(yards, spans, last, last / 6),
    sentence: winterCurveSentence(all, isOver(until, facts), unitedAlive),
  };
}

function sinceStart({ states, yards, asOf }: ReviewFacts): CurveSet {
  const spans = spansSinceStart(states, asOf);
  const { all } = spans;
  const last = all.reduce((latest, span) => Math.max(latest, span.exit), 365);
  const step = Math.ceil(last / 6 / 30) * 30;
  const curve = curveOf(all, last, step);
  return {
    axis: 'days since the colony’s start',
    all: curve,
    byYard: yardCurves(yards, spans, last, step),
    sentence: ageCurveSentence(curve, (time) => all.filter((span) => span.entry < time && span.exit >= time).length),
  };
}

function yardCurves(yards: readonly Yard[], spans: SpanSet, last: number, step: number): CurveSet['byYard'] {
  return yards.flatMap((yard) => {
    const own = spans.byYard.get(yard.id);
    return own === undefined ? [] : [{ yard: yard.code, yardName: yard.name, curve: curveOf(own, last, step) }];
  });
}
