import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { largeOperationRows } from '#core/demo/largeOperation.ts';
import { ossarOffers } from '#core/demo/ossarOffers.ts';
import { ossarValley } from '#core/demo/ossarValley.ts';
import { enterOperation } from '#core/desk/buildDemo.ts';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import { Book } from '#core/desk/openBook.ts';
import { writeCsv } from '#core/exchange/writeCsv.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day, type Day } from '#shared/days.ts';

// npm run -s bench -- order
// The order before spring: the demo's book on 12 January, cold and warm, an operation of 500 colonies, and the four
// what-if sliders over a book of eight yards with offers; fails when an order that is possible takes a second or more, warm.
// One out of reach is tried limit by limit and may take longer; the page then shows that it is at work, with Stop.
const folder = mkdtempSync(join(tmpdir(), 'outyard-bench-'));
const january = day('2027-01-12');

function openDesk(today: string): Desk {
  return createDesk({ folder, program: 'Outyard (bench)', now: () => ({ day: day(today), stamp: `${today} 20:00` }), log: () => undefined });
}

async function ask<Name extends OperationName>(desk: Desk, name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  return answer.value as OutputOf<Name>;
}

async function timed<Value>(what: string, work: () => Promise<Value>, more: (value: Value) => string = () => ''): Promise<Value> {
  const start = performance.now();
  const value = await work();
  console.log(`${what.padEnd(52)}${(performance.now() - start).toFixed(0).padStart(8)} ms  ${more(value)}`);
  return value;
}

type Decision = OutputOf<'order.decide'>;
function short({ outcome, answer }: Decision): string {
  return answer === null ? outcome : `${outcome}: buy ${answer.bought}, ${answer.splits} splits, $${Math.round(answer.cash / 100)} cash, short ${(100 * answer.chanceShort).toFixed(1)} %, ${answer.solver.status}, gap ${answer.solver.gap}, ${answer.solver.variables} x ${answer.solver.rows}`;
}

async function whole(desk: Desk, target?: number): Promise<void> {
  const aim = target === undefined ? {} : { target };
  const first = await timed('order.decide, first (loads the solver)', () => ask(desk, 'order.decide', aim), short);
  const at = first.target;
  await timed('what if: target + 10', () => ask(desk, 'order.decide', { target: at + 10 }), short);
  await timed('what if: confidence 95', () => ask(desk, 'order.decide', { ...aim, confidence: 0.95 }), short);
  await timed('what if: bees a quarter dearer', () => ask(desk, 'order.decide', { ...aim, priceFactor: 1.25 }), short);
  await timed('what if: loss 45 %', () => ask(desk, 'order.decide', { ...aim, lossRate: 0.45 }), short);
  await timed('no splits', () => ask(desk, 'order.decide', { ...aim, splits: false }), short);
  await timed('bought queens', () => ask(desk, 'order.decide', { ...aim, splitQueens: 'bought', requeen: 10 }), short);
  await timed('impossible: budget of $5000', () => ask(desk, 'order.decide', { target: at, budget: 500_000 }), (made) => `${made.outcome}, reached ${made.reached}, ${made.limits.map(({ limit }) => limit).join(', ')}`);
  await timed('order.curves', () => ask(desk, 'order.curves', aim), (made) => made.byConfidence.map(({ confidence, total }) => `${confidence}: ${total === null ? '–' : Math.round(total / 100)}`).join('  '));
}

/** Every slider from end to end, as the page asks. Answers the longest in milliseconds of those that are possible. */
async function sliders(desk: Desk): Promise<number> {
  const { target } = await ask(desk, 'order.decide', {});
  const steps = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
  const all: readonly (readonly [string, readonly InputOf<'order.decide'>[]])[] = [
    ['target', steps.map((step) => ({ target: Math.round(target * (0.7 + 0.06 * step)) }))],
    ['confidence', steps.map((step) => ({ confidence: 0.5 + 0.045 * step }))],
    ['price', steps.map((step) => ({ priceFactor: 0.5 + 0.15 * step }))],
    ['survival', steps.map((step) => ({ lossRate: 0.05 + 0.05 * step }))],
  ];
  let longest = 0;
  const beyond: number[] = [];
  for (const [name, questions] of all) {
    const took: number[] = [];
    for (const question of questions) {
      const start = performance.now();
      const { outcome } = await ask(desk, 'order.decide', question);
      (outcome === 'impossible' ? beyond : took).push(performance.now() - start);
    }
    const most = Math.max(...took);
    longest = Math.max(longest, most);
    console.log(`what if, ${name}: ${took.length} answers, middle ${(took.toSorted((a, b) => a - b)[took.length >> 1] ?? 0).toFixed(0)} ms, longest ${most.toFixed(0)} ms`);
  }
  if (beyond.length > 0) console.log(`out of reach: ${beyond.length} answers, longest ${Math.max(...beyond).toFixed(0)} ms`);
  return longest;
}

try {
  const path = join(folder, 'january.outyard');
  const { name, yards, acts } = ossarValley();
  const book = await Book.create(path, new Map([['name', name], ['demoDay', january]]));
  await enterOperation(book.store, { name, yards, acts, lastDay: january, offers: ossarOffers() });
  await book.store.close();
  const demo = openDesk(january);
  console.log('Ossar Valley on 12 January 2027, six yards');
  await timed('open the book', () => ask(demo, 'book.open', { path }));
  await whole(demo);
  const found = await ask(demo, 'order.decide', {});
  for (const line of [...found.sentences, ...(found.answer?.bees ?? []).map((one) => `  ${one.quantity} ${one.words} from ${one.seller} at $${one.each / 100} by ${one.orderBy}. ${one.reason}`)]) console.log(`  ${line}`);
  await demo.close();

  console.log('\n500 colonies, five seasons');
  const large = openDesk('2026-01-12');
  await ask(large, 'book.create', { name: 'Bench' });
  const file = { name: 'large.csv', base64: Buffer.from(writeCsv(largeOperationRows({ seed: 1, colonies: 500, seasons: 5 }))).toString('base64') };
  const looked = await ask(large, 'import.preview', { file });
  await ask(large, 'import.enter', { file, sha256: looked.sha256, position: looked.position });
  await whole(large);
  await large.close();

  console.log('\n400 colonies in eight yards, five seasons, with offers and room');
  const eight = openDesk('2026-01-12');
  await ask(eight, 'book.create', { name: 'Eight' });
  const rows = { name: 'eight.csv', base64: Buffer.from(writeCsv(largeOperationRows({ seed: 2, colonies: 400, seasons: 5 }))).toString('base64') };
  const seen = await ask(eight, 'import.preview', { file: rows });
  await ask(eight, 'import.enter', { file: rows, sha256: seen.sha256, position: seen.position });
  const { yards: kept } = await ask(eight, 'yards.list', {});
  for (const { id, code, name: called, minutes } of kept) await ask(eight, 'yard.keep', { id, code, name: called, room: 56, minutes });
  const yearBefore = (of: Day | null) => (of === null ? null : day(`${Number(of.slice(0, 4)) - 1}${of.slice(4)}`));
  for (const one of ossarOffers()) await ask(eight, 'offers.keep', { key: null, offer: { ...one, orderBy: yearBefore(one.orderBy) ?? one.orderBy, deliveryFrom: yearBefore(one.deliveryFrom), deliveryUntil: yearBefore(one.deliveryUntil), most: one.most === null ? null : one.most * 4 } });
  console.log(`${kept.length} yards`);
  await timed('order.decide, first of this book', () => ask(eight, 'order.decide', {}), short);
  const longest = await sliders(eight);
  await eight.close();
  if (longest >= 1000) {
    console.log('A what-if took a second or more.');
    process.exitCode = 1;
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
