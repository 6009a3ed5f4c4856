import { expect, test } from 'vitest';
import type { ColonyId, YardId } from '#shared/brands.ts';
import { needKeys, type Need, type NeedKey } from '#shared/contract/needs.ts';
import { day } from '#shared/days.ts';
import { loadLines } from '#shared/loadWords.ts';
import { needTasks } from '#core/work/needTasks.ts';

const pace = { factor: 1, rounds: 0, measured: null };
const yard = { id: 1 as YardId, code: 'QY', name: 'Quarry' };
const need = (rule: NeedKey, colony: number, more: Partial<Need> = {}): Need => ({
  key: `${rule}|c${colony}|x`, rule, colony: { id: colony as ColonyId, label: `QY-${colony}` }, yard, act: `act of ${rule}`, because: 'Why.', detail: null, records: [], earliest: day('2026-05-01'), latest: day('2026-05-08'), status: 'due',
  minutes: 5, people: 1, weather: 'open', bring: [], ...more,
});
const facts = { today: day('2026-05-01'), states: [], rules: new Map(), fitting: (_: YardId, on: string) => (on === '2026-05-08' ? ['formic acid', 'thymol'] : []) };
const load = (...needs: Need[]) => needTasks(needs, pace, facts).map(({ bring }) => loadLines(bring));

test('what is put on, treated, counted, taken off or closed up has what it takes on the truck', () => {
  const both = (rule: NeedKey) => load(need(rule, 1), need(rule, 2)).flat();
  expect(both('mitesOver')).toEqual(['mite treatment for 2\u00a0colonies: by the record fits formic acid or thymol']);
  expect(both('winterBees')).toEqual(['mite treatment for 2\u00a0colonies: by the record fits formic acid or thymol']);
  expect(both('miteRecount')).toEqual(['mite wash kit']);
  expect(both('treatmentOff')).toEqual(['bag with a seal for what is taken off']);
  expect(both('deadOut')).toEqual(['2 screens or boards for closing an entrance']);
  expect(both('harvest')).toEqual(['bee escape or blower']);
  const syrup = [{ item: 'heavy syrup (2:1)', count: 2, unit: 'gal', each: true }];
  expect(load(need('storesAutumn', 1, { bring: syrup }), need('storesAutumn', 2, { bring: syrup })).flat()).toEqual(['4 gal of heavy syrup (2:1)']);
  // A last day that is past says nothing of what fits today.
  expect(load(need('mitesOver', 1, { earliest: day('2026-04-01'), latest: day('2026-04-08') })).flat()).toEqual(['mite treatment for 1\u00a0colony: its ingredient chosen on the page of mites']);
});

test('no load names a dose, whatever is needed', () => {
  for (const line of needKeys.flatMap((rule) => load(need(rule, 1)).flat())) expect(line).not.toMatch(/\d\s?(ml|g|oz|strips?|pads?|%)\b/);
});
