import type { ColonyId } from '#shared/brands.ts';
import type { JarSize, TraceFrom } from '#shared/contract/lots.ts';
import { dayInWords } from '#shared/days.ts';
import { counted } from '#shared/figures.ts';
import { fold } from '#shared/fold.ts';
import { seasonName, seasonOf } from '#shared/seasons.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import type { HarvestFact } from '#core/honey/lots/lotFacts.ts';
import { gramsSaid } from '#core/honey/lots/lotWords.ts';
import { jarSizes, jarsOfSize } from '#core/honey/lots/lotBook.ts';
import { lotsAhead } from '#core/honey/lots/traceLots.ts';
import { followsOn, type TreatmentFact } from '#core/honey/lots/treatmentsBehind.ts';
import { jarWords, readSaleItem, sizeKey } from '#core/honey/lots/jars.ts';
import { tellApart } from '#core/lineage/tellApart.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { harvestLine, saleLine, treatedIn, type Treated } from './lotLines.ts';
import { lotRecord } from './lotPapers.ts';
import type { Picture } from './picture.ts';

const mostTreatments = 400;

export const lotTraceHandlers: Handlers<'lots.trace' | 'lots.traceable'> = {
  'lots.trace': async ({ from }, context) => {
    const { book, picture, record, treated } = await here(context);
    const { wanted, words } = harvestsFrom(from, record.facts.harvests, picture, treated);
    const asked = new Set(wanted.map(({ entry }) => entry));
    const ahead = lotsAhead(record.book, asked);
    const loose = record.book.loose.filter(({ entry }) => asked.has(entry));
    const unit = (await book.settings()).massUnit;
    const jars = ahead.reduce((sum, { filled }) => sum + [...filled.values()].reduce((count, one) => count + one, 0), 0);
    const sales = ahead.reduce((sum, one) => sum + one.sales.length, 0);
    const net = wanted.reduce((sum, one) => sum + one.net, 0);
    const went = ahead.length === 0 ? 'none of it is in a lot' : `${counted(ahead.length, 'lot', 'lots')}, ${counted(jars, 'jar', 'jars')}, ${counted(sales, 'sale', 'sales')}`;
    return {
      sentence: wanted.length === 0 ? `${words}: no harvest is in the book.` : `${words}: ${counted(wanted.length, 'harvest', 'harvests')}, ${gramsSaid(net, unit)}; ${went}${loose.length > 0 ? `; ${counted(loose.length, 'harvest is', 'harvests are')} in no lot` : ''}.`,
      harvests: wanted.length,
      lots: ahead
        .map(({ lot, via, harvests, filled, sales: sold }) => ({
          code: lot.code, via, harvests: harvests.map((one) => harvestLine(one, picture)), net: harvests.reduce((sum, one) => sum + one.net, 0), bulk: lot.account.bulk, sales: sold.map(saleLine),
          // Sales name a size alone, so traced jars are counted by size; a day stands there only if all of them have it.
          jars: jarSizes(lot).flatMap((size) => {
            const days = new Set(jarsOfSize(lot, size).map(({ bestBefore }) => bestBefore));
            const count = filled.get(sizeKey(size)) ?? 0;
            const gone = sold.filter(({ item }) => isOf(item, size)).reduce((sum, { quantity }) => sum + (quantity ?? 0), 0);
            return count === 0 ? [] : [{ size, words: jarWords(size), filled: count, sold: gone, left: count - gone, bestBefore: days.size === 1 ? ([...days][0] ?? null) : null }];
          }),
        }))
        .toSorted((a, b) => (a.code < b.code ? 1 : -1)),
      loose: loose.map((one) => harvestLine(one, picture)),
    };
  },
  'lots.traceable': async (_, context) => {
    const { picture, record, treated, today } = await here(context);
    const { names, borders } = picture;
    const harvested = new Set(record.facts.harvests.flatMap((one) => [...treated.coloniesOf(one)]));
    const traceable = picture.states.filter(({ id }) => harvested.has(id));
    const apart = tellApart(traceable, (yard) => names.yard(yard).name);
    const groups = [...Map.groupBy(treated.facts.filter(({ day }) => day <= today), (fact) => groupKey(fact, picture)).values()];
    const seasons = [...new Set(record.facts.harvests.map(({ day }) => seasonOf(day, borders)))].toSorted((a, b) => b - a);
    return {
      colonies: traceable.map(({ id, label }) => ({ id, label, name: apart.get(id) ?? label })),
      treatments: groups.toReversed().slice(0, mostTreatments).flatMap((own) => {
        const [first] = own;
        if (first === undefined) return [];
        const yard = yardOf(first, picture);
        return [{ entry: first.entry, words: `${dayInWords(first.day)}: ${first.ingredient}${yard === null ? '' : `, ${names.yard(yard).name}`}, ${first.colony === null ? 'the whole yard' : counted(own.length, 'colony', 'colonies')}` }];
      }),
      seasons,
    };
  },
};

async function here(context: DeskContext) {
  const book = context.open();
  const today = await book.today(context.options.now().day);
  const picture = await book.picture();
  return { book, picture, today, record: await lotRecord(book, today), treated: await treatedIn(book, picture) };
}

function isOf(item: string, size: JarSize): boolean {
  const sold = readSaleItem(item);
  return sold?.kind === 'jar' && sizeKey(sold.size) === sizeKey(size);
}

/** The harvests that something is traced by, and how it is called. */
function harvestsFrom(from: TraceFrom, all: readonly HarvestFact[], picture: Picture, treated: Treated): { wanted: HarvestFact[]; words: string } {
  const { names, byId, borders } = picture;
  switch (from.by) {
    case 'colony': {
      const state = byId.get(from.colony);
      if (state === undefined) throw new FaultError(refuse('unknown', 'That colony is not in this book, or the entry that began it was struck.'));
      return { wanted: all.filter((one) => treated.coloniesOf(one).includes(from.colony)), words: tellApart(picture.states.filter(({ label }) => fold(label) === fold(state.label)), (yard) => names.yard(yard).name).get(state.id) ?? state.label };
    }
    case 'yard': {
      const season = from.season === null ? '' : `, season ${seasonName(from.season)}`;
      return { wanted: all.filter(({ yard, day }) => yard === from.yard && (from.season === null || seasonOf(day, borders) === from.season)), words: `${names.yard(from.yard).name}${season}` };
    }
    case 'day':
      return { wanted: all.filter(({ day }) => day >= from.from && day <= from.until), words: from.from === from.until ? dayInWords(from.from) : `${dayInWords(from.from)} to ${dayInWords(from.until)}` };
    case 'treatment': {
      const fact = treated.facts.find(({ entry }) => entry === from.entry);
      if (fact === undefined) throw new FaultError(refuse('unknown', 'That treatment is not in this book, or was struck.'));
      const colonies = treatedColonies(fact, picture, treated);
      const yard = yardOf(fact, picture);
      return { wanted: all.filter((one) => followsOn(one.day, fact.day) && treated.coloniesOf(one).some((id) => colonies.has(id))), words: `${fact.ingredient.charAt(0).toUpperCase()}${fact.ingredient.slice(1)}${yard === null ? '' : ` at ${names.yard(yard).name}`} on ${dayInWords(fact.day)}, harvested from then on for a year` };
    }
  }
}

function treatedColonies(fact: TreatmentFact, picture: Picture, { facts }: Treated): ReadonlySet<ColonyId> {
  if (fact.colony === null) return new Set(picture.states.filter((state) => fact.yard !== null && (aliveOn(state, fact.day) || state.end === fact.day) && yardOn(state, fact.day) === fact.yard).map(({ id }) => id));
  const key = groupKey(fact, picture);
  return new Set(facts.flatMap((one) => (one.colony !== null && groupKey(one, picture) === key ? [one.colony] : [])));
}

function groupKey(fact: TreatmentFact, picture: Picture): string {
  return `${fact.day} ${fact.ingredient} ${yardOf(fact, picture)} ${fact.colony === null}`;
}

function yardOf({ yard, colony, day }: TreatmentFact, { byId }: Picture) {
  const state = colony === null ? undefined : byId.get(colony);
  return yard ?? (state === undefined ? null : yardOn(state, day));
}
