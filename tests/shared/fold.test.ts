import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fold, foldedWords } from '#shared/fold.ts';

test.each([
  ['Łąka Górna', 'laka gorna'],
  ['Straße', 'strasse'],
  ['STRASSE', 'strasse'],
  ['Bjørnø', 'bjorno'],
  ['Ærø ŒUVRE þórr Đ', 'aero oeuvre thorr d'],
  ['Crème brûlée', 'creme brulee'],
  ['İzmir ısı', 'izmir isi'],
  ['two  spaces\u00a0and\ttabs ', 'two spaces and tabs'],
  ['hive 🐝\ufe0f', 'hive 🐝'],
  ['\u202bכוורת\u202c', 'כוורת'],
  ['e\u0301', 'e'],
  ['ＬＢ', 'lb'],
])('%s is searched as %s', (text, folded) => {
  expect(fold(text)).toBe(folded);
});

test('folding twice is folding once, and case never matters', () => {
  fc.assert(fc.property(fc.string({ unit: 'grapheme' }), (text) => {
    expect(fold(fold(text))).toBe(fold(text));
    expect(fold(text.toLowerCase())).toBe(fold(text));
  }));
});

test('words of nothing are none', () => {
  expect(foldedWords('  \u00a0 ')).toEqual([]);
  expect(foldedWords(' Łąka  2 ')).toEqual(['laka', '2']);
});
