import type { ColonyId } from '#shared/brands.ts';
import type { ColonyLink, ColonyRow } from '#shared/contract/colonies.ts';
import type { Day } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { seasonOf, type Borders } from '#shared/seasons.ts';
import { gramsPerPound, roundTo } from '#shared/units.ts';
import { compareNames } from '#shared/nameOrder.ts';
import { aliveOn, type ColonyState } from '#core/journal/colonyState.ts';
import { ancestorsOf } from '#core/lineage/ancestors.ts';
import { colonySentence, queenOn, queenView } from '#core/lineage/colonyWords.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { proportion } from '#core/stats/proportion.ts';
import type { Handlers } from './desk.ts';
import { storyEntries } from './mendingHandlers.ts';
import type { Picture } from './picture.ts';

export const colonyHandlers: Handlers<'colonies.list' | 'colony.story'> = {
  'colonies.list': async ({ which, yard }, context) => {
    const book = context.open();
    const picture = await book.picture();
    const day = await book.today(context.options.now().day);
    const rows = picture.states
      .filter((state) => (which === 'all' ? true : aliveOn(state, day) === (which === 'living')) && (yard === undefined || yardOn(state, day) === yard))
      .map((state) => colonyRow(state, day, picture))
      .toSorted((a, b) => a.yard.localeCompare(b.yard, 'en') || compareNames(a.label, b.label));
    return { asOf: day, rows, yards: picture.yardList.map(({ id, code, name }) => ({ id, code, name })) };
  },
  'colony.story': async ({ id }, context) => {
    const book = context.open();
    const picture = await book.picture();
    const { byId, names, borders } = picture;
    const state = byId.get(id);
    if (state === undefined) throw new FaultError(refuse('unknown', 'That colony is not in this book, or the entry that began it was struck.'));
    const day = await book.today(context.options.now().day);
    const linkTo = (colony: ColonyId): ColonyLink[] => {
      const found = byId.get(colony);
      return found === undefined ? [] : [{ id: found.id, label: found.label, day: found.start, how: found.how }];
    };
    return {
      colony: colonyRow(state, day, picture),
      sentence: colonySentence(state, names),
      queens: state.reigns.map((reign) => ({ ...queenView(reign), until: reign.until, ending: reign.ending })),
      stays: state.stays.map((stay) => ({ yard: names.yard(stay.yard).code, yardName: names.yard(stay.yard).name, from: stay.from, until: stay.until })),
      mother: (state.mother === null ? [] : linkTo(state.mother))[0] ?? null,
      ancestors: ancestorsOf(state, byId).flatMap((ancestor) => linkTo(ancestor.id)),
      daughters: state.daughters.flatMap(linkTo),
      unitedFrom: state.unitedFrom.flatMap(linkTo),
      unitedInto: (state.into === null ? [] : linkTo(state.into))[0] ?? null,
      honey: honeyBySeason(state, borders),
      miteCounts: state.miteCounts.map(({ day: counted, mites, bees }) => {
        const share = proportion(mites, bees);
        return { day: counted, mites, bees, per100: (mites / bees) * 100, range: [(share.clopperPearson?.lower ?? 0) * 100, (share.clopperPearson?.upper ?? 1) * 100] as [number, number] };
      }),
      entries: await storyEntries(book.store, await book.store.storyOf(id), names),
    };
  },
};

export function colonyRow(state: ColonyState, day: Day, { names, borders }: Picture): ColonyRow {
  const yard = names.yard(yardOn(state, day) ?? state.stays[0]?.yard ?? (0 as never));
  const look = state.looks.at(-1);
  const count = state.miteCounts.at(-1);
  const honey = honeyBySeason(state, borders).find((one) => one.season === seasonOf(day, borders));
  return {
    id: state.id, label: state.label, yard: yard.code, yardName: yard.name, origin: state.origin, start: state.start, end: state.end, how: state.how, queen: queenOn(state, day),
    lastLook: look?.day ?? null, framesBees: look?.framesBees ?? null, framesBrood: look?.framesBrood ?? null, framesStores: look?.framesStores ?? null,
    mitesDay: count?.day ?? null, mites: count?.mites ?? null, bees: count?.bees ?? null, supers: state.supers.deep + state.supers.medium + state.supers.shallow,
    honeyLb: honey?.lb ?? null, causes: [...state.causes],
  };
}

/** Honey weighed by colony, season by season, in pounds; what was weighed for a yard together is in no colony's figure. */
export function honeyBySeason(state: ColonyState, borders: Borders): { season: number; lb: number; harvests: number }[] {
  const seasons = new Map<number, { grams: number; harvests: number }>();
  for (const harvest of state.harvests) {
    const season = seasonOf(harvest.day, borders);
    const sum = seasons.get(season) ?? { grams: 0, harvests: 0 };
    seasons.set(season, { grams: sum.grams + harvest.grams, harvests: sum.harvests + 1 });
  }
  return [...seasons].map(([season, { grams, harvests }]) => ({ season, lb: roundTo(grams / gramsPerPound, 4), harvests }));
}
