import type { YardId } from '#shared/brands.ts';
import type { Each } from '#shared/contract/returns.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, seasonName, seasonOf, type Season } from '#shared/seasons.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { gramsPerPound } from '#shared/units.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { rulesOf, type Entry } from '#core/journal/kinds.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { categoryOfPurchase } from '#core/returns/categories.ts';
import { isToldByTheHive, seasonMoney, type SeasonMoney } from '#core/returns/moneyLines.ts';
import { meanKept, perUnit, returnsTable } from '#core/returns/returnsTable.ts';
import { houseRules, numberRule } from '#core/rules/houseRules.ts';
import { itemName } from '#core/stock/itemName.ts';
import { budgetLinePaper, chosenLines } from './budgetPapers.ts';
import type { DeskContext, Handlers } from './desk.ts';
import type { Picture } from './picture.ts';
import { standing, standingIn } from './standing.ts';

interface Asked {
  readonly season?: number | undefined;
  readonly hours: boolean;
  readonly equipment: 'parts' | 'paid';
}

export const returnsHandlers: Handlers<'returns.season' | 'returns.lines' | 'returns.chooseLine'> = {
  'returns.season': async (asked, context) => {
    const { picture, today, season, money, harvests, seasons } = await accountOf(asked, context);
    const { states, yardList, rules, borders } = picture;
    const { from, until } = periodDays(season, 'year', borders);
    const end = until <= today ? until : addDays(today, 1);
    const kept = meanKept(states, from, end);
    const pounds = new Map<YardId | null, number>();
    for (const { yard, grams } of harvests) pounds.set(yard, (pounds.get(yard) ?? 0) + grams / gramsPerPound);
    const yards = yardList.filter(({ id }) => (kept.get(id) ?? 0) > 0 || pounds.has(id) || money.lines.some(({ yard }) => yard === id));
    const table = returnsTable(money.lines, yards.map(({ id }) => id));
    const sum = (values: Iterable<number>) => [...values].reduce((total, value) => total + value, 0);
    const [colonies, harvested] = [sum(kept.values()), sum(pounds.values())];
    const eachOf = (returns: number, costs: number, units: number, why: string): Each => ({ returns: perUnit(returns, units), costs: perUnit(costs, units), net: perUnit(returns - costs, units), why: units === 0 ? why : null });
    return {
      asOf: today, season, seasonName: seasonName(season), running: until > today, seasons,
      yards: yards.map(({ id, code, name }, at) => {
        const [returns, costs] = [table.allReturns.byYard[at] ?? 0, table.allCosts.byYard[at] ?? 0];
        return { code, name, colonies: kept.get(id) ?? 0, pounds: pounds.get(id) ?? 0, perColony: eachOf(returns, costs, kept.get(id) ?? 0, noColony), perPound: eachOf(returns, costs, pounds.get(id) ?? 0, noHoney) };
      }),
      returns: table.returns.map(lineView), costs: table.costs.map(lineView), allReturns: amounts(table.allReturns), allCosts: amounts(table.allCosts), net: amounts(table.net),
      colonies, pounds: harvested,
      perColony: eachOf(table.allReturns.total, table.allCosts.total, colonies, noColony), perPound: eachOf(table.allReturns.total, table.allCosts.total, harvested, noHoney),
      hours: money.hours, miles: money.miles, equipmentPaid: money.equipmentPaid, unpriced: [...money.unpriced],
      rules: houseRules(rules).filter(({ key, room }) => room === 'returns' || key === 'decision.hourValue'),
    };
  },
  'returns.lines': async (asked, context) => {
    const { picture, season, money } = await accountOf(asked, context);
    return {
      season, seasonName: seasonName(season),
      lines: money.lines.map(({ yard, ...line }) => ({ ...line, yard: yard === null ? null : picture.names.yard(yard).code })),
    };
  },
  'returns.chooseLine': async ({ entry: id, line }, context) => {
    const { store } = context.open();
    const stored = await store.entries({ kinds: ['purchase'] });
    const found = stored.find(({ entry }) => entry.id === id);
    if (found === undefined || found.entry.kind !== 'purchase') throw new FaultError(refuse('unknown', 'No purchase with that number is in the book.', { field: 'entry' }));
    if (found.struck !== null) throw new FaultError(refuse('refused', 'That purchase was struck, so it stands under no line.', { field: 'entry', mend: 'Choose the line of the purchase that was put in its place.' }));
    if (isToldByTheHive(found.entry)) throw new FaultError(refuse('refused', 'Bees that were ordered count when they are hived, with the price entered there; the order itself stands under no line.', { field: 'entry' }));
    await store.keepPapers([budgetLinePaper(id, line)]);
    const { item } = found.entry.body;
    const guess = categoryOfPurchase(item);
    return { entry: id, item: itemName(item), line: line ?? guess, guess, chosen: line !== null };
  },
};

const noColony = 'No colony was kept in these days, so there is nothing to divide by.';
const noHoney = 'No honey was weighed in these days, so there is nothing to divide by.';

async function accountOf({ season: asked, hours, equipment }: Asked, context: DeskContext) {
  const book = context.open();
  const picture = await book.picture();
  const today = await book.today(context.options.now().day);
  const { borders, rules } = picture;
  const season: Season = asked ?? seasonOf(today, borders);
  const { from, until } = periodDays(season, 'year', borders);
  const last = until <= today ? addDays(until, -1) : today;
  // Equipment bought in earlier seasons is still written off in this one.
  const bought = await book.store.entries({ kinds: ['purchase'], until: last });
  const purchases = standing(bought);
  const chosen = await chosenLines(book.store, bought);
  const others = last < from ? [] : await standingIn(book.store, { kinds: ['install', 'requeen', 'sale', 'work', 'harvest'], from, until: last });
  const money: SeasonMoney = seasonMoney(
    [...purchases, ...others].toSorted(byOrder),
    season,
    { hour: hours ? Math.round(numberRule(rules, 'decision.hourValue') * 100) : null, mile: numberRule(rules, 'returns.mile') * 100, years: equipment === 'parts' ? Math.round(numberRule(rules, 'returns.years')) : null },
    { seasonOf: (day) => seasonOf(day, borders), yardOfColony: (entry) => yardOf(entry, picture), lineChosen: ({ id }) => chosen.get(id) ?? null },
  );
  const first = [...picture.states.map(({ start }) => start), ...purchases.map(({ day }) => day)].reduce((least: Day | null, day) => (least === null || day < least ? day : least), null);
  const begun = first === null ? season : Math.min(season, seasonOf(first, borders));
  const seasons = Array.from({ length: Math.max(season, seasonOf(today, borders)) - begun + 1 }, (_, at) => ({ season: begun + at, name: seasonName(begun + at) }));
  const harvests = others.flatMap((entry) => (entry.kind === 'harvest' ? [{ yard: yardOf(entry, picture), grams: entry.body.gross - entry.body.tare }] : []));
  return { picture, today, season, money, harvests, seasons };
}

/** The yard an entry names, or the one its colony stood in on that day. */
function yardOf(entry: Entry, { byId }: Picture): YardId | null {
  if ('yard' in entry.body && entry.body.yard !== undefined) return entry.body.yard;
  const [touched] = rulesOf(entry.kind).touches(entry.body);
  const state = touched === undefined ? undefined : byId.get(touched.colony);
  return state === undefined ? null : yardOn(state, entry.day);
}

function amounts({ byYard, notAssigned, total }: { readonly byYard: readonly number[]; readonly notAssigned: number; readonly total: number }) {
  return { byYard: [...byYard], notAssigned, total };
}

function lineView<Line extends { readonly byYard: readonly number[] }>(line: Line): Line & { byYard: number[] } {
  return { ...line, byYard: [...line.byYard] };
}
