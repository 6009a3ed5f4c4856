import { expect, test } from 'vitest';
import { highsSolver } from '#core/desk/highsSolver.ts';
import { nassPrices } from '#core/order/wares.ts';
import { solveOrder } from '#core/order/solveOrder.ts';
import { problem, ware } from '../order/problems.ts';

const solver = await highsSolver();

/** Twelve colonies to replace and nothing that lives: what the cheapest order of those wares pays. */
function replacing(...wares: readonly (readonly ['package' | 'nuc', number])[]) {
  const bees = wares.map(([kind, dollars]) => ware(kind, dollars * 100));
  return (solveOrder(problem({ target: 12, confidence: 0.5, shares: [1], yards: [{ survivors: 0, room: null }], hivesStanding: 0, bees }), solver)?.cash ?? Number.NaN) / 100;
}

// Average prices paid, USDA NASS, Honey. 2020: ncocall.com/story-national.php?Id=278&yr=2021 (read). 2021: the release of
// 18 March 2022, in a reprint, crazybee.me/index-1226.html (read). The sums are arithmetic.
test.each([
  [2020, 84, 105, 1008, 1260],
  [2021, 91, 125, 1092, 1500],
])('twelve colonies at the averages of %i: packages at $%i, nuclei at $%i', (_, pack, nuc, packages, nuclei) => {
  expect([replacing(['package', pack]), replacing(['nuc', nuc])]).toEqual([packages, nuclei]);
  expect(replacing(['package', pack], ['nuc', nuc])).toBe(packages);
});

test('the packages of 2021 cost $408 less, and the averages of 2021 stand in where no offer is kept', () => {
  expect(replacing(['nuc', 125]) - replacing(['package', 91])).toBe(408);
  expect(nassPrices).toEqual({ queen: 2000, package: 9100, nuc: 12_500 });
});
