import type { OrderProblem, Ware } from '#core/order/orderProblem.ts';

function choose(n: number, k: number): number {
  let product = 1;
  for (let i = 1; i <= k; i += 1) product = (product * (n - k + i)) / i;
  return product;
}

/** Every way to order: so many of each ware at its price. */
function* lots(wares: readonly Ware[], most: number): Generator<number[]> {
  const [first, ...rest] = wares;
  if (first === undefined) {
    yield [];
    return;
  }
  for (let quantity = 0; quantity <= (first.late ? 0 : Math.min(most, first.most ?? most)); quantity += 1) {
    if (quantity > 0 && (quantity < first.least || quantity < (first.steps[0]?.from ?? 1))) continue;
    for (const others of lots(rest, most)) yield [quantity, ...others];
  }
}

function paid(one: Ware, quantity: number): number {
  return quantity === 0 ? 0 : quantity * (one.steps.findLast(({ from }) => from <= quantity)?.each ?? Number.NaN);
}

/** Fewest moves so that nobody stands where there is no room; Infinity if there is none. */
function movesNeeded(yards: OrderProblem['yards'], splits: readonly number[], bought: number): number {
  const over = yards.map(({ survivors, room }, y) => (room === null ? 0 : Math.max(0, (splits[y] as number) - (Math.max(room, survivors) - survivors))));
  const free = yards.reduce((sum, { survivors, room }, y) => sum + (room === null ? Infinity : Math.max(0, Math.max(room, survivors) - survivors - (splits[y] as number))), 0);
  const homeless = over.reduce((sum, one) => sum + one, 0);
  // Survivors of a full yard may also make way for bought ones, but then somebody moves into the same free place: nothing is gained.
  return homeless + bought <= free ? homeless : Infinity;
}

function* spreads(yards: readonly number[], total: number): Generator<number[]> {
  const [first, ...rest] = yards;
  if (first === undefined) {
    if (total === 0) yield [];
    return;
  }
  for (let here = 0; here <= Math.min(first, total); here += 1) for (const others of spreads(rest, total - here)) yield [here, ...others];
}

/** The least cost over everything that can be decided, reckoned straight from the springs; null if nothing keeps the limits. */
export function cheapestByTrying(problem: OrderProblem, mostBought: number): number | null {
  const { target, shares, minutes, honeyForgone: honey } = problem;
  const caps = problem.yards.map(({ survivors }) => Math.floor(survivors * problem.splits.perSurvivor + 1e-9));
  const bees = problem.bees.filter(({ kind }) => kind !== 'queen');
  const queens = problem.bees.filter(({ kind }) => kind === 'queen');
  let best: number | null = null;
  for (let splits = 0; splits <= caps.reduce((sum, cap) => sum + cap, 0); splits += 1) {
    for (const lot of lots(bees, mostBought)) {
      const count = (kind: string) => bees.reduce((sum, bee, at) => sum + (bee.kind === kind ? (lot[at] as number) : 0), 0);
      const [packages, nucs, colonies] = [count('package'), count('nuc'), count('colony')];
      const bought = packages + nucs + colonies;
      let [short, missing, left, making] = [0, 0, 0, 0];
      shares.forEach((share, survivors) => {
        // None is made where survivors and bought colonies are enough.
        const made = survivors + bought >= target ? 0 : Math.min(splits, Math.floor(survivors * problem.splits.perSurvivor + 1e-9));
        making += share * made;
        for (let taken = 0; taken <= made; taken += 1) {
          const p = share * choose(made, taken) * problem.splits.take ** taken * (1 - problem.splits.take) ** (made - taken);
          const gap = target - survivors - bought - taken;
          if (gap > 0) short += p;
          missing += p * Math.max(0, gap);
          left += p * Math.max(0, -gap);
        }
      });
      if (short > 1 - problem.confidence + 1e-12) continue;
      let moves = Infinity;
      for (const spread of spreads(caps, splits)) moves = Math.min(moves, movesNeeded(problem.yards, spread, bought));
      if (moves === Infinity) continue;
      const onComb = Math.min(packages, Math.floor(problem.freeCombs / problem.combsPerPackage + 1e-9));
      const time = packages * minutes.package + (packages - onComb) * minutes.foundation + nucs * minutes.nuc + colonies * minutes.colony + moves * minutes.move;
      if (problem.hours !== null && (time + splits * minutes.split + problem.requeen * minutes.requeen) / 60 > problem.hours + 1e-9) continue;
      const wanted = problem.requeen + (problem.splits.queens === 'bought' ? splits : 0);
      let cheapestQueens = Infinity;
      for (const bundle of lots(queens, wanted + 3)) {
        if (bundle.reduce((sum, number) => sum + number, 0) >= wanted) cheapestQueens = Math.min(cheapestQueens, bundle.reduce((sum, number, at) => sum + paid(queens[at] as Ware, number), 0));
      }
      const parts = problem.parts.reduce((sum, part) => {
        const need = part.perColony * Math.max(problem.target, problem.hivesStanding) - part.have;
        let cheapest = need <= 1e-6 || part.packs.length === 0 ? 0 : Infinity;
        if (cheapest > 0) for (const bundle of lots(part.packs, 12)) if (bundle.reduce((got, number, at) => got + number * (part.packs[at]?.packSize ?? 0), 0) >= need - 1e-6) cheapest = Math.min(cheapest, bundle.reduce((cost, number, at) => cost + paid(part.packs[at] as Ware, number), 0));
        return sum + cheapest;
      }, 0);
      const cash = bees.reduce((sum, bee, at) => sum + paid(bee, lot[at] as number), 0) + cheapestQueens + parts;
      if (cash === Infinity || (problem.budget !== null && cash > problem.budget + 1e-6)) continue;
      const total = cash + ((time + making * minutes.split) * problem.hourValue) / 60 + problem.missing * missing + problem.surplus * left
        + onComb * honey.package + (packages - onComb) * honey.foundation + nucs * honey.nuc + colonies * honey.colony + making * honey.split;
      if (best === null || total < best) best = total;
    }
  }
  return best;
}
