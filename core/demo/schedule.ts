import { dayIn, saturday, saturdayFrom, sunday, weekday } from './calendar.ts';
import { ossarYards, planOf, type YardCode } from './ossarPlan.ts';
import type { SeededRandom } from './seededRandom.ts';
import { minutesTo } from './world.ts';

/** Yards by day. */
export type Schedule = Map<number, YardCode[]>;

export function packageDay(year: number): number {
  return saturdayFrom(dayIn(year, 4, 22));
}

export function nucDay(year: number): number {
  return saturdayFrom(dayIn(year, 5, 11));
}

/**
 * When the keeper goes where, from April of a year to the end of March: every two weeks or so while the bees are
 * active, then to close down, to treat, and now and then through the winter. Far yards on weekends, near ones
 * also in the evening; no more than three yards on a Saturday.
 */
export function scheduleSeason(year: number, random: SeededRandom, into: Schedule): void {
  const plan = planOf(year);
  for (const { code } of ossarYards) {
    if ((plan.packages[code] ?? 0) > 0) book(into, packageDay(year), code);
    if ((plan.nucs[code] ?? 0) > 0) book(into, nucDay(year), code);
  }
  const wished: { code: YardCode; day: number; slack: number }[] = [];
  for (const { code } of random.shuffled(ossarYards)) {
    let day = dayIn(year, 4, 8) + random.whole(0, 7);
    const autumnEnd = dayIn(year, 10, 20);
    while (day < autumnEnd) {
      wished.push({ code, day, slack: 5 });
      const busy = day < dayIn(year, 7, 1) ? random.whole(11, 15) : random.whole(14, 19);
      day += busy + (code === 'NS' ? 3 : 0);
    }
    const winter: [number, number, number, number][] = [
      [year, 10, 25, 10], [year, 11, 18, 18], [year, 12, 27, 4], [year + 1, 1, 18, 10], [year + 1, 2, 8, 10], [year + 1, 3, 3, 5],
    ];
    for (const [inYear, month, dayOfMonth, spread] of winter) wished.push({ code, day: dayIn(inYear, month, dayOfMonth) + random.whole(0, spread), slack: 4 });
    wished.push({ code, day: dayIn(year + 1, 3, 27), slack: 3 });
  }
  wished.sort((one, other) => one.day - other.day);
  for (const { code, day, slack } of wished) {
    const found = freeDay(into, code, day, slack);
    if (found !== null) book(into, found, code);
  }
}

function book(into: Schedule, day: number, code: YardCode): void {
  const yards = into.get(day) ?? [];
  if (!yards.includes(code)) into.set(day, [...yards, code]);
}

function freeDay(schedule: Schedule, code: YardCode, wished: number, slack: number): number | null {
  // A yard seen within the last four days is left alone.
  for (let near = wished - 4; near <= wished + 4; near += 1) if (schedule.get(near)?.includes(code)) return null;
  for (const relaxed of [false, true]) {
    for (let step = 0; step <= slack; step += 1) {
      for (const day of step === 0 ? [wished] : [wished + step, wished - step]) {
        const taken = schedule.get(day)?.length ?? 0;
        const on = weekday(day);
        const most = on === saturday ? 3 : on === sunday ? 2 : minutesTo(code) <= 22 ? 1 : 0;
        if (taken < most + (relaxed ? 1 : 0)) return day;
      }
    }
  }
  return null;
}
