import type { EntryId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import { periodDays, seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import type { Slices } from '#shared/slices.ts';
import { gramsPerPound } from '#shared/units.ts';
import type { ColonyState, Reign } from '#core/journal/colonyState.ts';
import { meanOf } from '#core/stats/meanInterval.ts';
import type { BreederTrait, BreederValue } from './breeders.ts';
import { fateIn, wintersOver } from './winterFates.ts';
import { yardOn } from './yardOn.ts';

/**
 * What every colony did in every season, for the breeder of the queen that it then had: the queen's mother where `motherOf`
 * knows one, else the queen herself. Winter: 1 lived, 0 lost, with the queen it went in with. Honey: pounds weighed of the
 * colony in the season, for the queen of the first harvest. Mites: minus the natural logarithm of (mites + 0.5) per bee
 * washed, mean of the season's counts (the usual half for counts of nought, from memory). Temper: minus the mean of
 * the looks. Swarming: minus 1 if the queen swarmed in a season in whose summer she headed the colony, else 0.
 */
export function* breederValues(states: readonly ColonyState[], motherOf: ReadonlyMap<EntryId, EntryId>, borders: Borders, today: Day): Slices<Record<BreederTrait, BreederValue[]>> {
  const values: Record<BreederTrait, BreederValue[]> = { winter: [], honey: [], mites: [], temper: [], swarming: [] };
  const winters = wintersOver(states, borders, today);
  for (const [count, state] of states.entries()) {
    if (count % 200 === 0) yield;
    const add = (trait: BreederTrait, reign: Reign | undefined, day: Day, value: number) => {
      if (reign !== undefined) values[trait].push({ breeder: String(motherOf.get(reign.queen) ?? reign.queen), place: `${yardOn(state, day) ?? ''} ${seasonOf(day, borders)}`, value });
    };
    for (const winter of winters) {
      const fate = fateIn(state, winter);
      if (fate !== null) add('winter', state.reigns.findLast(({ since, until }) => since < winter.from && (until === null || until >= winter.from)), winter.from, fate === 'lived' ? 1 : 0);
    }
    const harvests = state.harvests.filter(({ day }) => day <= today);
    for (const [first, ...more] of Map.groupBy(harvests, ({ day }) => seasonOf(day, borders)).values()) {
      if (first !== undefined) add('honey', reignOn(state, first.day), first.day, [first, ...more].reduce((sum, { grams }) => sum + grams, 0) / gramsPerPound);
    }
    const looks = state.looks.flatMap(({ day, temper }) => (temper === null ? [] : [{ day, value: -temper }]));
    const counts = state.miteCounts.flatMap(({ day, mites, bees }) => (bees > 0 ? [{ day, value: -Math.log((mites + 0.5) / bees) }] : []));
    for (const [trait, own] of [['temper', looks], ['mites', counts]] as const) {
      for (const { reign, day, value } of seasonMeans(state, own, borders)) add(trait, reign, day, value);
    }
    for (const reign of state.reigns) {
      for (const { season, swarmed } of summersOf(reign, borders, today)) {
        const { from } = periodDays(season, 'summer', borders);
        add('swarming', reign, reign.since > from ? reign.since : from, swarmed ? -1 : 0);
      }
    }
  }
  return values;
}

function reignOn({ reigns }: ColonyState, day: Day): Reign | undefined {
  return reigns.findLast(({ since, until }) => since <= day && (until === null || until > day));
}

/** One value for each season and queen of the colony, as what was seen at one hive resembles itself. */
function seasonMeans(state: ColonyState, seen: readonly { day: Day; value: number }[], borders: Borders): { reign: Reign; day: Day; value: number }[] {
  const under = seen.flatMap(({ day, value }) => {
    const reign = reignOn(state, day);
    return reign === undefined ? [] : [{ reign, day, value }];
  });
  return [...Map.groupBy(under, ({ reign, day }) => `${reign.queen} ${reign.since} ${seasonOf(day, borders)}`).values()].flatMap((own) => {
    const [first] = own;
    return first === undefined ? [] : [{ ...first, value: meanOf(own.map(({ value }) => value)) }];
  });
}

function summersOf({ since, until, ending }: Reign, borders: Borders, today: Day): { season: Season; swarmed: boolean }[] {
  const last = until ?? today;
  const seasons: { season: Season; swarmed: boolean }[] = [];
  for (let season = seasonOf(since, borders); season <= seasonOf(last, borders); season += 1) {
    const summer = periodDays(season, 'summer', borders);
    const swarmed = ending === 'swarmed' && until !== null && seasonOf(until, borders) === season;
    if (swarmed || (since < summer.until && last > summer.from && since < last)) seasons.push({ season, swarmed });
  }
  return seasons;
}
