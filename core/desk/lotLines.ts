import type { ColonyId } from '#shared/brands.ts';
import type { HarvestLine, LotLine, LotPage, TreatmentLine } from '#shared/contract/lots.ts';
import { dayInWords, dayNumber, type Day } from '#shared/days.ts';
import { seasonOf } from '#shared/seasons.ts';
import { counted } from '#shared/figures.ts';
import type { MassUnit } from '#shared/units.ts';
import type { Entry } from '#core/journal/kinds.ts';
import { harvestColonies, supersOffBy } from '#core/honey/yields/colonySeasons.ts';
import { jarWords } from '#core/honey/lots/jars.ts';
import { jarSizes, jarsOfSize, type Lot } from '#core/honey/lots/lotBook.ts';
import type { HarvestFact, SaleFact } from '#core/honey/lots/lotFacts.ts';
import { eventSentence } from '#core/honey/lots/lotWords.ts';
import { harvestDays } from '#core/honey/lots/traceLots.ts';
import { supersWords, treatmentFacts, treatmentsBehind, type TreatmentBehind, type TreatmentFact } from '#core/honey/lots/treatmentsBehind.ts';
import { judgeWater, type WaterPlace } from '#core/honey/waterLimits.ts';
import { keptFor } from './keptFor.ts';
import type { Book } from './openBook.ts';
import type { Picture } from './picture.ts';
import { standing } from './standing.ts';

export function harvestLine(harvest: HarvestFact, { names }: Picture, via: string | null = null): HarvestLine {
  const { entry, day, yard, colony, gross, tare, net, moisture } = harvest;
  return { entry, day, yard, yardName: yard === null ? '–' : names.yard(yard).name, colony, label: colony === null ? null : names.colony(colony), gross, tare, net, moisture, via };
}

export function lotLine(lot: Lot, picture: Picture, place: WaterPlace, unit: MassUnit): LotLine {
  const [from, until] = harvestDays(lot.harvests);
  const began = from ?? lot.events[0]?.day;
  return {
    code: lot.code, from, until, season: began === undefined ? null : seasonOf(began, picture.borders), yards: yardsOf(lot, picture.names), harvests: lot.harvests.length, measured: lot.measured, account: { ...lot.account }, water: lot.water, waterFrom: lot.waterFrom,
    within: lot.water === null ? null : judgeWater(lot.water, place, picture.rules).within, weighed: lot.weighed, jars: jarLines(lot),
    troubles: lot.events.flatMap((event) => (event.trouble === null ? [] : [`${dayInWords(event.day)}: ${eventSentence(event, unit)}`])),
  };
}

/** The yards of its own harvests, each once. */
export function yardsOf({ harvests }: Lot, names: Picture['names']): string[] {
  return [...new Set(harvests.flatMap(({ yard }) => (yard === null ? [] : [names.yard(yard).name])))];
}

/** A line for each size and day of best before, sizes in the order in which they were first filled. */
export function jarLines(lot: Lot): LotLine['jars'] {
  return jarSizes(lot).flatMap((size) => jarsOfSize(lot, size)).map(({ size, filled, sold, bestBefore }) => ({ size, words: jarWords(size), filled, sold, left: filled - sold, bestBefore }));
}

export function saleLine({ entry, day, item, quantity, price }: SaleFact): LotPage['sales'][number] {
  return { entry, day, item, quantity, price };
}

export interface Treated {
  readonly facts: readonly TreatmentFact[];
  readonly coloniesOf: ReturnType<typeof harvestColonies>;
}

/** All treatments, and the colonies behind each harvest; read once for as long as the book does not change. */
export async function treatedIn(book: Book, picture: Picture): Promise<Treated> {
  return keptFor(picture, 'treatments behind honey', async () => {
    const stored = await book.store.entries({ kinds: ['treatment', 'supers off'] });
    const entries = standing(stored);
    const off = entries.flatMap((entry) => (entry.kind === 'supers off' ? [{ entry: entry.id, day: entry.day, colony: entry.body.colony }] : []));
    return { facts: treatmentFacts(entries), coloniesOf: harvestColonies(picture.states, supersOffBy(off, picture.byId)) };
  });
}

/** What the colonies behind some harvests were treated with in their season. */
export async function treatmentLines(book: Book, picture: Picture, harvests: readonly HarvestFact[]): Promise<TreatmentLine[]> {
  const { facts, coloniesOf } = await treatedIn(book, picture);
  const harvested = harvests.flatMap((harvest) => coloniesOf(harvest).map((colony) => ({ colony, day: harvest.day })));
  const entriesOf = await book.store.entriesOf([...new Set(harvested.map(({ colony }) => colony))]) as ReadonlyMap<ColonyId, readonly Entry[]>;
  return treatmentsBehind(facts, harvested, { byId: picture.byId, entriesOf, borders: picture.borders }).map((one) => treatmentLine(one, picture));
}

function treatmentLine({ entry, day, until, ingredient, yard, whole, colonies, afterHarvest, harvest }: TreatmentBehind, { names }: Picture): TreatmentLine {
  const named = colonies.map(({ colony, supers }) => ({ id: colony, label: names.colony(colony), supers: supersWords(supers), on: supers.on }));
  const on = named.filter((one) => one.on).length;
  const called = yard === null ? '' : ` at ${names.yard(yard).name}`;
  const daysBefore = harvest === null ? null : daysBetween(until ?? day, harvest);
  const supers = on === 0 ? 'no honey supers on' : on === named.length ? 'honey supers on' : `honey supers on ${on} of them`;
  return {
    entry, day, until, ingredient, yard: yard === null ? '–' : names.yard(yard).name, whole, afterHarvest, supersOn: on > 0, harvest, daysBefore,
    colonies: named.map(({ id, label, supers: said }) => ({ id, label, supers: said })),
    sentence: `${ingredient}${called} on ${dayInWords(day)}${until === null ? '' : `, until ${dayInWords(until)}`}, ${counted(named.length, 'of these colonies', 'of these colonies')}, ${supers}${whenSaid(daysBefore, harvest, until)}.`,
  };
}

const daysBetween = (from: Day, to: Day) => dayNumber(to) - dayNumber(from);

function whenSaid(days: number | null, harvest: Day | null, until: Day | null): string {
  if (days === null || harvest === null) return ', after the harvest';
  const of = `the harvest of ${dayInWords(harvest)}`;
  if (days < 0) return `, still on at ${of}`;
  return days === 0 ? `, ${until === null ? 'given' : 'off'} on the day of ${of}` : `, ${counted(days, 'day', 'days')} ${until === null ? 'from it' : 'from its end'} to ${of}`;
}
