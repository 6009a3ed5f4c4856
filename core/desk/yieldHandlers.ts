import { seasonOf } from '#shared/seasons.ts';
import type { ColonyId } from '#shared/brands.ts';
import type { Day } from '#shared/days.ts';
import type { SeasonCrop } from '#shared/contract/yields.ts';
import { gramsPerPound } from '#shared/units.ts';
import { cropPerColony } from '#core/honey/cropPerColony.ts';
import { colonySeasons, yardSeasons, type ColonySeason, type YardSeason } from '#core/honey/yields/colonySeasons.ts';
import { nassOf } from '#core/honey/yields/nassHoney.ts';
import { yieldKey, yieldTable } from '#core/honey/yields/yieldTable.ts';
import { hourSentence, printedSentence, seasonSentence, yieldRemarks, yieldSentence } from '#core/honey/yields/yieldWords.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import { doneTogether } from '#core/work/workedHours.ts';
import { visitsOfBook } from './bookVisits.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { keptFor } from './keptFor.ts';
import { treatedIn } from './lotLines.ts';
import { lotRecord, type LotRecord } from './lotPapers.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { breathe } from './turns.ts';

export const yieldHandlers: Handlers<'yields.table' | 'yields.behind'> = {
  'yields.table': async ({ by, season }, context) => {
    const { book, picture, today, rows, whole, record } = await here(context);
    const unit = (await book.settings()).massUnit;
    const names = { yard: (id: ColonySeason['yard']) => picture.names.yard(id).name, order: picture.yardList.map(({ id }) => String(id)) };
    const inSeason = <One extends { readonly season: number }>(all: readonly One[]) => (season === null ? all : all.filter((one) => one.season === season));
    const wholeYards = inSeason(whole);
    const parts = yieldTable(inSeason(rows), wholeYards, by, names);
    const few = numberRule(picture.rules, 'honey.fewest');
    const seasons = await keptFor(picture, `crops ${today}`, async () => seasonCrops(book, picture, record, rows, whole, today));
    return { asOf: today, by, season, ...parts, few, sentence: yieldSentence(parts, by, few, unit), remarks: yieldRemarks(parts, by, wholeYards.reduce((sum, { colonies }) => sum + colonies.length, 0)), seasons, seasonSentence: seasonSentence(seasons, unit), hourSentence: hourSentence(seasons, unit), printedSentence: printedSentence(seasons) };
  },
  'yields.behind': async ({ by, key, season, most }, context) => {
    const { picture, rows, whole } = await here(context);
    const { names } = picture;
    const single = rows.filter((one) => (season === null || one.season === season) && (key === null || yieldKey(one, by) === key))
      .map((one) => ({ colony: one.colony, label: names.colony(one.colony), season: one.season, yard: names.yard(one.yard).name, lb: one.lb, days: [...one.days], together: false }));
    const shared = by !== 'yard' && by !== 'season' ? [] : whole.filter((one) => (season === null || one.season === season) && (key === null || (by === 'yard' ? String(one.yard) : String(one.season)) === key))
      .flatMap((one) => one.colonies.map((colony) => ({ colony, label: names.colony(colony), season: one.season, yard: names.yard(one.yard).name, lb: null, days: [...one.days], together: true })));
    const all = [...single.toSorted((a, b) => b.lb - a.lb), ...shared];
    return { rows: all.slice(0, most), total: all.length };
  },
};

async function here(context: DeskContext) {
  const book = context.open();
  const today = await book.today(context.options.now().day);
  const picture = await book.picture();
  const record = await lotRecord(book, today);
  const { coloniesOf } = await treatedIn(book, picture);
  await breathe();
  const { rows, whole } = keptFor(picture, `yields ${today}`, () => ({
    rows: colonySeasons(picture.states, picture.borders).filter(({ days }) => days.every((day) => day <= today)),
    whole: yardSeasons(record.facts.harvests, coloniesOf, picture.borders),
  }));
  return { book, picture, today, record, rows, whole };
}

/** Each season's crop, for each colony harvested and for each hour of work. */
async function seasonCrops(book: Book, { borders }: Picture, { facts }: LotRecord, rows: readonly ColonySeason[], whole: readonly YardSeason[], today: Day): Promise<SeasonCrop[]> {
  const { visits: all } = await visitsOfBook(book);
  const visitsBy = Map.groupBy(all.filter(({ day }) => day <= today), ({ day }) => seasonOf(day, borders));
  const grams = Map.groupBy(facts.harvests, ({ day }) => seasonOf(day, borders));
  const coloniesBy = new Map<number, Set<ColonyId>>();
  for (const { season, colonies } of [...rows.map(({ season: of, colony }) => ({ season: of, colonies: [colony] })), ...whole]) {
    const own = coloniesBy.get(season) ?? new Set();
    coloniesBy.set(season, own);
    for (const colony of colonies) own.add(colony);
  }
  return [...grams.keys()].toSorted((a, b) => a - b).map((season) => {
    const lb = (grams.get(season) ?? []).reduce((sum, { net }) => sum + net, 0) / gramsPerPound;
    const colonies = coloniesBy.get(season)?.size ?? 0;
    const { visits, written, hours, estimate } = doneTogether(visitsBy.get(season) ?? []);
    const nass = nassOf(season);
    return {
      season, lb, colonies, perColony: cropPerColony(Math.max(0, lb), colonies), visits, written, hours,
      perHour: estimate === null || estimate.range[0] <= 0 ? null : { lb: lb / estimate.hours, range: [lb / estimate.range[1], lb / estimate.range[0]] },
      nass: nass === null ? null : { perColony: nass.perColony, colonies: nass.colonies, production: nass.production, source: nass.source },
    };
  });
}
