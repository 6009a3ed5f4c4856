import type { MinutesReason } from '#shared/contract/work.ts';
import type { YardId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { meanInterval } from '#core/stats/meanInterval.ts';
import type { WorkFacts } from './workFacts.ts';

export interface OwnPace {
  /** Recorded rounds that could be compared. */
  readonly rounds: number;
  /** By which the house’s minutes are multiplied. */
  readonly factor: number;
  /** What was recorded against the house’s minutes, by itself, with its 95 % interval; null without rounds, limits with one. */
  readonly measured: { readonly ratio: number; readonly limits: readonly [number, number] | null } | null;
}

const fewestLooks = 3;

/**
 * How fast the person works against the house’s minutes, from recorded hours of rounds: on the log scale, where half and
 * double weigh the same, the mean of the rounds is pulled towards the house value as if that were so many rounds of its
 * own (partial pooling with a fixed weight). Hours that were written for a day with other work as well count with it.
 */
export function ownPace({ recorded, states, rules }: Pick<WorkFacts, 'recorded' | 'states' | 'rules'>): OwnPace {
  // Only the days with hours are counted: a large book has half a million looks.
  const days = new Set(recorded.map(({ day }) => day));
  const looks = new Map<string, number>();
  for (const state of days.size === 0 ? [] : states) {
    for (const { day } of state.looks) {
      const yard = days.has(day) ? yardOn(state, day) : null;
      if (yard !== null) looks.set(visit(yard, day), (looks.get(visit(yard, day)) ?? 0) + 1);
    }
  }
  const [setUp, each, weight] = [numberRule(rules, 'work.minutes.setUp'), numberRule(rules, 'work.minutes.round'), numberRule(rules, 'work.ownHours.weight')];
  const ratios = recorded.flatMap(({ day, body }) => {
    if (body.yard === undefined || body.hours === undefined || body.hours <= 0 || body.task === undefined || !/\b(round|inspection|look)/i.test(body.task)) return [];
    const seen = looks.get(visit(body.yard, day)) ?? 0;
    return seen < fewestLooks ? [] : [Math.log((body.hours * 60 * (body.people ?? 1)) / (setUp + each * seen))];
  });
  const { n, mean, limits } = meanInterval(ratios);
  if (mean === null) return { rounds: 0, factor: 1, measured: null };
  return {
    rounds: n, factor: Math.exp((n * mean) / (n + weight)),
    measured: { ratio: Math.exp(mean), limits: limits === null ? null : [Math.exp(limits.lower), Math.exp(limits.upper)] },
  };
}

/** Minutes of one person for so many colonies, or for once where there are none, and where they come from. */
export function minutesFor(each: number, colonies: number, pace: OwnPace): { minutes: number; minutesReason: MinutesReason } {
  const times = Math.max(1, colonies);
  const minutes = Math.round(each * times * pace.factor * 10) / 10;
  const own = Math.round(each * pace.factor * 10) / 10;
  return { minutes, minutesReason: { setUp: 0, each, recorded: pace.rounds, factor: Math.round(pace.factor * 1000) / 1000, says: paceWords(each, own, pace, colonies) } };
}

/** Hours as they are, where the person set them. */
export function asWritten(minutes: number): { minutes: number; minutesReason: MinutesReason } {
  return { minutes, minutesReason: { setUp: 0, each: minutes, recorded: 0, factor: 1, says: 'As you wrote it down.' } };
}

function paceWords(each: number, own: number, { rounds, measured }: OwnPace, colonies: number): string {
  const what = colonies > 0 ? `${each} min a colony by the house rule` : `${each} min by the house rule`;
  if (measured === null) return `${what}; no recorded round to compare it with.`;
  const range = measured.limits === null ? '' : ` (${two(measured.limits[0])}–${two(measured.limits[1])})`;
  return `${what}; your ${rounds} recorded ${rounds === 1 ? 'round' : 'rounds'} took ${two(measured.ratio)} times what it says${range}, so ${own} min.`;
}

function two(value: number): string {
  return value.toFixed(2);
}

function visit(yard: YardId, day: Day): string {
  return `${yard}/${day}`;
}
