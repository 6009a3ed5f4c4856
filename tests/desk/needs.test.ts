import { afterEach, beforeEach, expect, test } from 'vitest';
import { contract, type InputOf, type OperationName, type OutputOf } from '#shared/contract/contract.ts';
import type { NeedKey, NeedLine } from '#shared/contract/needs.ts';
import { sourceWords } from '#shared/contract/order.ts';
import { day, type Day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import type { Answer } from '#shared/faults.ts';
import { createDesk, type Desk } from '#core/desk/desk.ts';
import { needRules } from '#core/attention/needs/needRules.ts';
import { houseRuleDefinitions } from '#core/rules/houseRules.ts';
import { dueWords } from '#renderer/parts/dueWords.ts';
import { scratchFolder } from '#tests/book/trialFile.ts';

let scratch: ReturnType<typeof scratchFolder>;
let desk: Desk;
let today: Day;
beforeEach(async () => {
  scratch = scratchFolder();
  today = day('2025-11-25');
  desk = createDesk({ folder: scratch.folder, program: 'Outyard under test', now: () => ({ day: today, stamp: `${today} 21:00` }), log: () => undefined });
  await ask('book.create', { name: 'Ossar Valley' });
  for (const [code, name] of [['QY', 'Quarry'], ['SB', 'Sand Bar']] as const) await ask('yard.keep', { code, name, room: null, minutes: null });
});
afterEach(async () => {
  await desk.close();
  scratch.remove();
});

const answer = async <Name extends OperationName>(name: Name, input: InputOf<Name>) => (await desk.call(name, input)) as Answer<OutputOf<Name>>;
/** The answer, held against the shape that the contract promises. */
async function ask<Name extends OperationName>(name: Name, input: InputOf<Name>): Promise<OutputOf<Name>> {
  const found = await answer(name, input);
  if (!found.ok) throw new Error(`${name}: ${found.sentence}`);
  expect(contract[name].output.parse(found.value)).toEqual(found.value);
  return found.value;
}

const row = (date: string, entry: NonNullable<Cells['entry']>, more: Cells): Cells => ({ date, entry, ...more });
const hived = (colony: string, yard: string): Cells => row('2024-05-01', 'install', { yard, colony, origin: 'nuc', queen_year: '2024' });
const weighed = (colony: string, date: string, pounds: number): Cells => row(date, 'stores', { colony, weight: String(pounds), unit: 'lb' });
/** Light hives in two yards, one dead-out, everything else seen to. */
const light = () => ask('journal.enter', {
  rows: [
    ...['A', 'B', 'D'].map((colony) => hived(colony, 'QY')), hived('L', 'SB'), ...['A', 'B', 'L'].map((colony) => weighed(colony, '2025-10-10', 20)), row('2025-11-20', 'loss', { colony: 'D' }),
    ...['QY', 'SB'].flatMap((yard) => ['entrances reduced', 'hives wrapped'].map((task) => row('2025-11-01', 'work', { yard, task }))),
  ],
});
const list = (more: { yard?: number | null; asOf?: string } = {}) => ask('needs.list', { yard: null, ...more } as InputOf<'needs.list'>);
const lineOf = async (rule: NeedKey, more: Parameters<typeof list>[0] = {}): Promise<NeedLine | undefined> => (await list(more)).lines.find((line) => line.rule === rule);
const labels = (line: NeedLine | undefined) => line?.members.map(({ colony, yard }) => colony?.label ?? yard?.code);
const putOff = (line: NeedLine, more: Partial<InputOf<'needs.putOff'>> = {}) => ({ line: line.key, yard: null, colony: null, until: null, reason: '', ...more }) as InputOf<'needs.putOff'>;

test('the list of all yards, of one, and how many lines are due; a yard that is not there is a fault', async () => {
  await light();
  const all = await list();
  expect(labels(all.lines.find(({ rule }) => rule === 'storesWinter'))).toEqual(['A', 'B', 'L']);
  expect(all.lines.map(({ status }) => status === 'coming').toSorted((a, b) => Number(a) - Number(b))).toEqual(all.lines.map(({ status }) => status === 'coming'));
  expect(await ask('needs.count', {})).toEqual({ due: all.lines.filter(({ status }) => status !== 'coming').length });
  expect(labels(await lineOf('storesWinter', { yard: 2 }))).toEqual(['L']);
  expect(await lineOf('deadOut', { yard: 2 })).toBeUndefined();
  expect(all.yards.map(({ code, lines }) => [code, lines])).toEqual([['QY', all.lines.filter(({ yards }) => yards.some(({ code }) => code === 'QY')).length], ['SB', all.lines.filter(({ yards }) => yards.some(({ code }) => code === 'SB')).length]]);
  expect(await answer('needs.list', { yard: 9 } as InputOf<'needs.list'>)).toMatchObject({ ok: false, code: 'unknown' });
});

test('what may be done, and need not be, is in the list and in no count', async () => {
  await ask('journal.enter', { rows: [hived('A', 'QY'), row('2025-05-20', 'inspection', { colony: 'A', frames_bees: '8', frames_brood: '4', eggs: 'yes' })] });
  today = day('2025-05-21');
  const now = (await list()).lines.filter(({ status }) => status !== 'coming');
  expect(now.filter(({ optional }) => optional).map(({ rule }) => rule)).toEqual(['splitBy']);
  expect(await ask('needs.count', {})).toEqual({ due: now.length - 1 });
});

test('put off until a day it is gone with its reason, and back on that day', async () => {
  await light();
  const line = (await lineOf('storesWinter'))!;
  const { keys } = await ask('needs.putOff', putOff(line, { until: day('2025-11-28'), reason: 'waiting for a mild day' }));
  expect(keys).toHaveLength(3);
  expect(await lineOf('storesWinter')).toBeUndefined();
  expect((await list()).putOff).toEqual([{ keys, rule: 'storesWinter', act: line.act, about: 'A, Quarry; B, Quarry; L, Sand Bar', until: '2025-11-28', reason: 'waiting for a mild day', on: '2025-11-25', asks: true }]);
  today = day('2025-11-27');
  expect(await lineOf('storesWinter')).toBeUndefined();
  today = day('2025-11-28');
  expect(labels(await lineOf('storesWinter'))).toEqual(['A', 'B', 'L']);
  expect((await list()).putOff).toEqual([]);
});

test('one colony, or one yard, of a line; and asked for again', async () => {
  await light();
  const line = (await lineOf('storesWinter'))!;
  const b = line.members[1]!.colony!.id;
  const { keys } = await ask('needs.putOff', putOff(line, { colony: b, until: day('2025-12-05') }));
  expect(labels(await lineOf('storesWinter'))).toEqual(['A', 'L']);
  await ask('needs.putOff', putOff(line, { yard: line.members[2]!.yard!.id, until: day('2025-12-06') }));
  expect(labels(await lineOf('storesWinter'))).toEqual(['A']);
  expect((await list({ yard: 2 })).putOff.map(({ about }) => about)).toEqual(['L, Sand Bar']);
  await ask('needs.askAgain', { keys });
  expect(labels(await lineOf('storesWinter'))).toEqual(['A', 'B']);
});

test('dismissed for good only with a reason, which is kept; a new record asks again', async () => {
  await light();
  const line = (await lineOf('storesWinter'))!;
  expect(await answer('needs.putOff', putOff(line))).toMatchObject({ ok: false, code: 'bad-input', field: 'reason' });
  expect(await answer('needs.putOff', putOff(line, { reason: '   ' }))).toMatchObject({ ok: false, code: 'bad-input', field: 'reason' });
  expect((await list()).putOff).toEqual([]);
  await ask('needs.putOff', putOff(line, { colony: line.members[0]!.colony!.id, reason: 'hefted: heavy enough' }));
  today = day('2026-02-01');
  expect(labels(await lineOf('storesWinter'))).toEqual(['B', 'L']);
  expect((await list()).putOff).toMatchObject([{ rule: 'storesWinter', about: 'A, Quarry', until: null, reason: 'hefted: heavy enough', on: '2025-11-25', asks: true }]);
  // Weighed once more and light again, it is another time of asking.
  await ask('journal.enter', { rows: [weighed('A', '2026-02-01', 12)] });
  expect(labels(await lineOf('storesWinter'))).toEqual(['A', 'B', 'L']);
  expect((await list()).putOff).toMatchObject([{ reason: 'hefted: heavy enough', asks: false }]);
});

test('a day that is not to come, and a line that nothing asks for any more, are refused, and nothing is put off', async () => {
  await light();
  const line = (await lineOf('storesWinter'))!;
  expect(await answer('needs.putOff', putOff(line, { until: today }))).toMatchObject({ ok: false, code: 'bad-input', field: 'until', sentence: '25 November 2025 is not after today.' });
  await ask('journal.enter', { rows: ['A', 'B', 'L'].map((colony) => weighed(colony, '2025-11-25', 80)) });
  expect(await answer('needs.putOff', putOff(line, { until: day('2025-12-01') }))).toMatchObject({ ok: false, code: 'moved-on', sentence: 'Nothing in the record asks for that any more.' });
  expect((await list()).putOff).toEqual([]);
});

test('nothing is put off for longer than until the next season begins; shortly before that, for three months', async () => {
  await light();
  const line = (await lineOf('storesWinter'))!;
  expect((await list()).putOffMost).toBe('2026-04-01');
  for (const until of ['2099-12-31', '2026-04-02']) {
    expect(await answer('needs.putOff', putOff(line, { until: day(until) }))).toMatchObject({ ok: false, code: 'bad-input', field: 'until', sentence: expect.stringMatching(/is too far off: a line is put off until 1 April 2026 at most\.$/), mend: expect.stringContaining('dismiss it for good') });
  }
  expect((await list()).putOff).toEqual([]);
  await ask('needs.putOff', putOff(line, { until: day('2026-04-01') }));
  expect((await list()).putOff).toMatchObject([{ until: '2026-04-01' }]);
  today = day('2026-03-20');
  expect((await list()).putOffMost).toBe('2026-06-18');
});

test('a dead-out that was put off stands among what was put off in its yard', async () => {
  await light();
  await ask('needs.putOff', putOff((await lineOf('deadOut'))!, { until: day('2025-11-29'), reason: 'snowed in' }));
  expect((await list({ yard: 1 })).putOff).toMatchObject([{ rule: 'deadOut', about: 'D, Quarry', reason: 'snowed in', asks: true }]);
  expect((await list({ yard: 2 })).putOff).toEqual([]);
});

test('as of an earlier day the list is that day’s, and what was put off later was not put off then', async () => {
  await light();
  await ask('needs.putOff', putOff((await lineOf('deadOut'))!, { reason: 'burnt' }));
  expect(await lineOf('deadOut')).toBeUndefined();
  expect(labels(await lineOf('deadOut', { asOf: '2025-11-22' }))).toEqual(['D']);
  expect((await list({ asOf: '2025-11-22' })).putOff).toEqual([]);
  expect(await lineOf('deadOut', { asOf: '2025-11-19' })).toBeUndefined();
  expect((await list({ asOf: '2025-11-19' })).today).toBe('2025-11-19');
});

test('each line carries its numbers with their source and the word for it; what is from memory says so', async () => {
  await light();
  today = day('2025-09-12');
  await ask('journal.enter', { rows: ['A', 'L'].map((colony) => weighed(colony, '2025-09-10', 56)) });
  const line = (await lineOf('storesAutumn', { asOf: '2025-09-12' }))!;
  const rule = needRules.find(({ key }) => key === 'storesAutumn')!;
  expect(line.sources.map(({ key }) => key)).toEqual([...rule.numbers, 'needs.minutes.storesAutumn']);
  const heavy = line.sources.find(({ key }) => key === 'stores.gain.heavy')!;
  expect(heavy).toMatchObject({ value: '7 lb', source: 'Extension rule of thumb: about 7 lb, 6.5 to 8; 9.0 lb if nothing were lost (arithmetic)', confidence: 'from memory' });
  // As the margin puts it behind the source.
  expect(dueWords.confidence[heavy.confidence]).toBe(' (from memory)');
  expect(sourceWords.filter((word) => dueWords.confidence[word] === '')).toEqual(['read']);
  for (const { key, confidence, source } of line.sources) expect(houseRuleDefinitions.find((one) => one.key === key), key).toMatchObject({ confidence, source });
  // A number of the person's own is not the source's.
  await ask('rules.set', { key: 'stores.gain.heavy', value: 8 });
  expect((await lineOf('storesAutumn', { asOf: '2025-09-12' }))!.sources.find(({ key }) => key === 'stores.gain.heavy')).toMatchObject({ value: '8 lb', source: `Your own number; by default 7 lb: ${heavy.source}` });
});

test('the graver and later first, by the house’s numbers; a rule of no gravity never asks', async () => {
  await light();
  const order = async () => (await list()).lines.filter(({ rule }) => rule === 'storesWinter' || rule === 'deadOut').map(({ rule, points }) => [rule, Math.round(100 * points) / 100]);
  // 20 lb on 15 October are 15 after two and a half weeks, on 1 or 2 November, and a week later overdue for 16 days; the dead-out for 2.
  expect((await lineOf('deadOut'))?.rank).toBe('How grave: 4 of 5 by the house rule; its last day was 2 days ago, which adds 0.1: 4.1.');
  expect(await order()).toEqual([['storesWinter', 6], ['deadOut', 4.14]]);
  await ask('rules.set', { key: 'needs.rank.step', value: 1 });
  await ask('rules.set', { key: 'needs.grave.deadOut', value: 1 });
  expect((await lineOf('deadOut', { asOf: '2025-11-21' }))?.rank).toBe('How grave: 1 of 5 by the house rule; its last day is in 2 days, which takes off 1.0: 0.0.');
  for (const [key, value] of [['needs.rank.step', 14], ['needs.grave.deadOut', 4]] as const) await ask('rules.set', { key, value });
  await ask('rules.set', { key: 'needs.rank.most', value: 0 });
  expect(await order()).toEqual([['storesWinter', 5], ['deadOut', 4]]);
  await ask('rules.set', { key: 'needs.grave.storesWinter', value: 3 });
  expect(await order()).toEqual([['deadOut', 4], ['storesWinter', 3]]);
  await ask('rules.set', { key: 'needs.grave.storesWinter', value: 0 });
  expect(await order()).toEqual([['deadOut', 4]]);
});

test('a line adds up its minutes and what is taken along; what a yard needs whole says so', async () => {
  await light();
  const line = (await lineOf('storesWinter'))!;
  expect(line).toMatchObject({ count: 3, overdue: 3, minutes: 15, bring: [{ item: 'fondant', count: 3, unit: 'block' }] });
  expect(line.yards.map(({ code, colonies, whole }) => [code, colonies, whole])).toEqual([['QY', 2, true], ['SB', 1, false]]);
  await ask('rules.set', { key: 'needs.minutes.storesWinter', value: 8 });
  expect(await lineOf('storesWinter')).toMatchObject({ minutes: 24 });
});

test('every number of every rule is a house rule that there is, with a source word', () => {
  const byKey = new Map(houseRuleDefinitions.map((rule) => [rule.key, rule]));
  for (const { key, numbers } of needRules) {
    for (const one of [...numbers, `needs.grave.${key}`, `needs.minutes.${key}`]) {
      expect(sourceWords, `${key}: ${one}`).toContain(byKey.get(one)?.confidence);
      expect(byKey.get(one)?.source.trim(), `${key}: ${one}`).not.toBe('');
    }
    expect(new Set(numbers).size, key).toBe(numbers.length);
  }
});
