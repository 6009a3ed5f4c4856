import type { YardId } from '#shared/brands.ts';
import type { CohortLoss, CountedRate } from '#shared/contract/lossSections.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, type Season } from '#shared/seasons.ts';
import { aliveBefore, type ColonyState } from '#core/journal/colonyState.ts';
import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';
import { averageLoss } from '#core/stats/averageLoss.ts';
import type { Interval } from '#core/stats/interval.ts';
import { intervalAcrossUnits } from '#core/stats/intervalAcrossUnits.ts';
import type { ReviewFacts } from './reviewFacts.ts';

/** What became of a wintered colony by the end of the winter, or of the record if that is earlier. */
export type CohortFate = 'alive' | 'dead' | 'queen' | 'disaster' | 'sold' | 'given' | 'united';

export interface CohortMember {
  readonly state: ColonyState;
  /** Where it stood as the winter began. */
  readonly yard: YardId;
  readonly fate: CohortFate;
}

/**
 * Of which of the three kinds of loss of the COLOSS rule a loss is, by its recorded causes: flood, bear or vandal
 * are a disaster; a failed queen is a queen problem; everything else, a loss without a cause too, is dead or
 * empty. A disaster comes first where several causes stand together, since it took the colony whatever else ailed it.
 * Source of the three kinds: van der Zee et al. 2013, J Apic Res 52(4), doi 10.3896/IBRA.1.52.4.18, section 2.3;
 * which recorded cause belongs to which is this program's own reading.
 */
export function kindOfLoss(causes: readonly string[]): 'dead' | 'queen' | 'disaster' {
  if (causes.includes('flood') || causes.includes('bear or vandal')) return 'disaster';
  return causes.includes('queen failure') ? 'queen' : 'dead';
}

/** The colonies that stood in the book as the winter began, each followed to its end. */
export function wintered({ states, borders, asOf }: ReviewFacts, season: Season): CohortMember[] {
  const { from, until } = periodDays(season, 'winter', borders);
  if (asOf < from) return [];
  return states.filter((state) => aliveBefore(state, from)).map((state) => {
    const yard = (state.stays.findLast((stay) => stay.from < from) ?? state.stays[0])?.yard;
    if (yard === undefined) throw new Error(`colony ${state.id} has no yard`);
    const ended = state.end !== null && state.end < until && state.end <= asOf;
    return { state, yard, fate: ended ? fateOf(state) : 'alive' };
  });
}

/** What a sentence about a winter must know of its colonies beside the counts of a rate. */
export interface WinterBase {
  readonly wintered: number;
  /** Some came, were sold or given away during the winter, so that those at risk are not those that were wintered. */
  readonly changed: boolean;
  /** United during the winter; under the turnover rule they count as lost. */
  readonly united: number;
}

export function winterBase(facts: ReviewFacts, season: Season): WinterBase {
  const { from, until } = periodDays(season, 'winter', facts.borders);
  const within = (day: Day | null) => day !== null && day >= from && day < until && day <= facts.asOf;
  const left = facts.states.filter(({ how, end }) => (how === 'sold' || how === 'given') && within(end));
  return {
    wintered: wintered(facts, season).length,
    changed: left.length > 0 || facts.states.some(({ start }) => within(start)),
    united: facts.states.filter(({ how, end }) => how === 'combined' && within(end)).length,
  };
}

function fateOf(state: ColonyState): CohortFate {
  switch (state.how) {
    case 'lost':
      return kindOfLoss(state.causes);
    case 'absconded':
      return 'dead';
    case 'combined':
      return 'united';
    case 'sold':
    case 'given':
    case 'alive':
      return state.how;
  }
}

const parts = ['dead', 'queen', 'disaster'] as const;

/**
 * Winter loss of the wintered colonies by the COLOSS rule: dead or empty, unsolvable queen problems and natural
 * disaster, out of all that were wintered, followed one by one, so that what was bought, split, sold or united
 * during the winter does not disturb it. Source as for `kindOfLoss`. Null before the winter began.
 */
export function cohortLoss(facts: ReviewFacts, season: Season): CohortLoss | null {
  const { from, until } = periodDays(season, 'winter', facts.borders);
  if (facts.asOf < from) return null;
  const members = wintered(facts, season);
  const yards = [...Map.groupBy(members, ({ yard }) => yard).values()];
  const units = (lost: (fate: CohortFate) => boolean): AtRiskAndLost[] => yards.map((own) => ({ atRisk: own.length, lost: own.filter(({ fate }) => lost(fate)).length }));
  const all = units((fate) => parts.some((part) => part === fate));
  const count = (fate: CohortFate) => members.filter((member) => member.fate === fate).length;
  return {
    total: countedRate(all),
    average: meanRate(all),
    parts: parts.map((part) => ({ part, rate: countedRate(units((fate) => fate === part)) })),
    sold: count('sold'), given: count('given'), united: count('united'),
    came: facts.states.filter((state) => state.start >= from && state.start < until && state.start <= facts.asOf).length,
  };
}

/** All lost over all at risk, with the interval that the number of units allows. */
export function countedRate(units: readonly AtRiskAndLost[]): CountedRate {
  const atRisk = units.reduce((sum, unit) => sum + unit.atRisk, 0);
  const lost = units.reduce((sum, unit) => sum + unit.lost, 0);
  const { method, because, interval } = intervalAcrossUnits(units);
  return { atRisk, lost, rate: atRisk === 0 ? null : lost / atRisk, range: pair(interval), method, why: because };
}

export function meanRate(units: readonly AtRiskAndLost[]): CohortLoss['average'] {
  const { units: counted, mean, ciT, median, smallest, largest } = averageLoss(units);
  return mean === null || median === null || smallest === null || largest === null ? null : { units: counted, mean, range: pair(ciT), median, smallest, largest };
}

function pair(interval: Interval | null): [number, number] | null {
  return interval === null ? null : [interval.lower, interval.upper];
}
