import { expect, test } from 'vitest';
import { day } from '#shared/days.ts';
import type { SpaceColony } from '#shared/contract/space.ts';
import { hold } from '#shared/figures.ts';
import { beesText, loadText, mostUrgentFirst, nextLookText, riskText, roomText, seenText, shareText, wantsSomething } from '#renderer/screens/space/spaceText.ts';

type Need = SpaceColony['need'];
type Risk = NonNullable<SpaceColony['risk']>;

function colony(label: string, need: Partial<Need>, risk: Partial<Risk> | null = {}): SpaceColony {
  return {
    id: 1 as SpaceColony['id'], label, split: null,
    need: { say: 'enough', add: null, bees: null, room: null, look: null, reason: '', rests: null, ...need },
    risk: risk === null ? null : { level: 'low', points: 1, reasons: [], unknown: [], nextLook: day('2026-05-17'), lastLook: null, ...risk },
  };
}

test('high risk and no room come first, then some risk, then what nobody has looked at; of the same, as they stand', () => {
  const rows = [
    colony('calm', {}), colony('unseen', { say: 'not told' }, { unknown: ['No look has told how strong it is.'] }), colony('some', {}, { level: 'some', points: 3 }), colony('old', { say: 'look first' }), colony('box', { say: 'add' }),
    colony('high', {}, { level: 'high', points: 4 }), colony('cells', {}, { level: 'high', points: 9 }), colony('old too', { say: 'look first' }), colony('soon', { say: 'watch' }),
  ];
  expect(mostUrgentFirst(rows).map(({ label }) => label)).toEqual(['cells', 'high', 'box', 'some', 'soon', 'old', 'old too', 'unseen', 'calm']);
  expect(rows.filter(wantsSomething).map(({ label }) => label)).toEqual(['unseen', 'some', 'old', 'box', 'high', 'cells', 'old too', 'soon']);
});

test('what is low only because nobody has looked is not called low; outside swarm season nothing is said', () => {
  expect([riskText(colony('A', {})), riskText(colony('A', {}, { unknown: ['x'] })), riskText(colony('A', {}, { level: 'some', points: 3, unknown: ['x'] })), riskText(colony('A', {}, null))]).toEqual([`low, 1${hold}point`, 'not all told', `some, 3${hold}points`, '–']);
});

test('figures with what they are of; dashes, never noughts, for what is not known', () => {
  const known = colony('A', { bees: 14, room: 20, look: day('2026-05-10'), say: 'add', add: { box: 'medium', count: 2 } });
  expect([beesText(known), shareText(known), roomText(known)]).toEqual(['14 of 20', `70${hold}%`, 'add 2 mediums']);
  const old = colony('B', { bees: 11, look: day('2025-09-27'), say: 'look first' });
  expect([beesText(old), shareText(old), seenText(old, day('2026-05-15')), seenText(known, day('2026-05-15'))]).toEqual(['11', '–', `27${hold}Sep${hold}25`, `10${hold}May`]);
  expect([beesText(colony('C', {})), seenText(colony('C', {}), day('2026-05-15'))]).toEqual(['–', '–']);
  expect([nextLookText(known, day('2026-05-17')), nextLookText(known, day('2026-05-18')), nextLookText(colony('D', {}, null), day('2026-05-18'))]).toEqual([`17${hold}May`, `17${hold}May, past`, '–']);
});

test('what is loaded is what does not lie in the yard yet', () => {
  const medium = { box: 'medium', frames: 10, wanted: 3, inYard: 1, fromShed: 2, lack: 0 } as const;
  expect(loadText([medium, { ...medium, box: 'deep', frames: 8, wanted: 1 }])).toBe(`2${hold}medium supers of 10 frames`);
});
