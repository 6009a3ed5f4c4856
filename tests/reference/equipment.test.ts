import { describe, expect, test } from 'vitest';
import { billOfMaterials, neededParts } from '#core/order/equipment.ts';
import { replacedEachYear } from '#core/stock/comb.ts';
import { queenColour } from '#core/lineage/queenColour.ts';

const need = (item: string, frames: 8 | 10, spare: number) => {
  const part = billOfMaterials(new Map(), frames).find((one) => one.item === item);
  return part === undefined ? null : neededParts(part, 25, spare);
};

describe('equipment of 25 colonies', () => {
  // Single parts: parts list of a beekeepers' club, a2b2club.org, the A Bee Cs of woodenware (read). Two deeps of ten
  // frames: a page on hive parts, northeast (read-weak). Three mediums and 10 % spare: from memory. Products: arithmetic.
  test('double deep, three mediums, ten frames', () => {
    expect(['deep box', 'deep frame', 'medium super', 'medium frame', 'bottom board'].map((item) => need(item, 10, 0))).toEqual([50, 500, 75, 750, 25]);
    expect(['deep box', 'medium super', 'bottom board'].map((item) => need(item, 10, 0.1))).toEqual([55, 83, 28]);
  });
  test('eight frames', () => expect(['deep frame', 'medium frame'].map((item) => need(item, 8, 0))).toEqual([400, 600]));
});

test('comb rotation: 500 deep frames in five years, and in three', () => {
  // Three to five years: hbka.org.uk, the merits of comb change (read-weak); the yearly share is arithmetic.
  expect([replacedEachYear(500, 5), replacedEachYear(500, 3)]).toEqual([100, 167]);
});

test('the international marking code', () => {
  // BEE-L, July 2000; launcestonbeekeepers.org.uk, queen bee marking (read).
  expect([2023, 2024, 2025, 2026, 2027].map(queenColour)).toEqual(['red', 'green', 'blue', 'white', 'yellow']);
});
