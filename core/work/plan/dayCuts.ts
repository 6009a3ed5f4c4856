import type { MilpModel, Term } from '#core/order/milp.ts';

/** What can happen on one day: the outings to choose from, and the work that can be done on them, each with its variable in the programme. */
export interface DayWork {
  readonly outings: readonly { readonly variable: number; readonly yards: readonly number[]; readonly crew: number; readonly room: number }[];
  readonly work: readonly { readonly variable: number; readonly yard: number; readonly people: number; readonly units: number; readonly each: number }[];
}

export type Cut = MilpModel['rows'][number];

/** Of the outings that a day of a relaxed answer is mixed from, no more than so many are looked at, the largest shares first. */
const mostMixed = 7;
/** A row is worth adding where it is broken by so much of what it counts. */
const brokenBy = 0.02;
const small = 1e-7;

/**
 * Rows that every plan keeps to and a relaxed answer does not. The relaxed programme mixes several outings on a day and gives
 * the room of one to the work of another. On a day with one outing, the minutes of any part of the day’s work are at most the
 * outing’s room, and at most all of that part that lies on its way; so the sum over part of the work is at most the sum over
 * outings of the smaller of the two (the cut of a network from work to outings, Ford and Fulkerson 1956; flow covers, Padberg,
 * Van Roy and Wolsey 1985). The same holds when minutes and room are counted in whole steps of any length, both rounded down
 * (Chvátal 1973; dual feasible functions, Fekete and Schepers 2001), which tells that what does not divide cannot be divided.
 * Of each step the part of the work that is broken most is found by trying which of the mixed outings are full.
 */
export function dayCuts(days: readonly DayWork[], values: ArrayLike<number>): Cut[] {
  return days.flatMap(({ outings, work }, day) => {
    const mixed = outings.map((outing) => ({ ...outing, share: values[outing.variable] ?? 0 })).filter(({ share }) => share > 1e-6).toSorted((a, b) => b.share - a.share || a.variable - b.variable).slice(0, mostMixed);
    const here = work.filter(({ variable }) => (values[variable] ?? 0) > 1e-6);
    if (mixed.length < 1 || here.length === 0) return [];
    const found = new Map<string, Cut>();
    for (const step of stepsOf(here)) {
      const counted = step === null ? here : here.filter(({ each }) => each >= step);
      let [worst, most]: [Cut | null, number] = [null, brokenBy];
      for (let full = 1; full < 2 ** mixed.length; full += 1) {
        const part = counted.filter((one) => {
          let free = 0;
          mixed.forEach((outing, at) => {
            if ((full & (1 << at)) === 0) free += outing.share * fitOf(one, outing);
          });
          return (values[one.variable] ?? 0) > free + 1e-9;
        });
        if (part.length === 0) continue;
        const cut = cutOf(`day${day}`, outings, part, step);
        const over = cut.terms.reduce((sum, [variable, factor]) => sum + factor * (values[variable] ?? 0), 0) / Math.max(...cut.terms.map(([, factor]) => Math.abs(factor)));
        if (over > most) [worst, most] = [cut, over];
      }
      if (worst !== null) found.set(worst.terms.map(([variable, factor]) => `${variable}*${factor.toFixed(3)}`).join(), worst);
    }
    return [...found.values()];
  });
}

type Outings = DayWork['outings'];
type Work = DayWork['work'][number];

/** Minutes as they are, and steps that one unit of some work fills once, twice or three times. */
function stepsOf(work: readonly Work[]): (number | null)[] {
  const steps = new Set(work.flatMap(({ each }) => [1, 2, 3].map((parts) => Math.round(1e4 * each / parts) / 1e4)));
  return [null, ...steps];
}

/** Units of a piece of work that an outing has room for. */
function fitOf({ yard, people, units, each }: Work, { yards, crew, room }: Outings[number]): number {
  return yards.includes(yard) && crew >= people ? Math.min(units, Math.floor(room / each + 1e-9)) : 0;
}

/** Part of a day’s work on all its outings; `step` in minutes, null for minutes as they are. */
export function cutOf(name: string, outings: Outings, part: readonly Work[], step: number | null): Cut {
  const count = (minutes: number) => (step === null ? minutes : Math.floor(minutes / step + small));
  const terms = outings.map((outing): Term => [outing.variable, -Math.min(count(outing.room), part.reduce((sum, one) => sum + count(one.each) * fitOf(one, outing), 0))]);
  return { name, terms: [...part.map((one): Term => [one.variable, count(one.each)]), ...terms.filter(([, factor]) => factor !== 0)], low: null, high: 0 };
}
