import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { deadOutRow, deadOutSignNames, deadOutSigns, deadOutSteps, foulbroodSigns, readDeadOutNote, writeDeadOutNote, type DeadOutSign } from '#shared/deadOut.ts';
import { causes } from '#shared/entryForms.ts';
import { causeRules } from '#core/losses/deadOut/causeRules.ts';
import { likelyCauses } from '#core/losses/deadOut/likelyCauses.ts';

const anySigns = fc.uniqueArray(fc.constantFrom(...deadOutSignNames));
const found = (...signs: DeadOutSign[]) => likelyCauses(signs).suggestions.map(({ cause, weight }) => `${cause} ${weight}`);

describe('worked dead-outs', () => {
  // Skagit Valley Beekeepers, newsletter of December 2020: cluster on the combs, bees head first in cells, the frames
  // around out of honey, or honey a little way off that the cluster did not reach. Read.
  test('starved in the cluster, honey out of reach', () => {
    expect(found('cluster-large', 'heads-in-cells', 'stores-away')).toEqual(['starvation strong']);
    expect(found('cluster-large', 'heads-in-cells', 'stores-none')).toEqual(['starvation strong']);
  });
  // The same: deformed wings, mites on bees and floor. Read. Droppings as white specks: from memory.
  test('dwindled with mites', () => {
    expect(found('bees-few', 'mite-frass', 'brood-spotty', 'stores-beside')[0]).toBe('mites strong');
    expect(found('wings-deformed')).toEqual(['mites weak']);
  });
  // van der Zee et al. 2013, 2.3: drone layer and laying workers are queen problems that could not be solved. Read.
  test('drone layer and laying workers', () => {
    expect(found('brood-drone', 'bees-few', 'stores-beside')).toEqual(['queen failure strong']);
    expect(found('eggs-many')).toEqual(['queen failure strong']);
    expect(found('queen-missing')).toEqual(['queen failure weak']);
  });
  // Common practice, no source: robbed combs alone do not say whether it was robbed before or after it died.
  test('robbed after death or before', () => {
    expect(found('robbed-combs', 'stores-none')).toEqual(['robbing weak']);
    expect(found('robbed-combs', 'front-fight')).toEqual(['robbing strong']);
  });
  test('plain accidents', () => {
    expect(found('upset')).toEqual(['bear or vandal strong']);
    expect(found('under-water')).toEqual(['flood strong']);
  });
  test('head first in cells beside stores is no proof of starving', () => expect(found('heads-in-cells', 'stores-beside', 'cluster-large')).toEqual(['starvation weak']));
  test('moths and mice speak for nothing, and that is said', () => {
    expect(found('moths-after', 'gnawed')).toEqual([]);
    expect(likelyCauses(['moths-after', 'gnawed']).remarks).toHaveLength(2);
  });
  test('nothing seen, nothing suggested', () => expect(likelyCauses([])).toEqual({ stop: null, suggestions: [], remarks: [] }));
});

test.each(foulbroodSigns)('%s stops all suggestions with the notifiable-disease caution', (sign) => {
  const { stop, suggestions } = likelyCauses(['cluster-large', 'heads-in-cells', 'stores-none', sign]);
  expect(suggestions).toEqual([]);
  expect(stop?.seen).toEqual([sign]);
  expect(stop?.caution).toMatch(/notifiable.*move nothing.*bee inspector before doing anything/);
});

test('every sign is asked once, and every rule can speak and says where it comes from', () => {
  expect(deadOutSteps.flatMap(({ signs }) => signs).toSorted()).toEqual([...deadOutSignNames].toSorted());
  for (const rule of causeRules) {
    expect(rule.footing === 'read', rule.reason).toBe(rule.source !== null);
    expect((rule.all ?? []).length + (rule.any ?? []).length, rule.reason).toBeGreaterThan(0);
    const least = [...(rule.all ?? []), ...(rule.any ?? []).slice(0, 1)];
    const said = likelyCauses(least).suggestions.find(({ cause }) => cause === rule.cause);
    expect(said?.reasons.map(({ sentence }) => sentence), rule.reason).toContain(rule.reason);
  }
});

test('the order of signs does not matter, and unknown is never suggested', () => {
  fc.assert(fc.property(anySigns, (signs) => {
    const judged = likelyCauses(signs);
    const turned = likelyCauses(signs.toReversed());
    expect(turned.suggestions).toEqual(judged.suggestions);
    expect(judged.suggestions.map(({ cause }) => cause)).not.toContain('unknown');
    expect(judged.stop !== null).toBe(signs.some((sign) => foulbroodSigns.includes(sign)));
  }));
});

test('signs and own words survive the note, whatever the words', () => {
  fc.assert(fc.property(anySigns, fc.string().map((words) => words.trim()).filter((words) => !words.includes('Dead-out: ')), (signs, words) => {
    const note = writeDeadOutNote(words, signs);
    const read = readDeadOutNote(note);
    expect([...read.signs].toSorted()).toEqual([...signs].toSorted());
    expect(read.words).toBe(words);
    // A second look puts its signs in the place of the first one's.
    expect(readDeadOutNote(writeDeadOutNote(read.words, ['mould'])).signs).toEqual(['mould']);
  }));
  expect(readDeadOutNote('Dead-out: it was sad.')).toEqual({ words: 'Dead-out: it was sad.', signs: [] });
  expect(Object.values(deadOutSigns).filter((saying) => /[.;:]/.test(saying))).toEqual([]);
});

test('nothing taken up stays unknown; unknown gives way to a known cause', () => {
  expect(deadOutRow({ colony: 'A' }, [], '', ['mould'])).toEqual({ colony: 'A', entry: 'loss', cause: 'unknown', note: 'Dead-out: mould on bees and combs.' });
  expect(deadOutRow({ colony: 'A', note: 'old' }, ['unknown', 'mites', 'starvation'], '', [])).toEqual({ colony: 'A', entry: 'loss', cause: 'starvation;mites' });
  expect(causes).toContain(deadOutRow({ colony: 'A' }, ['unknown'], '', []).cause);
});

test('a note of an earlier book is still read', () => {
  const note = 'Froze hard in January. Dead-out: dead cluster no bigger than a fist; white specks of mite droppings in the brood cells; dead brood that draws out in a thread. Comb kept.';
  expect(readDeadOutNote(note)).toEqual({ words: 'Froze hard in January. Comb kept.', signs: ['cluster-small', 'mite-frass', 'brood-ropy'] });
});
