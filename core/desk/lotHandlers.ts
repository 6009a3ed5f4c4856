import { lotAct, type JarSize, type LotAct, type LotPage } from '#shared/contract/lots.ts';
import { longestNewLot, waterPlaces } from '#shared/contract/lots.ts';
import type { EntryId } from '#shared/brands.ts';
import { dayInWords, yearOf, type Day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { weighedTooHeavy } from '#shared/lotScale.ts';
import { compareNames } from '#shared/nameOrder.ts';
import { counted, fixed } from '#shared/figures.ts';
import { moneyText, type MassUnit } from '#shared/units.ts';
import type { Minor } from '#shared/brands.ts';
import type { Grams } from '#shared/brands.ts';
import { jarWords, saleItem, sizeKey } from '#core/honey/lots/jars.ts';
import { firstNewTrouble } from '#core/honey/lots/judgeStep.ts';
import { jarSizes, jarsOfSize, type Lot } from '#core/honey/lots/lotBook.ts';
import type { KeptStep, LotFacts, SaleFact } from '#core/honey/lots/lotFacts.ts';
import { actSentence, balanceSentence, eventSentence, gramsSaid, limitSentence, refusalSentence, waterSentence } from '#core/honey/lots/lotWords.ts';
import { harvestsBehind } from '#core/honey/lots/traceLots.ts';
import { waterFromReading } from '#core/honey/moisture.ts';
import { blendTo, massAtStandard } from '#core/honey/waterBalance.ts';
import { gradeByWater, judgeWater, type WaterPlace } from '#core/honey/waterLimits.ts';
import { tellApart } from '#core/lineage/tellApart.ts';
import { houseRules, numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import type { DeskContext, Handlers } from './desk.ts';
import { enterRows } from './enterRows.ts';
import { harvestLine, lotLine, saleLine, treatedIn, treatmentLines } from './lotLines.ts';
import { lotRecord, placePaper, readPlace, readSteps, stepPaper, type LotRecord } from './lotPapers.ts';
import { nextKey } from './offerPapers.ts';

type Names = 'lots.list' | 'lots.page' | 'lots.water' | 'lots.blend' | 'lots.keep' | 'lots.takeBack' | 'lots.sell' | 'lots.choosePlace';

export const lotHandlers: Handlers<Names> = {
  'lots.list': async (_, context) => {
    const { book, picture, record, unit, place, today } = await here(context);
    const lots = [...record.book.lots.values()].map((lot) => lotLine(lot, picture, place, unit));
    lots.sort((a, b) => ((a.from ?? '9') < (b.from ?? '9') ? 1 : (a.from ?? '9') > (b.from ?? '9') ? -1 : a.code < b.code ? 1 : -1));
    const limit = judgeWater(0, place, picture.rules).limit;
    const seasons = [...new Set(lots.flatMap(({ season }) => (season === null ? [] : [season])))].toSorted((a, b) => b - a);
    return {
      asOf: today, lots, seasons, loose: record.book.loose.map((one) => harvestLine(one, picture)).toReversed(), place, limits: limitsFor(null, picture.rules), placeLabel: placeLabel(place, picture.rules), limit,
      salesWithout: record.facts.sales.filter(({ lot, item }) => lot === null && item.toLowerCase().includes('honey')).length,
      sentence: listSentence(lots, limit), nextCode: nextCode(today, new Set([...record.book.lots.keys(), ...(await readSteps(book.store)).map(({ lot }) => lot)])),
    };
  },
  'lots.page': async ({ lot: code }, context) => pageOf(code, context),
  'lots.water': async ({ reading, celsius }) => {
    const water = found(waterFromReading(reading, celsius));
    return { water, sentence: `${fixed(reading, 4)} at ${fixed(celsius, 1)} °C is ${fixed(water, 1)} % water.` };
  },
  'lots.blend': async ({ lot: code, dry: dryCode, target }, context) => {
    const { record, unit } = await here(context);
    const [wet, dry] = [lotOf(record, code), lotOf(record, dryCode)];
    for (const one of [wet, dry]) if (one.water === null) throw new FaultError(refuse('refused', `The water of lot ${one.code} is not known.`, { mend: 'Read it and keep the reading first.' }));
    const { dry: needed, blend } = found(blendTo({ mass: Math.max(0, wet.account.bulk) as Grams, water: wet.water ?? 0 }, dry.water ?? 0, target));
    const enough = needed <= dry.account.bulk + 0.5;
    const there = enough ? '' : ` Only ${gramsSaid(Math.max(0, dry.account.bulk), unit)} of it are left.`;
    return { mass: Math.max(needed, 1e-6), enough, sentence: `${gramsSaid(needed, unit)} of lot ${dry.code} (${fixed(dry.water, 1)} %) bring ${gramsSaid(wet.account.bulk, unit)} of ${fixed(wet.water, 1)} % down to ${fixed(target, 1)} %: ${gramsSaid(blend, unit)} together.${there}` };
  },
  'lots.keep': async ({ lot, day, act: asked }, context) => {
    const { book, record, unit, today } = await here(context);
    if (day > today) throw new FaultError(refuse('refused', `${dayInWords(day)} is still to come.`, { field: 'day', mend: 'Give the day on which it was done.' }));
    const act = settled(asked);
    if (!record.book.lots.has(lot) && [...lot].length > longestNewLot) throw new FaultError(refuse('refused', `A lot’s name has at most ${longestNewLot} signs; this one has ${[...lot].length}.`, { field: 'lot', mend: 'Shorten it. Nothing was kept.' }));
    if (act.what !== 'made' && act.what !== 'poured') lotOf(record, lot);
    if (act.what === 'poured') lotOf(record, act.from);
    if (act.what === 'made') checkHarvests(act.harvests, record);
    else checkSince(act, lot, day, record);
    if (act.what === 'filled' && act.bestBefore !== null && act.bestBefore <= day) throw new FaultError(refuse('refused', 'Best before lies after the day on which the jars are filled.', { field: 'bestBefore' }));
    const step: KeptStep = { key: nextKey('l', (await book.store.papers('lot')).keys()), lot, day, at: context.options.now().stamp, act, back: null };
    const wrong = firstNewTrouble(record.facts, { ...record.facts, steps: [...record.facts.steps, step] });
    if (wrong !== null) {
      const own = 'step' in wrong.event.of && wrong.event.of.step.key === step.key;
      throw new FaultError(refuse('refused', refusalSentence(wrong, own, unit).sentence, { mend: refusalSentence(wrong, own, unit).mend }));
    }
    await book.store.keepPapers([stepPaper(step)]);
    return { key: step.key, sentence: `Lot ${lot}: ${actSentence(act, unit, changeOf(await lotRecord(book, today), step.key))}` };
  },
  'lots.takeBack': async ({ key, reason }, context) => {
    const { book, record, unit } = await here(context);
    const step = record.steps.find((one) => one.key === key);
    if (step === undefined || step.back !== null) throw new FaultError(refuse('unknown', 'That is not in the lot, or was taken back already.'));
    const back: KeptStep = { ...step, back: { at: context.options.now().stamp, reason } };
    const facts: LotFacts = { ...record.facts, steps: record.facts.steps.map((one) => (one.key === key ? back : one)) };
    const wrong = firstNewTrouble(record.facts, facts);
    if (wrong !== null) throw new FaultError(refuse('refused', refusalSentence(wrong, false, unit).sentence, { mend: 'Take that back first.' }));
    await book.store.keepPapers([stepPaper(back)]);
    return { key, sentence: `Taken back in lot ${step.lot}: ${actSentence(step.act, unit, null)}` };
  },
  'lots.sell': async ({ lot, day, size, quantity, price, note }, context) => {
    const { book, record, unit, today } = await here(context);
    lotOf(record, lot);
    if (day > today) throw new FaultError(refuse('refused', `${dayInWords(day)} is still to come.`, { field: 'day', mend: 'Give the day of the sale.' }));
    checkDay(record.book.lots.get(lot), day, 'entered');
    if (size !== null && !Number.isInteger(quantity)) throw new FaultError(refuse('refused', 'Jars are sold in whole numbers.', { field: 'quantity' }));
    const item = saleItem(size, unit);
    const sale: SaleFact = { entry: Number.MAX_SAFE_INTEGER as EntryId, day, place: Number.MAX_SAFE_INTEGER, item, quantity, price, lot };
    const wrong = firstNewTrouble(record.facts, { ...record.facts, sales: [...record.facts.sales, sale] });
    if (wrong !== null) {
      const own = 'sale' in wrong.event.of && wrong.event.of.sale === sale;
      const early = own && size !== null && wrong.event.trouble?.why === 'jars' ? soldTooEarly(wrong.lot, day, size, Math.max(0, quantity - wrong.event.trouble.by)) : null;
      if (early !== null) throw new FaultError(refuse('refused', early, { field: 'day', mend: 'Give a day on which they were filled, or enter the filling with its own day. Nothing was entered.' }));
      throw new FaultError(refuse('refused', refusalSentence(wrong, own, unit).sentence, { field: 'quantity', mend: size === null ? 'Weigh the lot, or correct the amount. Nothing was entered.' : 'Enter the jars that were filled first, or correct the number. Nothing was entered.' }));
    }
    const row: Cells = { date: day, entry: 'sale', item, quantity: String(quantity), lot, ...(price === null ? {} : { price: moneyText(price as Minor) }), ...(note === '' ? {} : { note }) };
    return enterRows(book.store, [row], `Sale of lot ${lot}`, (await book.settings()).dateOrder, context.options.now().stamp);
  },
  'lots.choosePlace': async ({ place }, context) => {
    const { book, picture } = await here(context);
    await book.store.keepPapers([placePaper(place)]);
    return { key: 'place', sentence: `Lots are held against: ${placeLabel(place, picture.rules)}.` };
  },
};

async function here(context: DeskContext) {
  const book = context.open();
  const today = await book.today(context.options.now().day);
  const [picture, settings] = [await book.picture(), await book.settings()];
  return { book, today, picture, record: await lotRecord(book, today), unit: settings.massUnit, place: await readPlace(book.store) };
}

async function pageOf(code: string, context: DeskContext): Promise<LotPage> {
  const { book, picture, record, unit, place, today } = await here(context);
  const lot = lotOf(record, code);
  const { rules, names } = picture;
  const behind = harvestsBehind(record.book, lot.code);
  const { coloniesOf } = await treatedIn(book, picture);
  const ids = new Set(behind.flatMap(({ harvest }) => [...coloniesOf(harvest)]));
  const apart = tellApart(picture.states.filter(({ id }) => ids.has(id)), (yard) => names.yard(yard).name);
  const colonies = new Map(behind.flatMap(({ harvest }) => coloniesOf(harvest).map((id): [number, LotPage['colonies'][number]] => [id, { id, label: names.colony(id), name: apart.get(id) ?? names.colony(id), yard: harvest.yard === null ? '–' : names.yard(harvest.yard).name, together: harvest.colony === null }])));
  const treatments = await treatmentLines(book, picture, behind.map(({ harvest }) => harvest));
  const { water } = lot;
  const verdict = water === null ? null : judgeWater(water, place, rules);
  const poured = (event: Lot['events'][number]) => ('step' in event.of ? event.of.step.act : null);
  return {
    asOf: today, line: lotLine(lot, picture, place, unit),
    atStandard: water === null || lot.account.bulk <= 0 ? null : massAtStandard({ mass: lot.account.bulk as Grams, water }, rules), standard: numberRule(rules, 'honey.water.standard'),
    grade: water === null ? null : gradeByWater(water, rules), keeps: verdict?.keeps ?? null, keepsBelow: numberRule(rules, 'honey.water.keeps'), place,
    limits: limitsFor(water, rules), waterSentence: waterSentence(lot), limitSentence: limitSentence(water, placeLabel(place, rules), judgeWater(0, place, rules).limit),
    balanceSentence: balanceSentence(lot, unit), saleSentence: saleSentence(lot),
    events: eventLines(lot, record, unit),
    harvests: behind.map(({ harvest, via }) => harvestLine(harvest, picture, via)),
    colonies: [...colonies.values()].toSorted((a, b) => compareNames(a.yard, b.yard) || compareNames(a.label, b.label)),
    treatments, treatmentSentence: treatmentSentence(treatments, colonies.size),
    wentTo: lot.events.flatMap((event) => ('pouredTo' in event.of ? [{ code: event.of.pouredTo, day: event.day, mass: -event.change }] : [])),
    cameFrom: lot.events.flatMap((event) => {
      const act = poured(event);
      return act?.what === 'poured' && !('pouredTo' in event.of) ? [{ code: act.from, day: event.day, mass: event.change }] : [];
    }),
    sales: lot.events.flatMap(({ of }) => ('sale' in of ? [saleLine(of.sale)] : [])),
    others: [...record.book.lots.keys()].filter((one) => one !== lot.code).toSorted().toReversed(), bestBeforeMonths: numberRule(rules, 'honey.bestBefore'),
  };
}

/** What happened to the lot, those taken back in their place among the days. */
function eventLines(lot: Lot, { steps }: LotRecord, unit: MassUnit): LotPage['events'] {
  const standing = lot.events.map((event): LotPage['events'][number] => ({
    key: 'step' in event.of ? event.of.step.key : null, entry: 'harvest' in event.of ? event.of.harvest.entry : 'sale' in event.of ? event.of.sale.entry : null, day: event.day,
    what: 'harvest' in event.of ? 'harvest' : 'sale' in event.of ? 'sale' : event.of.step.act.what, sentence: eventSentence(event, unit), change: event.change, bulk: event.bulk, back: null,
  }));
  const back = steps.flatMap(({ key, lot: of, day, act, back: taken }) => (of !== lot.code || taken === null ? [] : [{ key, entry: null, day, what: act.what, sentence: actSentence(act, unit, null), change: 0, bulk: 0, back: taken.reason }]));
  return [...standing, ...back].toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
}

function lotOf({ book }: LotRecord, code: string): Lot {
  const lot = book.lots.get(code);
  if (lot === undefined) throw new FaultError(refuse('unknown', `No lot of honey is called “${code}”.`, { field: 'lot', mend: 'Make it from harvests, or name it in a harvest’s entry.' }));
  return lot;
}

/** A reading is worked out here, whatever the window made of it; a weighing must leave something. */
function settled(act: LotAct): LotAct {
  if (act.what === 'water' && act.reading !== null && act.celsius !== null) return lotAct.parse({ ...act, water: found(waterFromReading(act.reading, act.celsius)) });
  if (act.what === 'weighed' && !(act.gross > act.tare)) throw new FaultError(refuse('refused', 'Full weight must be more than empty weight.', { field: 'gross', mend: 'Correct one of them. Nothing was kept.' }));
  return act;
}

/** Nothing can be done with a lot before honey is in it: a weighing then would be counted once more when the harvest comes in. */
function checkSince(act: Exclude<LotAct, { what: 'made' }>, lot: string, day: Day, { book }: LotRecord): void {
  if (act.what === 'poured') checkDay(book.lots.get(act.from), day, 'kept');
  // A lot may begin with what is poured into it, and then that day may turn out to be an earlier one.
  const own = book.lots.get(lot);
  const began = own?.events.find(broughtHoney)?.of;
  if (act.what !== 'poured' || (began !== undefined && 'harvest' in began)) checkDay(own, day, 'kept');
}

function checkDay(lot: Lot | undefined, day: Day, done: string): void {
  const first = lot?.events.find(broughtHoney);
  if (lot === undefined || first === undefined || day >= first.day) return;
  // Harvests are in a lot from the day it was made of them on.
  const madeLater = 'harvest' in first.of && first.of.harvest.day < first.day ? ' If the lot was made earlier, take that back in what was done, and make it again with its day.' : '';
  throw new FaultError(refuse('refused', `The first honey of lot ${lot.code} came in on ${dayInWords(first.day)}, after ${dayInWords(day)}.`, { field: 'day', mend: `Give that day or a later one.${madeLater} Nothing was ${done}.` }));
}

/** A sale of more jars than were filled by its day, where more were filled later: with both days; null where none were. */
function soldTooEarly(lot: Lot, day: Day, size: JarSize, left: number): string | null {
  const later = lot.events.find(({ day: filled, of }) => filled > day && 'step' in of && of.step.act.what === 'filled' && sizeKey(of.step.act.size) === sizeKey(size));
  if (later === undefined) return null;
  const called = (count: number) => counted(count, jarWords(size), `${jarWords(size)}s`);
  return `On ${dayInWords(day)}, the day of the sale, lot ${lot.code} had ${left === 0 ? `no ${jarWords(size)}s` : `only ${called(left)}`}; ${left === 0 ? 'the first' : 'the next'} were filled on ${dayInWords(later.day)}.`;
}

function broughtHoney({ of }: Lot['events'][number]): boolean {
  return 'harvest' in of || ('step' in of && !('pouredTo' in of) && of.step.act.what === 'poured');
}

function checkHarvests(asked: readonly EntryId[], { book, facts }: LotRecord): void {
  const loose = new Set(book.loose.map(({ entry }) => entry));
  const known = new Set(facts.harvests.map(({ entry }) => entry));
  if (asked.some((entry) => !known.has(entry))) throw new FaultError(refuse('unknown', 'One of these harvests is not in the book any more.', { field: 'harvests', mend: 'Look at the list again. Nothing was kept.' }));
  if (asked.some((entry) => !loose.has(entry))) throw new FaultError(refuse('refused', 'One of these harvests is in a lot already.', { field: 'harvests', mend: 'Take it out of the choice. Nothing was kept.' }));
}

function found<Value>(answer: { readonly ok: true; readonly value: Value } | ReturnType<typeof refuse>): Value {
  if (!answer.ok) throw new FaultError(answer);
  return answer.value;
}

function changeOf({ book }: LotRecord, key: string): number | null {
  for (const lot of book.lots.values()) for (const { of, change } of lot.events) if ('step' in of && !('pouredTo' in of) && of.step.key === key) return change;
  return null;
}

function limitsFor(water: number | null, rules: RuleValues): LotPage['limits'] {
  const byKey = new Map(houseRules(rules).map((rule) => [rule.key, rule]));
  return waterPlaces.map((place) => {
    const { rule, limit } = judgeWater(0, place, rules);
    const found = byKey.get(rule);
    return { place, label: placeLabel(place, rules), limit, within: water === null ? null : judgeWater(water, place, rules).within, source: found?.source ?? '', confidence: found?.confidence ?? '' };
  });
}

export function placeLabel(place: WaterPlace, rules: RuleValues): string {
  return houseRules(rules).find(({ key }) => key === `honey.water.${place}`)?.label.replace(': water at most', '') ?? place;
}

function listSentence(lots: readonly ReturnType<typeof lotLine>[], limit: number): string {
  if (lots.length === 0) return 'No lot of honey is in the book yet.';
  const wet = lots.filter(({ within }) => within === false).length;
  const unread = lots.filter(({ water }) => water === null).length;
  const wrong = lots.filter(({ troubles }) => troubles.length > 0).length;
  const heavy = lots.filter(({ troubles, account }) => troubles.length === 0 && weighedTooHeavy(account)).length;
  if (lots.length === 1 && wet === 0 && wrong + heavy === 0) return unread === 1 ? '1 lot: its water is not known.' : `1 lot: it is no wetter than ${fixed(limit, 1)} %.`;
  const parts = [`${wet === 0 ? 'none' : wet} ${wet === 1 ? 'is' : 'are'} wetter than ${fixed(limit, 1)} %`, ...(unread > 0 ? [`of ${unread} the water is not known`] : []), ...(wrong > 0 ? [`${wrong} ${wrong === 1 ? 'does' : 'do'} not balance`] : []), ...(heavy > 0 ? [`${heavy} weighed too heavy`] : [])];
  return `${counted(lots.length, 'lot', 'lots')}: ${parts.join(', ')}.`;
}

function saleSentence(lot: Lot): string {
  const sizes = jarSizes(lot);
  if (sizes.length === 0) return 'No jars were filled from it yet.';
  const counts = sizes.map((size) => {
    const own = jarsOfSize(lot, size);
    const [filled, sold] = [own.reduce((sum, one) => sum + one.filled, 0), own.reduce((sum, one) => sum + one.sold, 0)];
    return { size, filled, sold, left: filled - sold };
  });
  return `${counts.map(({ size, filled, sold, left }) => `${counted(filled, jarWords(size), `${jarWords(size)}s`)} filled, ${sold} sold, ${left < 0 ? `${-left} more than were filled` : `${left} left`}`).join('; ')}.`;
}

function treatmentSentence(treatments: LotPage['treatments'], colonies: number): string {
  if (colonies === 0) return 'No colony is behind this lot in the record.';
  const before = treatments.filter(({ afterHarvest }) => !afterHarvest);
  if (treatments.length === 0) return `No treatment of ${counted(colonies, 'colony', 'colonies')} behind this lot is written down for the season.`;
  const on = before.filter(({ supersOn }) => supersOn).length;
  const said = before.length === 0 ? 'none before the harvest' : `${before.length} before the harvest or on its day, ${on === 0 ? 'none with honey supers on' : `${on} with honey supers on`}`;
  return `${counted(treatments.length, 'treatment', 'treatments')} of ${counted(colonies, 'colony', 'colonies')} behind this lot in the season: ${said}.`;
}

function nextCode(today: Day, known: ReadonlySet<string>): string {
  for (let number = 1; ; number += 1) {
    const code = `${yearOf(today)}-${String(number).padStart(2, '0')}`;
    if (!known.has(code)) return code;
  }
}
