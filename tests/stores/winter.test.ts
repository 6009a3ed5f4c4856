import { describe, expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import { hold } from '#shared/figures.ts';
import { gramsFrom, massIn, millilitresFrom, volumeIn } from '#shared/units.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { storesPhase, storesToday } from '#core/stores/storesToday.ts';
import { supersToTake } from '#core/stores/supersToTake.ts';
import { uniteCandidates } from '#core/stores/uniteWeak.ts';
import { winterList, winterWorkIn, type WinterFacts } from '#core/stores/winterList.ts';
import { colonyWith, look, reign } from '../space/anyColony.ts';

const none = new Map<string, number | string>();
const lb = (amount: number) => gramsFrom(amount, 'lb');
const weighed = (on: string, pounds: number) => ({ day: day(on), grams: lb(pounds) });
const syrup = (on: string, gallons: number | null, feed: ColonyState['feedings'][number]['feed'] = 'syrup 2:1') => ({ day: day(on), feed, grams: null, millilitres: gallons === null ? null : millilitresFrom(gallons, 'gal') });
const on = (text: string, rules: ReadonlyMap<string, number | string> = none) => ({ day: day(text), rules, unit: 'lb' as const });
const supers = (medium: number) => ({ deep: 0, medium, shallow: 0 });

test('the phases of the year, their days included', () => {
  expect(['2026-04-01', '2026-08-14', '2026-08-15', '2026-10-15', '2026-10-16', '2027-01-10', '2027-03-31'].map((text) => storesPhase(day(text), none))).toEqual(['summer', 'summer', 'autumn', 'autumn', 'winter', 'winter', 'winter']);
});

describe('stores on a day', () => {
  test('in autumn against the target, with the syrup given since', () => {
    const state = colonyWith({ storesWeights: [{ ...weighed('2026-09-10', 56), fedBefore: 1 }], feedings: [syrup('2026-09-10', 3), syrup('2026-09-20', 2), syrup('2026-09-25', null), syrup('2026-10-01', 1, 'fondant')] });
    const found = storesToday(state, on('2026-10-05'));
    expect(found).toMatchObject({ phase: 'autumn', say: 'feed', age: 25, rests: { kind: 'stores', day: '2026-09-10' }, fed: { times: 3, notReckoned: 2 } });
    // 56 lb and 2 gallons at 7 lb: 70 of 90, 20 lb short, 2.86 gallons.
    expect([massIn(found.reckoned!, 'lb'), massIn(found.amount, 'lb'), volumeIn(found.feed!.volume, 'gal')]).toEqual([70, 20, 3]);
    expect(storesToday(state, on('2026-10-05', new Map([['stores.place', 'middle']]))).say).toBe('take');
    expect(storesToday(state, on('2026-10-05', new Map([['stores.place', 'middle'], ['stores.target.middle', 72]] as [string, string | number][]))).say).toBe('leave');
  });

  test('what is fed on the day of a look came after it; of a weighing only if it was written down after it', () => {
    const looked = colonyWith({ looks: [look('2026-09-20', { framesStores: 8 })], feedings: [syrup('2026-09-20', 2)] });
    // 56 lb and 14 lb of 90: 20 lb short, where 34 lb would be fed twice.
    expect(massIn(storesToday(looked, on('2026-10-05')).amount, 'lb')).toBeCloseTo(20, 9);
    const weighedAt = (fedBefore: number) => storesToday(colonyWith({ storesWeights: [{ ...weighed('2026-09-20', 56), fedBefore }], feedings: [syrup('2026-09-20', 1), syrup('2026-09-20', 1)] }), on('2026-10-05'));
    expect([0, 1, 2].map((fedBefore) => Math.round(massIn(weighedAt(fedBefore).reckoned!, 'lb')))).toEqual([70, 63, 56]);
  });

  test('a word that is too old, or none, makes no figure', () => {
    const old = storesToday(colonyWith({ looks: [look('2026-07-20', { framesStores: 8 })] }), on('2026-08-20'));
    expect(old).toMatchObject({ say: 'look first', reckoned: null, feed: null, age: 31 });
    expect(storesToday(colonyWith(), on('2026-08-20'))).toMatchObject({ say: 'not told', told: null, age: null, reckoned: null });
  });

  test('in summer only what is about to starve is fed, light syrup, and never under supers', () => {
    const low = colonyWith({ looks: [look('2026-05-10', { framesStores: 1 })] });
    const found = storesToday(low, on('2026-05-15'));
    expect([found.say, massIn(found.amount, 'lb'), found.feed?.mix, volumeIn(found.feed!.volume, 'gal'), found.target]).toEqual(['feed', 8, 'light', 2, null]);
    expect(storesToday({ ...low, supers: supers(1) }, on('2026-05-15'))).toMatchObject({ say: 'look first', feed: null });
    expect(storesToday(colonyWith({ looks: [look('2026-05-10', { framesStores: 4 })] }), on('2026-05-15')).say).toBe('leave');
  });

  test('in winter what is left is reckoned by the week, and no syrup is named', () => {
    const state = colonyWith({ storesWeights: [weighed('2026-10-10', 40)] });
    const found = storesToday(state, on('2027-01-07'));
    // 84 days from 15 October to 7 January: 12 weeks at 2 lb.
    expect(massIn(found.reckoned!, 'lb')).toBeCloseTo(16, 9);
    expect(found).toMatchObject({ phase: 'winter', say: 'leave', feed: null });
    expect(storesToday(state, on('2027-02-07'))).toMatchObject({ say: 'feed', feed: null });
    expect(massIn(storesToday(state, on('2027-03-31')).reckoned!, 'lb')).toBe(0);
    expect(storesToday(colonyWith({ looks: [look('2026-07-10', { framesStores: 8 })] }), on('2027-01-07'))).toMatchObject({ say: 'look first', reckoned: null });
  });

  test('kilograms ask for litres', () => {
    const found = storesToday(colonyWith({ storesWeights: [weighed('2026-09-10', 76)] }), { ...on('2026-09-15'), unit: 'kg' });
    // 14 lb short: 2 gallons, 7.57 litres.
    expect(volumeIn(found.feed!.volume, 'l')).toBe(8);
    expect(found.reason).toContain('kg');
  });
});

describe('supers that may be taken', () => {
  const taken = (frames: number | null, text: string, count = 2) => supersToTake(colonyWith({ supers: supers(count), looks: frames === null ? [] : [look('2026-08-18', { framesStores: frames })] }), on(text), 10);
  test('by what is below them', () => {
    expect(taken(13, '2026-08-20')).toMatchObject({ say: 'take', count: 2, leaveInstead: 0 });
    // 63 of 90 lb: 27 lb short, one full medium super of 40.
    expect(taken(9, '2026-08-20')).toMatchObject({ say: 'take and feed', leaveInstead: 1 });
    // 28 of 90 lb: 62 lb short, two; never more than stand on it.
    expect(taken(4, '2026-08-20')).toMatchObject({ leaveInstead: 2 });
    expect(taken(4, '2026-08-20', 1)).toMatchObject({ leaveInstead: 1, reason: expect.stringContaining('would not make up all of it') });
    expect(taken(null, '2026-08-20')).toMatchObject({ say: 'look first' });
  });
  test('after the last day for syrup what is short stays on', () => {
    const late = supersToTake(colonyWith({ supers: supers(1), looks: [look('2026-10-10', { framesStores: 9 })] }), on('2026-10-20'), 10);
    expect(late).toMatchObject({ say: 'leave', leaveInstead: 1 });
  });
  test('none before the day of the house, and none where none is on', () => {
    expect(taken(9, '2026-07-14')).toBeNull();
    expect(taken(9, '2026-08-20', 0)).toBeNull();
  });
});

describe('uniting', () => {
  const colony = (id: number, bees: number, more: Partial<ColonyState> = {}) => ({ state: colonyWith({ looks: [look('2026-09-10', { framesBees: bees, eggs: true })], reigns: [reign(2026)], ...more }, id), splitDays: [] });
  test('the weakest first, each with its own partner, the least strong of those that are fit', () => {
    const found = uniteCandidates([colony(1, 4), colony(2, 12), colony(3, 3), colony(4, 7), colony(5, 5.5)], day('2026-09-15'), none);
    expect(found.map(({ colony: id, partner }) => [id, partner?.colony])).toEqual([[3, 4], [1, 2]]);
  });
  test('a queenless one goes too; one whose queen is doubted is no partner', () => {
    const found = uniteCandidates([colony(1, 9, { reigns: [] }), colony(2, 8, { looks: [look('2026-09-10', { framesBees: 8, eggs: false })] }), colony(3, 10)], day('2026-09-15'), none);
    expect(found.map(({ colony: id, queenless, partner }) => [id, queenless, partner?.colony ?? null])).toEqual([[1, true, 3]]);
  });
  test('nothing outside its days, nor by an old look', () => {
    expect(uniteCandidates([colony(1, 3), colony(2, 12)], day('2026-10-20'), none)).toEqual([]);
    expect(uniteCandidates([colony(1, 3), colony(2, 12)], day('2026-10-05'), none)).toEqual([]);
  });
});

describe('the winter list', () => {
  const facts = (text: string, more: Partial<WinterFacts> = {}): WinterFacts => ({ ...on(text), splitDays: [], treatments: [], work: [], ...more });
  const states = (state: ColonyState, known: WinterFacts) => Object.fromEntries(winterList(state, known).map((line) => [line.item, line.state]));
  test('of a colony that nothing is written of, nothing is done and nothing is made up', () => {
    expect(states(colonyWith({ reigns: [reign(2026)] }), facts('2026-10-05'))).toEqual({ fed: 'not told', mites: 'not told', queen: 'not told', strength: 'not told', reduce: 'not told', wrap: 'not told', dry: 'not told' });
  });
  test('of one that is ready', () => {
    const state = colonyWith({
      reigns: [reign(2026)], looks: [look('2026-09-20', { framesBees: 8, framesBrood: 3, eggs: true })], miteCounts: [{ day: day('2026-09-20'), mites: 3, bees: 300 }], storesWeights: [weighed('2026-10-04', 92)],
    });
    const work = [{ item: 'reduce' as const, day: day('2026-10-01') }, { item: 'wrap' as const, day: day('2025-11-01') }];
    expect(states(state, facts('2026-10-05', { work }))).toEqual({ fed: 'done', mites: 'done', queen: 'done', strength: 'done', reduce: 'done', wrap: 'not told', dry: 'not told' });
  });
  test('of one that is not', () => {
    const state = colonyWith({ reigns: [], looks: [look('2026-09-20', { framesBees: 3, eggs: false, framesStores: 4 })], miteCounts: [{ day: day('2026-08-20'), mites: 12, bees: 300 }] });
    expect(states(state, facts('2026-10-05'))).toMatchObject({ fed: 'to do', mites: 'to do', queen: 'to do', strength: 'to do' });
    const treated = winterList(state, facts('2026-10-05', { treatments: [{ day: day('2026-08-25'), until: null, ingredient: 'thymol' }] })).find(({ item }) => item === 'mites');
    expect(treated).toMatchObject({ state: 'not told', words: expect.stringContaining('treated with thymol from 25 August 2026, not counted since') });
  });
  test('in winter by what there was when feeding was over, and by the winter’s own treatment', () => {
    const state = colonyWith({ reigns: [reign(2026)], storesWeights: [weighed('2026-10-10', 56)], miteCounts: [{ day: day('2026-09-01'), mites: 12, bees: 300 }] });
    const treatments = [{ day: day('2026-11-20'), until: null, ingredient: 'oxalic acid' }];
    expect(states(state, facts('2027-01-10', { treatments }))).toMatchObject({ fed: 'short', mites: 'done' });
    expect(states({ ...state, storesWeights: [weighed('2026-10-10', 86)] }, facts('2027-01-10'))).toMatchObject({ fed: 'done', mites: 'to do' });
    expect(states({ ...state, storesWeights: [weighed('2026-09-01', 86)] }, facts('2027-01-10'))).toMatchObject({ fed: 'not told' });
  });
  test('what is short is to do until the last day for heavy syrup; then it is short, and liquid feed is past its day', () => {
    const state = colonyWith({ reigns: [reign(2026)], storesWeights: [weighed('2026-10-10', 56)] });
    const fed = (text: string) => winterList(state, facts(text)).find(({ item }) => item === 'fed');
    expect(fed('2026-10-15')).toMatchObject({ state: 'to do', words: expect.stringContaining(`34${hold}lb short of 90${hold}lb`) });
    expect(fed('2026-10-16')).toMatchObject({ state: 'short', words: expect.stringContaining(`34${hold}lb short of 90${hold}lb when feeding was over; liquid feed is past its day, 15 October.`) });
    expect(fed('2026-10-16')?.words).not.toContain('syrup since');
    // Where the last day is later, it is still to do.
    expect(winterList(state, facts('2026-10-16', { rules: new Map([['stores.feedBy', '11-05']]) }))[0]).toMatchObject({ item: 'fed', state: 'to do' });
  });
  test('words of work', () => {
    expect(['entrances reduced', 'mouse guards', 'Wrapped the hives', 'tilted, top entrance', 'mowing', 'drying sheets'].map(winterWorkIn)).toEqual([['reduce'], ['reduce'], ['wrap'], ['dry'], [], []]);
  });
});
