import type { MitesDetail } from '#shared/contract/mites.ts';
import { daysBetween, type Day } from '#shared/days.ts';
import { dayText } from '../parts/format.ts';
import { linearScale, niceTicks, px } from './scale.ts';
import { monthTicks } from './timeTicks.ts';
import { words } from './words.ts';

export interface MiteGeometry {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly months: readonly { readonly x: number; readonly labelX: number; readonly label: string }[];
  readonly ticks: readonly { readonly y: number; readonly label: string }[];
  readonly counts: readonly { readonly x: number; readonly y: number; readonly low: number; readonly high: number; readonly cut: boolean; readonly title: string }[];
  /** The threshold as steps. */
  readonly threshold: string;
  readonly treatments: readonly { readonly x: number; readonly to: number; readonly label: string; readonly title: string }[];
  readonly today: number;
}

export type MitePictureFacts = Pick<MitesDetail, 'season' | 'counts' | 'treatments' | 'thresholds' | 'asOf'>;

/** A yard's (or colony's) mite counts over a season: each with its range, the threshold as steps, treatments as bars below. Counts of one day stand side by side. */
export function miteGeometry(facts: MitePictureFacts, width: number): MiteGeometry {
  const [left, right, top, bottom] = [34, width - 12, 10, 150];
  const { from, until } = facts.season;
  const days = daysBetween(from, until);
  const time = linearScale([0, days], [left, right]);
  const at = (day: Day) => px(time(Math.max(0, Math.min(days, daysBetween(from, day)))));
  const highest = Math.max(4, ...facts.thresholds.map(({ treat }) => treat * 1.3), ...facts.counts.map(({ rate }) => rate.per100 * 1.2));
  const value = linearScale([0, highest], [bottom, top]);
  const sameDay = Map.groupBy(facts.counts, ({ day }) => day);
  const counts = facts.counts.map((count) => {
    const beside = sameDay.get(count.day) ?? [];
    const step = Math.min(6, 40 / Math.max(1, beside.length));
    const aside = (beside.indexOf(count) - (beside.length - 1) / 2) * step;
    const x = Math.max(left + 3, Math.min(right - 3, at(count.day) + aside));
    const [low, high] = count.rate.limits;
    const title = words.miteCountOf(count.label, dayText(count.day), count.mites, count.bees, round(count.rate.per100), round(low), round(high));
    return { x: px(x), y: px(value(count.rate.per100)), low: px(value(low)), high: px(value(Math.min(high, highest))), cut: high > highest, title };
  });
  return {
    width, height: 204, left, right, top, bottom, counts, today: at(facts.asOf),
    months: monthTicks(from, days).map(({ at: start, labelAt, label }) => ({ x: px(time(start)), labelX: px(time(labelAt)), label })),
    ticks: niceTicks(0, highest, 4).map((tick) => ({ y: px(value(tick)), label: String(Math.round(tick * 100) / 100) })),
    threshold: facts.thresholds.map(({ from: start, until: end, treat }, index) => `${index === 0 ? 'M' : 'L'}${at(start)} ${px(value(treat))}L${at(end)} ${px(value(treat))}`).join(''),
    treatments: facts.treatments.map(({ ingredient, from: start, until: end, colonies, whole }) => ({ x: at(start), to: at(end), label: ingredient, title: words.treatedBar(ingredient, dayText(start), dayText(end), colonies, whole) })),
  };
}

function round(value: number): string {
  return value.toFixed(1);
}
