import { createHash } from 'node:crypto';
import { createDesk } from '#core/desk/desk.ts';
import type { InputOf, OperationName, OutputOf } from '#shared/contract/contract.ts';
import { day } from '#shared/days.ts';

// npm run -s bench -- waits FILE.outyard
// How long a keystroke and the page of a colony wait that are asked a tenth of a second after each long read. Every read
// is asked anew after something was written, so that nothing worked out before serves it. Use a copy: it writes.
const path = process.argv[2];
if (path === undefined) {
  console.error('Usage: npm run -s bench -- waits FILE.outyard');
  process.exit(2);
}
const now = { day: day('2026-04-15'), stamp: '2026-04-15 20:00' };
const desk = createDesk({ folder: '.', program: 'bench', now: () => now, log: () => undefined });

async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const answer = await desk.call(name, input);
  if (!answer.ok) throw new Error(`${name}: ${answer.sentence}`);
  // The desk answers by the contract.
  return answer.value as OutputOf<Name>;
}

const pause = (ms: number) => new Promise<void>((done) => {
  setTimeout(done, ms);
});
const columns = ['seconds', 'CPU', 'keystroke', 'colony', 'blocked', 'answer'];
const say = (what: string, figures: readonly string[]) => console.log(what.padEnd(44) + figures.map((figure) => figure.padStart(12)).join(''));
const seconds = (ms: number) => `${(ms / 1000).toFixed(2)} s`;

const start = performance.now();
await ask('book.open', { path });
say(`opened after ${seconds(performance.now() - start)}`, columns);
const { hours } = await ask('work.hours', {});
const [yard] = (await ask('yards.list', {})).yards;
const { rows } = await ask('colonies.list', { which: 'living' });
const colony = rows[0]?.id;
if (yard === undefined || colony === undefined) throw new Error('this book has no yard or no colony');

const season = 2025;
const reads: readonly (readonly [what: string, act: () => Promise<unknown>])[] = [
  ['Colonies', () => ask('colonies.list', { which: 'living' })],
  ['Needs, how many', () => ask('needs.count', {})],
  ['Needs', () => ask('needs.list', { yard: null })],
  ['one yard', () => ask('yard.page', { id: yard.id })],
  ['one yard and its needs', () => Promise.all([ask('yard.page', { id: yard.id }), ask('needs.list', { yard: yard.id })])],
  ['Queens wanted', () => ask('queens.candidates', {})],
  ['Queens, breeders', () => ask('queens.breeders', {})],
  ['Mites', () => ask('mites.page', {})],
  ['Stores', () => ask('stores.list', {})],
  ['Space', () => ask('space.list', {})],
  ['Stock', () => ask('stock.table', {})],
  ['Honey', () => ask('lots.list', {})],
  ['yields', () => ask('yields.table', { by: 'yard' })],
  ['Hours worked', () => ask('worked.seasons', {})],
  ['Hours worked, the whole page', () => Promise.all([ask('worked.seasons', {}), ask('worked.planned', {}), ask('worked.ahead', {})])],
  ['Losses, all seasons', () => ask('losses.factors', { season, scope: 'all' })],
  ['Losses, printed', () => ask('losses.paper', { season, united: 'lost' })],
  ['Family lines', () => ask('lines.picture', { view: 'first' })],
  ['Work, its tasks', () => ask('work.tasks', {})],
  ['Work, a plan', () => ask('work.replan', {}).then(() => ask('work.stop', {}))],
  ['Find', () => ask('find.all', { text: 'queen' })],
];

for (const [what, act] of reads) {
  if (process.argv[3] !== undefined && !what.startsWith(process.argv[3])) continue;
  await ask('work.setHours', hours);
  await pause(20);
  const before = process.cpuUsage();
  const from = performance.now();
  let [last, blocked] = [from, 0];
  const ticks = setInterval(() => {
    const at = performance.now();
    [blocked, last] = [Math.max(blocked, at - last), at];
  }, 5);
  const long = act().then((value) => {
    const { user, system } = process.cpuUsage(before);
    return { value, took: performance.now() - from, used: (user + system) / 1000 };
  });
  // By the clock: a process that stands still hears of no timer.
  const asked = from + 100;
  const waited = async (short: Promise<unknown>) => {
    await short;
    return performance.now() - asked;
  };
  await pause(100);
  const [keystroke, page, { value, took, used }] = await Promise.all([waited(ask('draft.keep', { key: 'bench', body: what })), waited(ask('colony.story', { id: colony })), long]);
  clearInterval(ticks);
  const hash = createHash('sha256').update(JSON.stringify(value)).digest('hex').slice(0, 10);
  say(what, [seconds(took), seconds(used), ...[keystroke, page, blocked].map((ms) => `${ms.toFixed(0)} ms`), hash]);
}
await desk.close();
