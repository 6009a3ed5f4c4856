import type { YardId } from '#shared/brands.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { aliveOn } from '#core/journal/colonyState.ts';
import { noDetails, type Yard } from '#core/journal/yardBook.ts';
import { byStand, withAbsent } from '#core/lineage/standOrder.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { lastVisits, yardVisits } from '#core/lineage/yardVisits.ts';
import { colonyRow } from './colonyHandlers.ts';
import { stockItems } from '#core/stock/stockTable.ts';
import type { Handlers } from './desk.ts';
import { stockBookOf } from './stockAccount.ts';
import { breathe } from './turns.ts';
import { wholeYardEntries } from './wholeYard.ts';

export const yardHandlers: Handlers<'yards.list' | 'yard.page' | 'yard.details' | 'yard.stand'> = {
  'yards.list': async (_, context) => {
    const book = context.open();
    const { states } = await book.picture();
    const details = await book.store.yardDetails();
    const whole = await wholeYardEntries(book.store);
    const last = lastVisits(states, whole);
    const yards = (await book.view()).yards.map((yard) => ({ ...yard, lastVisit: last.get(yard.id) ?? null, renewal: details.get(yard.id)?.renewal ?? null }));
    return { today: await book.today(context.options.now().day), yards };
  },
  'yard.page': async ({ id }, context) => {
    const book = context.open();
    const picture = await book.picture();
    const yard = (await book.view()).yards.find((one) => one.id === id);
    if (yard === undefined) throw unknownYard();
    const today = await book.today(context.options.now().day);
    const standing = picture.states.filter((state) => aliveOn(state, today) && yardOn(state, today) === id).toSorted(byStand(picture.stands.get(id) ?? []));
    const once = picture.states.filter((state) => state.stays.some((stay) => stay.yard === id));
    const own = [...(await book.store.entriesOf(once.map((state) => state.id))).values()].flat();
    const whole = await wholeYardEntries(book.store);
    const account = await stockBookOf(book, today);
    await breathe();
    const { rules, borders, names } = picture;
    return {
      yard,
      details: (await book.store.yardDetails()).get(id) ?? noDetails,
      today,
      colonies: standing.map((state) => colonyRow(state, today, picture)),
      visits: yardVisits(id, picture.byId, [...own, ...whole], picture.names, 8),
      // What no stock row names is only taken for granted under the hives, and is not listed as counted.
      equipment: stockItems(account, { names, rules, borders, asOf: today }).flatMap(({ item, keptFrom, places }) => {
        const count = places.find(({ place }) => place === yard.code)?.total ?? 0;
        return keptFrom === null || count === 0 ? [] : [{ item, count }];
      }),
    };
  },
  'yard.details': async ({ id, access, notes, registration, renewal }, context) => {
    const { store } = context.open();
    requireYard(await store.yards(), id);
    const details = { access: textOrNull(access), notes: textOrNull(notes), registration: textOrNull(registration), renewal };
    await store.keepYardDetails(id, details);
    return details;
  },
  'yard.stand': async ({ yard, colonies }, context) => {
    const book = context.open();
    const { states, stands, yardList } = await book.picture();
    requireYard(yardList, yard);
    const today = await book.today(context.options.now().day);
    const here = new Set(states.filter((state) => aliveOn(state, today) && yardOn(state, today) === yard).map((state) => state.id));
    const given = new Set(colonies);
    if (given.size !== colonies.length || given.size !== here.size || !colonies.every((id) => here.has(id))) {
      throw new FaultError(refuse('moved-on', 'A colony came or left meanwhile, so the order was not changed.', { mend: 'Look at the yard again and move the colony once more.' }));
    }
    await book.store.keepStand(yard, withAbsent(stands.get(yard) ?? [], colonies));
    return { colonies: [...colonies] };
  },
};

function requireYard(yards: readonly Yard[], id: YardId): void {
  if (!yards.some((yard) => yard.id === id)) throw unknownYard();
}

function unknownYard(): FaultError {
  return new FaultError(refuse('unknown', 'That yard is not in this book.'));
}

function textOrNull(text: string | null): string | null {
  return text === null || text === '' ? null : text;
}
