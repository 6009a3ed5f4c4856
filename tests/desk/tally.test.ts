import { afterEach, beforeEach, expect, test } from 'vitest';
import { contract } from '#shared/contract/contract.ts';
import type { NeedKey } from '#shared/contract/needs.ts';
import type { NeedsTally, RuleTally } from '#shared/contract/tally.ts';
import type { Cells } from '#shared/entryForms.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { Replay, weekly } from '#core/attention/tally/replay.ts';
import { byOrder } from '#core/journal/foldColony.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { Book } from '#core/desk/openBook.ts';
import { addDays, type Day } from '#shared/days.ts';
import { scratchFolder, trialDesk } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let trial: ReturnType<typeof trialDesk>;
beforeEach(() => {
  scratch = scratchFolder();
  trial = trialDesk(scratch.folder);
});
afterEach(async () => {
  await trial.desk.close();
  scratch.remove();
});

const row = (date: string, entry: NonNullable<Cells['entry']>, yard: string, colony: string, more: Cells = {}): Cells => ({ date, entry, yard, colony, ...more });

/** Asked until it has been gone through, as the page does. */
async function gone(asOf?: Day): Promise<NeedsTally> {
  for (;;) {
    const found = await trial.ask('needs.tally', asOf === undefined ? {} : { asOf });
    expect(contract['needs.tally'].output.parse(found)).toEqual(found);
    if (found.state !== 'running' && found.state !== 'moved') return found;
  }
}
function ruleIn({ rules }: NeedsTally, key: NeedKey): RuleTally {
  const found = rules.find(({ rule }) => rule === key);
  if (found === undefined) throw new Error(`no tally of ${key}`);
  return found;
}
const of = (share: RuleTally['done']) => (share === null ? null : `${share.count} of ${share.of}`);

/** Two yards over one threshold on 5 August 2025, and three colonies in swarm season, small enough to be counted by hand. */
async function twoYards(): Promise<void> {
  await trial.ask('book.create', { name: 'Ossar Valley' });
  await trial.ask('yard.keep', { code: 'QY', name: 'Quarry', room: 30, minutes: 18 });
  await trial.ask('yard.keep', { code: 'NS', name: 'North Slope', room: 30, minutes: 18 });
  const [quarry, slope] = [['A', 'B', 'C', 'D'], ['E', 'F', 'G', 'H']];
  const each = (of: (yard: string, colony: string) => Cells) => [...quarry.map((one) => of('QY', one)), ...slope.map((one) => of('NS', one))];
  await trial.ask('journal.enter', {
    rows: [
      ...each((yard, colony) => row('2025-05-01', 'install', yard, colony, { origin: 'nuc', queen_year: '2025' })),
      // Cells in A, B and C on Monday 2 June: A is looked at again in time, B swarms first, C is looked at three weeks later; D swarms unannounced.
      ...['A', 'B', 'C'].map((colony) => row('2025-06-02', 'inspection', 'QY', colony, { queen_cells: 'swarm' })),
      row('2025-06-08', 'inspection', 'QY', 'A', { queen_cells: 'none' }), row('2025-06-10', 'queen', 'QY', 'B', { what: 'swarmed' }), row('2025-06-25', 'inspection', 'QY', 'C', { queen_cells: 'none' }),
      row('2025-06-15', 'queen', 'QY', 'D', { what: 'swarmed' }),
      // 12 mites in 300 bees are 4 in 100. The quarry is treated within the fortnight; of the slope only E, and late.
      ...each((yard, colony) => row('2025-08-05', 'mites', yard, colony, { mites: '12', bees: '300' })),
      { date: '2025-08-10', entry: 'treatment', yard: 'QY', active_ingredient: 'formic acid' }, row('2025-09-01', 'treatment', 'NS', 'E', { active_ingredient: 'formic acid' }),
      // G dies before winter and A is sold in it: of neither a winter tells.
      row('2025-09-20', 'loss', 'NS', 'G'), row('2025-12-01', 'sale', 'QY', 'A'), row('2026-01-10', 'loss', 'NS', 'F'), row('2026-02-01', 'loss', 'NS', 'E'), row('2026-02-10', 'loss', 'QY', 'B'),
    ],
  });
}

test('a rule: what it asked for, what was answered in time, late or not, and what came of it, counted by hand', async () => {
  await twoYards();
  await trial.ask('rules.set', { key: 'needs.tally.few', value: 3 });
  const tally = await gone();
  expect(tally).toMatchObject({ state: 'done', seasons: ['2025–26'], from: '2025-05-01', until: '2026-03-31', weeks: 48, of: 48 });
  const mites = ruleIn(tally, 'mitesOver');
  expect(mites).toMatchObject({ per: 'colony', asked: 8, late: 1, fell: 0, verdict: 'open', harm: 'lost in the winter that followed', answers: ['treatment'] });
  // Of the quarry B, C and D went through a winter that tells, and B died; of the slope E, F and H, and two died.
  expect([mites.answered, mites.done, mites.left, mites.others, mites.foretold].map(of)).toEqual(['4 of 8', '1 of 3', '2 of 3', '0 of 0', '3 of 3']);
  // Wilson's limits of 2 of 3 are 20.8 and 93.9 %, of 1 of 3 6.1 and 79.2 %: Newcombe 1998, method 3, worked by hand.
  expect(mites.left?.interval?.map((one) => one.toFixed(3))).toEqual(['0.208', '0.939']);
  expect(mites.says).toMatch(/^Not done in time: 2 of 3 \(67\s%, 21–94\) lost in the winter that followed; done in time: 1 of 3 \(33\s%, 6–79\)\. That is no more apart than chance would have it\.$/);
  expect(mites.sources.map(({ key }) => key)).toContain('mites.treat.decrease');

  const cells = ruleIn(tally, 'swarmCellsLook');
  expect(cells).toMatchObject({ asked: 3, late: 1, fell: 0, verdict: 'few' });
  expect([cells.answered, cells.done, cells.left, cells.others, cells.foretold].map(of)).toEqual(['1 of 3', '0 of 1', '1 of 2', null, '1 of 2']);
  expect(cells.says).toBe('Only 2 were not done in time: too few to tell what comes of it.');
});

test('few colonies get words in place of a comparison; a rule that the house has silenced asked for nothing', async () => {
  await twoYards();
  expect(ruleIn(await gone(), 'mitesOver')).toMatchObject({ verdict: 'few', says: 'Only 3 were not done in time: too few to tell what comes of it.' });
  await trial.ask('rules.set', { key: 'needs.grave.mitesOver', value: 0 });
  expect(ruleIn(await gone(), 'mitesOver')).toMatchObject({ asked: 0, verdict: 'never asked', says: 'It asked for nothing in these seasons. Of all 3 that were lost in winter it had asked for 0 before.' });
});

test('a season that is not over is not judged, nor a book without one; as of a day, what came later is not known', async () => {
  await trial.ask('book.create', { name: 'Young' });
  expect(await gone()).toMatchObject({ state: 'nothing', rules: [], seasons: [], from: null });
  await twoYards();
  expect(await gone('2026-03-31' as Day)).toMatchObject({ state: 'nothing' });
  expect(await gone('2026-04-01' as Day)).toMatchObject({ state: 'done', seasons: ['2025–26'] });
});

test('the demo: folded week by week it is what it is folded at once, other questions are answered meanwhile, and a changed book is gone through anew', async () => {
  await trial.ask('book.demo', { which: 'ossar' });
  const first = await trial.ask('needs.tally', {});
  expect(first).toMatchObject({ state: 'running', rules: [] });
  // While it works, the desk answers others and then says how far it is.
  await trial.ask('yards.list', {});
  const tally = await gone();
  expect(tally.weeks).toBe(tally.of);
  for (const { asked, answered, late, fell, done, left } of tally.rules) {
    expect(answered.of + fell).toBe(asked);
    expect(answered.count + late).toBeLessThanOrEqual(answered.of);
    if (done !== null && left !== null) expect(done.of + left.of).toBeLessThanOrEqual(answered.of);
  }
  const { path } = (await trial.ask('book.status', {})).book ?? { path: '' };
  await trial.ask('journal.enter', { rows: [{ date: '2025-06-01', entry: 'note', yard: 'QY', note: 'gone through again' }] });
  expect((await trial.ask('needs.tally', {})).state).toBe('running');

  await trial.ask('book.close', {});
  const book = await Book.open(path);
  try {
    const picture = await book.picture();
    const replay = new Replay({ rules: picture.rules, borders: picture.borders, massUnit: 'lb', yards: picture.yardList }, needRules);
    const entries = (await book.store.entries({ until: '2023-10-01' as Day })).flatMap(({ entry, struck }) => (struck === null ? [entry] : []));
    for (let from = '2021-04-03' as Day; from <= '2023-10-01'; from = addDays(from, weekly)) {
      const until = addDays(from, weekly - 1);
      const evening = replay.evening(until, entries.filter(({ day }) => day >= from && day <= until));
      while (evening.next().done !== true);
    }
    expect(JSON.stringify([...replay.states.values()].toSorted((a, b) => a.id - b.id))).toBe(JSON.stringify(statesAsOf(entries.toSorted(byOrder))));
  } finally {
    await book.store.close();
  }
});
