import { addDays, dayFromIso, monthDayOf, type Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import type { Yard } from '#core/journal/yardBook.ts';
import { unitCounts } from '#core/losses/lossRows.ts';
import { usLoss, usLossCombinedAsRemoval } from '#core/losses/lossDefinitions.ts';
import { yardCounts } from '#core/losses/yardCounts.ts';
import type { United } from '#shared/contract/values.ts';

/** The winter a plan looks at, and the part of it that still lies ahead. */
export interface PlanWindow {
  readonly season: Season;
  /** First day of the spring that the plan is for. */
  readonly spring: Day;
  /** Month and day from which losses count: the as-of day within the winter, else the winter's first day. */
  readonly fromMonthDay: string;
  /** True when the whole winter lies ahead. */
  readonly whole: boolean;
}

/**
 * Within a winter, the plan is for the spring at its end and looks at past losses from the same day of the year
 * on, because what has survived until now will not die again in October. Near the end of a winter, when sellers
 * have closed, and in summer, it is for the next one and looks at whole winters.
 */
export function planWindow(asOf: Day, borders: Borders, nextSpringFrom: string): PlanWindow {
  const season = seasonOf(asOf, borders);
  const { from, until } = periodDays(season, 'winter', borders);
  if (asOf < from) return { season, spring: until, fromMonthDay: borders.winterStart, whole: true };
  const closed = asOf >= onOrAfterWinter(nextSpringFrom, season, borders);
  if (closed) return { season: season + 1, spring: periodDays(season + 1, 'winter', borders).until, fromMonthDay: borders.winterStart, whole: true };
  return { season, spring: until, fromMonthDay: monthDayOf(addDays(asOf, 1)), whole: false };
}

export interface PastWindow {
  readonly season: Season;
  readonly from: Day;
  readonly until: Day;
  readonly atRisk: number;
  readonly lost: number;
}

/** Losses of every past winter in the part of the year that the plan looks at; winters without colonies are left out. */
export function pastWindows(
  states: readonly ColonyState[], yards: readonly Yard[], window: PlanWindow, first: Season, asOf: Day, today: Day, united: United, borders: Borders,
): PastWindow[] {
  const rule = united === 'lost' ? usLoss : usLossCombinedAsRemoval;
  const found: PastWindow[] = [];
  for (let season = first; season < window.season; season += 1) {
    const winter = periodDays(season, 'winter', borders);
    if (today < winter.until && asOf < addDays(winter.until, -1)) continue;
    const from = sameDayIn(window.fromMonthDay, season, borders);
    const counts = [...yardCounts(states, yards.map((yard) => yard.id), from, winter.until).values()].map((count) => rule(unitCounts('', count)));
    const atRisk = counts.reduce((sum, one) => sum + one.atRisk, 0);
    if (atRisk > 0) found.push({ season, from, until: winter.until, atRisk, lost: counts.reduce((sum, one) => sum + one.lost, 0) });
  }
  return found;
}

/** The month and day within the winter of a season; 29 February is 1 March in other years, the day after the 28th. */
function sameDayIn(monthDay: string, season: Season, borders: Borders): Day {
  const { from, until } = periodDays(season, 'winter', borders);
  for (const year of [Number(from.slice(0, 4)), Number(until.slice(0, 4))]) {
    const found = dayFromIso(`${year}-${monthDay}`) ?? dayFromIso(`${year}-03-01`);
    if (found !== null && found >= from && found < until) return found;
  }
  // The day after the winter's last: nothing of it is left.
  return until;
}

function onOrAfterWinter(monthDay: string, season: Season, borders: Borders): Day {
  const { from, until } = periodDays(season, 'winter', borders);
  for (const year of [Number(from.slice(0, 4)), Number(until.slice(0, 4))]) {
    const found = dayFromIso(`${year}-${monthDay}`);
    if (found !== null && found >= from && found < until) return found;
  }
  return until;
}
