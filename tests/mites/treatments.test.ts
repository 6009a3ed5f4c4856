import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ColonyId, EntryId, YardId } from '#shared/brands.ts';
import { addDays, day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { efficacy } from '#core/mites/efficacy.ts';
import { judgeTreatment, spansByColony, treatmentActs } from '#core/mites/treatmentActs.ts';
import { nextFlow, sameIngredient, treatmentFits, usualHigh, type TreatmentSetting } from '#core/mites/treatmentFits.ts';
import type { TreatmentSpan } from '#core/mites/treatmentSpans.ts';
import { broodIn, yardNow } from '#core/mites/yardNow.ts';

const none = new Map<string, number | string>();
const yard = 1 as YardId;

function colony(id: number, counts: readonly [string, number, number?][], more: Partial<ColonyState> = {}): ColonyState {
  return {
    id: id as ColonyId, label: `C${id}`, origin: 'nuc', supplier: null, price: null, start: day('2025-05-10'), startPlace: 1, startEntry: id as EntryId, end: null, endPlace: null, endEntry: null, how: 'alive', causes: [],
    mother: null, into: null, daughters: [], unitedFrom: [], stays: [{ yard, from: day('2025-05-10'), fromPlace: 1, until: null }], reigns: [], supers: { deep: 0, medium: 0, shallow: 0 }, looks: [],
    miteCounts: counts.map(([on, mites, bees]) => ({ day: day(on), mites, bees: bees ?? 300 })), harvests: [], treatments: [], feedings: [], storesWeights: [], lastDay: day('2025-05-10'), ...more,
  };
}
const span = (entry: number, ingredient: string, from: string, until = from, own: Partial<TreatmentSpan> = {}): TreatmentSpan => ({ entry: entry as EntryId, ingredient, from: day(from), until: day(until), ended: true, colony: null, yard, note: null, ...own });
const judged = (states: readonly ColonyState[], spans: readonly TreatmentSpan[], at = 0) => {
  const acts = treatmentActs(spans, states);
  return judgeTreatment(acts[at]!, states, spansByColony(acts), none);
};

describe('before and after a treatment', () => {
  const formic = span(50, 'formic acid', '2026-08-20', '2026-09-03');
  test('the last count before and the first after the last day, in the same colony', () => {
    const states = [colony(1, [['2026-06-10', 2], ['2026-08-18', 12], ['2026-09-01', 9], ['2026-09-20', 3]]), colony(2, [['2026-08-18', 6]]), colony(3, [['2026-06-01', 5], ['2026-09-20', 1]])];
    const found = judged(states, [formic]);
    expect(found.pairs.map(({ colony: id, pair: { before, after } }) => [id, before, after])).toEqual([[1, 12, 3]]);
    expect(found).toMatchObject({ during: false, result: { fall: expect.closeTo(0.75, 9), basis: 'counts' } });
  });
  test('counted while it was on, where nothing was counted after it: said so', () => {
    const found = judged([colony(1, [['2026-08-18', 12], ['2026-09-01', 9]])], [span(50, 'amitraz', '2026-08-20', '2026-10-10')]);
    expect(found).toMatchObject({ during: true, pairs: [{ during: true, pair: { after: 9 } }] });
  });
  test('another treatment between tells of neither', () => {
    const found = judged([colony(1, [['2026-08-18', 12], ['2026-09-25', 1]])], [formic, span(51, 'oxalic acid', '2026-09-10')]);
    expect(found.pairs).toEqual([]);
    expect(found.result.basis).toBe('none');
  });
  test('untreated colonies counted over the same days correct it; treated ones do not', () => {
    const other = [{ yard: 2 as YardId, from: day('2025-05-10'), fromPlace: 1, until: null }];
    const states = [colony(1, [['2026-08-18', 30], ['2026-09-20', 6]]), colony(2, [['2026-08-18', 30], ['2026-09-20', 6]]), colony(3, [['2026-08-15', 20], ['2026-09-18', 40]], { stays: other }), colony(4, [['2026-08-15', 20], ['2026-09-18', 40]], { stays: other })];
    expect(judged(states, [formic]).result).toMatchObject({ basis: 'corrected', controls: 2, fall: expect.closeTo(0.9, 9) });
    expect(judged(states, [formic, span(60, 'thymol', '2026-08-22', '2026-09-12', { yard: 2 as YardId })]).result).toMatchObject({ basis: 'colonies', controls: 0, fall: expect.closeTo(0.8, 9) });
  });
  test('entries of single colonies over the same days are one act', () => {
    const states = [colony(1, []), colony(2, [])];
    const acts = treatmentActs([1, 2].map((id) => span(50 + id, 'thymol', '2026-08-20', '2026-09-03', { colony: id as ColonyId, yard: null })), states);
    expect(acts).toMatchObject([{ entries: [51, 52], yard: 1, whole: false, colonies: [{ id: 1 }, { id: 2 }] }]);
  });
  test('a colony that came later, or died before, was not treated with the yard', () => {
    const [act] = treatmentActs([formic], [colony(1, []), colony(2, [], { start: day('2026-09-01') }), colony(3, [], { end: day('2026-07-01') })]);
    expect(act?.colonies.map(({ id }) => id)).toEqual([1]);
  });
  test('the fall lies within its range, whatever was counted', () => {
    const count = fc.record({ before: fc.nat(40), beforeOf: fc.integer({ min: 100, max: 400 }), after: fc.nat(40), afterOf: fc.integer({ min: 100, max: 400 }) });
    fc.assert(
      fc.property(fc.array(count, { maxLength: 8 }), fc.array(count, { maxLength: 4 }), (treated, untreated) => {
        const { fall, limits, before } = efficacy(treated, untreated);
        expect(fall === null).toBe(limits === null);
        if (fall !== null && limits !== null) {
          expect(fall <= limits.upper + 1e-9 && fall >= limits.lower - 1e-9 && limits.upper <= 1).toBe(true);
        }
        expect(before === null).toBe(treated.length === 0);
      }),
    );
  });
});

describe('a yard on a day', () => {
  const states = [colony(1, [['2026-08-08', 9]]), colony(2, [['2026-08-08', 12]]), colony(3, [['2026-08-10', 8]]), colony(4, [['2026-08-10', 10]]), colony(5, []), colony(6, [['2026-06-01', 1]])];
  const at = (on: string, spans: readonly TreatmentSpan[] = []) => yardNow(states, spansByColony(treatmentActs(spans, states)), day(on), none);
  test('the counts of one round make the figure; an older one stands beside it', () => {
    const found = at('2026-08-12');
    expect(found).toMatchObject({ speaks: 'now', living: 6, uncounted: [5], round: ['2026-08-08', '2026-08-10'], estimate: { washed: 4, rate: { per100: expect.closeTo(3.25, 9) } }, thresholds: { phase: 'decrease', treat: 3 } });
    expect(found.counted.filter(({ inRound }) => inRound)).toHaveLength(4);
    expect(found.projection?.reached).toBe(true);
  });
  test('too long ago, and a treatment since: both are said, and a new round is asked for', () => {
    expect(at('2026-10-20')).toMatchObject({ speaks: 'old', more: 6, treatedSince: null });
    const treated = at('2026-09-01', [span(50, 'formic acid', '2026-08-20')]);
    expect(treated).toMatchObject({ speaks: 'treated', more: 6, projection: null, treatedSince: { ingredient: 'formic acid' } });
  });
  test('counts since a treatment put the earlier ones out of the figure', () => {
    const later = [...states.slice(0, 3), colony(4, [['2026-08-10', 10], ['2026-08-24', 2]])];
    const found = yardNow(later, spansByColony(treatmentActs([span(50, 'formic acid', '2026-08-20')], later)), day('2026-08-26'), none);
    expect(found).toMatchObject({ speaks: 'now', estimate: { washed: 1, basis: 'one colony' }, verdict: 'open' });
  });
  test('nobody counted: no figure, and the first plan', () => {
    expect(yardNow([colony(1, []), colony(2, [])], new Map(), day('2026-08-12'), none)).toMatchObject({ speaks: 'never', verdict: 'none', round: null, projection: null, more: 2, estimate: { rate: null } });
  });
  test('what is entered ahead says nothing yet', () => expect(at('2026-08-07')).toMatchObject({ estimate: { washed: 1 }, uncounted: [1, 2, 3, 4, 5] }));
  test('brood by looks of the last days', () => {
    const look = (on: string, framesBrood: number | null, eggs: boolean | null = null) => ({ day: day(on), framesBees: 8, framesBrood, framesStores: 4, eggs, queenSeen: null, queenCells: null, temper: null });
    const seen = (looks: ReturnType<typeof look>[]) => broodIn([colony(1, [], { looks })], day('2026-11-25'), none);
    expect([seen([]), seen([look('2026-09-01', 5)]), seen([look('2026-11-14', 0)]), seen([look('2026-11-14', 0, true)]), seen([look('2026-11-14', null)])]).toEqual(['not known', 'not known', 'no', 'yes', 'not known']);
  });
});

describe('which treatment fits', () => {
  const so = (more: Partial<TreatmentSetting> = {}): TreatmentSetting => ({ today: day('2026-08-12'), high: 80, withSupers: 0, brood: 'yes', lastUsed: null, underWay: null, ...more });
  const fitOf = (form: string, more: Partial<TreatmentSetting> = {}, rules = none) => treatmentFits(so(more), rules).find((one) => one.form === form)!;
  test('while one is in the hives, or on the day it was given, none fits', () => {
    for (const [underWay, reason] of [[{ ingredient: 'formic acid', until: day('2099-09-06') }, 'formic acid is in the hives until'], [{ ingredient: 'oxalic acid', until: so({}).today }, 'oxalic acid was given today']] as const) {
      const found = treatmentFits(so({ underWay }), none);
      expect(found.every(({ fits }) => fits === 'does not fit')).toBe(true);
      expect(found.every(({ cells }) => cells.some(({ reason: why }) => why.startsWith(reason)))).toBe(true);
    }
  });
  const cell = (form: string, about: string, more: Partial<TreatmentSetting> = {}, rules = none) => fitOf(form, more, rules).cells.find((one) => one.about === about)!;
  // The figures are labels' as they are remembered (from memory); what is tested is that each is held against what is so.
  test('day temperature', () => {
    expect(cell('formic', 'temperature', { high: 85 }).fits).toBe('fits');
    expect(cell('formic', 'temperature', { high: 86 })).toMatchObject({ fits: 'does not fit', reason: 'needs 50 to 85 °F; 86 °F expected' });
    expect(cell('thymolGel', 'temperature', { high: 58 }).fits).toBe('does not fit');
    expect(cell('oxalicStrips', 'temperature', { high: -10 }).fits).toBe('fits');
    expect(cell('formic', 'temperature', { high: 86 }, new Map([['treat.formic.high', 90]])).fits).toBe('fits');
  });
  test('honey supers', () => {
    expect(cell('amitraz', 'supers', { withSupers: 3 })).toMatchObject({ fits: 'does not fit', reason: '3 colonies have supers on; take them off first' });
    expect(cell('oxalicVapour', 'supers', { withSupers: 1 }).fits).toBe('not known');
    expect(cell('formic', 'supers', { withSupers: 3 }).fits).toBe('fits');
    expect(cell('amitraz', 'supers', { withSupers: null }).fits).toBe('not known');
  });
  test('brood', () => {
    expect([cell('oxalicDribble', 'brood').fits, cell('oxalicDribble', 'brood', { brood: 'no' }).fits, cell('oxalicDribble', 'brood', { brood: 'not known' }).fits]).toEqual(['does not fit', 'fits', 'not known']);
    expect([cell('hop', 'brood').fits, cell('formic', 'brood').fits]).toEqual(['not known', 'fits']);
    expect(cell('hop', 'brood', {}, new Map([['treat.hop.brood', 'some']]))).toMatchObject({ fits: 'not known', reason: 'the house rule says “some”' });
  });
  test('days to the next flow, over the year’s end too', () => {
    expect(nextFlow(day('2026-08-12'), none)).toBe('2026-08-20');
    expect(nextFlow(day('2026-11-25'), none)).toBe('2027-06-10');
    expect(cell('amitraz', 'flow').fits).toBe('does not fit');
    expect(cell('amitraz', 'flow', { today: day('2026-09-01') }).fits).toBe('fits');
    expect(cell('thymolTablets', 'flow', { today: addDays(day('2027-06-10'), -59) }).fits).toBe('does not fit');
    expect(cell('thymolTablets', 'flow', { today: addDays(day('2027-06-10'), -60) }).fits).toBe('fits');
  });
  test('what was used last', () => {
    const lastUsed = { ingredient: 'Amitraz strips', day: day('2025-09-03') };
    expect([cell('amitraz', 'rotation', { lastUsed }).fits, cell('formic', 'rotation', { lastUsed }).fits]).toEqual(['does not fit', 'fits']);
    expect([sameIngredient('hop beta acids', 'hop acids'), sameIngredient('oxalic acid, vapour', 'oxalic acid'), sameIngredient('formic acid', 'oxalic acid')]).toEqual([true, true, false]);
  });
  test('one that does not fit makes the whole not fit; one not known leaves it open', () => {
    expect(fitOf('formic').fits).toBe('fits');
    expect(fitOf('hop').fits).toBe('not known');
    expect(fitOf('oxalicDribble', { withSupers: null }).fits).toBe('does not fit');
    expect(usualHigh(day('2026-11-25'), new Map([['treat.high.11', 40]]))).toBe(40);
  });
});
