import { betaDraw } from '#core/order/chance.ts';
import { backtest, mixtureForecaster, momentForecaster, type BacktestedWinter } from '#core/order/backtest.ts';
import { SeededRandom } from '#core/demo/seededRandom.ts';
import { ossarValley } from '#core/demo/ossarValley.ts';
import { enterOperation } from '#core/desk/buildDemo.ts';
import { Book } from '#core/desk/openBook.ts';
import { pastWindows, planWindow } from '#core/order/planWindow.ts';
import { numberRule, textRule } from '#core/rules/houseRules.ts';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { day } from '#shared/days.ts';

// npm run -s bench -- backtest
// Forecast every past winter from the seasons before it only: how often the 80 % range held, and what the order made
// from it would have cost beyond perfect hindsight. On the demo, then on invented operations whose truth is known.
const operations = 200;
const seed = 20_260_401;

/** A range of whole numbers holds more than it promises; the share counts the fraction of an edge that lies inside. */
function coverage(winters: readonly BacktestedWinter[]): { share: number; closed: number } {
  const mean = (of: (winter: BacktestedWinter) => number) => (100 * winters.reduce((sum, winter) => sum + of(winter), 0)) / winters.length;
  return { share: mean(({ share }) => share), closed: mean(({ inside }) => Number(inside)) };
}

function say(what: string, winters: readonly BacktestedWinter[]): void {
  const { share, closed } = coverage(winters);
  const width = winters.reduce((sum, { low, high }) => sum + high - low, 0) / winters.length;
  console.log(`${what.padEnd(46)}${String(winters.length).padStart(6)} winters   ${share.toFixed(1).padStart(5)} %   ${closed.toFixed(1).padStart(5)} %   ${width.toFixed(1).padStart(5)} wide`);
}

const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
try {
  const operation = ossarValley();
  const book = await Book.create(join(folder, 'demo.outyard'), new Map([['name', operation.name], ['demoDay', operation.lastDay]]));
  await enterOperation(book.store, operation);
  const { states, yardList, borders, rules } = await book.picture();
  await book.store.close();
  const expected = { rate: numberRule(rules, 'order.firstLossRate'), weight: numberRule(rules, 'order.priorWeight') };
  const confidence = numberRule(rules, 'order.confidence');
  const costs = { price: 16_950, missing: numberRule(rules, 'decision.missing') * 100, surplus: numberRule(rules, 'decision.surplus') * 100 };
  const autumn = day('2026-09-30');
  const winters = pastWindows(states, yardList, planWindow(autumn, borders, textRule(rules, 'order.nextSpringFrom')), 2021, autumn, autumn, 'lost', borders);
  const demo = backtest(winters, mixtureForecaster(expected), confidence, costs);
  console.log('The demo, each winter forecast from the seasons before it:');
  demo.forEach((one, at) => {
    const winter = winters[at];
    if (winter === undefined) return;
    console.log(`  ${winter.season}  ${winter.atRisk} wintered, ${one.survivors} lived; forecast ${one.low} to ${one.high}${one.inside ? '' : '  (outside)'}; bought ${one.bought}, hindsight ${one.hindsight}, regret $${Math.round(one.regret / 100)}`);
  });
  console.log(`  inside the range: ${demo.filter(({ inside }) => inside).length} of ${demo.length}; regret in all: $${Math.round(demo.reduce((sum, { regret }) => sum + regret, 0) / 100)}`);

  // The truth is drawn from another family than the forecast expects: even mean rates, and a spread of its own.
  const chance = new SeededRandom(seed);
  const made = Array.from({ length: operations }, () => {
    const mean = chance.between(0.12, 0.45);
    const concentration = Math.exp(chance.between(Math.log(6), Math.log(60)));
    return Array.from({ length: chance.whole(4, 10) }, () => {
      const atRisk = chance.whole(15, 90);
      return { atRisk, lost: chance.binomial(atRisk, betaDraw(mean * concentration, (1 - mean) * concentration, chance)) };
    });
  });
  const mixed = made.flatMap((past) => backtest(past, mixtureForecaster(expected), confidence, costs));
  const plugged = made.flatMap((past) => backtest(past, momentForecaster(expected.rate), confidence, costs));
  console.log(`\n${operations} invented operations, 4 to 10 winters each (seed ${seed}):`);
  console.log(`${''.padEnd(61)} share inside   closed range`);
  say('one fitted beta plugged in', plugged);
  say('the forecast of the order', mixed);
  for (const earlier of [0, 1, 2, 3, 4]) say(`  with ${earlier} ${earlier === 1 ? 'winter' : 'winters'} before it`, mixed.filter((one) => one.earlier === earlier));
  say('  with 5 or more', mixed.filter((one) => one.earlier >= 5));
  const regret = (winters: readonly BacktestedWinter[]) => Math.round(winters.reduce((sum, one) => sum + one.regret, 0) / winters.length / 100);
  console.log(`mean regret a winter: $${regret(mixed)}, plugged in $${regret(plugged)}`);
  console.log('Counted: the share of an outcome’s own step that lies in the middle 80 % (a closed range of whole numbers holds more).');
  console.log(`coverage of the 80 % interval: ${coverage(mixed).share.toFixed(1)} %`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
