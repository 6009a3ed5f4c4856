import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, day } from '#shared/days.ts';
import type { Cells } from '#shared/entryForms.ts';
import { ancestorsOf } from '#core/lineage/ancestors.ts';
import { queenOn } from '#core/lineage/colonyWords.ts';
import { statesAsOf } from '#core/lineage/statesAsOf.ts';
import { hived, lost, recorded } from '../losses/recorded.ts';

const rows: Cells[] = [
  hived('2024-05-01', 'A', 'QY', { queen_year: '2024' }),
  { date: '2025-05-20', entry: 'split', colony: 'A', new_colony: 'B', to_yard: 'LB', queen: 'moves' },
  { date: '2025-06-20', entry: 'split', colony: 'B', new_colony: 'C', queen: 'stays' },
  lost('2025-12-01', 'C'),
];

test('ancestors, and the queen that moved with the split', () => {
  const { states } = recorded(rows);
  const [, b, c] = states;
  if (b === undefined || c === undefined) throw new Error('three colonies are recorded');
  expect(ancestorsOf(c, new Map(states.map((state) => [state.id, state]))).map((state) => state.label)).toEqual(['B', 'A']);
  expect(queenOn(b, day('2025-07-01'))).toMatchObject({ year: 2024, colour: 'green' });
});

test('a requeening of the mother entered late goes to the daughter with the queen', () => {
  const late: Cells = { date: '2025-04-20', entry: 'requeen', colony: 'A', queen_year: '2025' };
  const b = recorded([...rows, late]).states.find((state) => state.label === 'B');
  expect(b === undefined ? null : queenOn(b, day('2025-07-01'))).toMatchObject({ year: 2025, colour: 'blue' });
});

test('the operation on any day is what a journal that ends that day leaves', () => {
  const { entries } = recorded(rows);
  fc.assert(fc.property(fc.nat(800), (after) => {
    const asOf = addDays(day('2024-04-01'), after);
    const short = rows.filter((row) => (row.date ?? '') <= asOf);
    expect(statesAsOf(entries.filter((entry) => entry.day <= asOf))).toEqual(recorded(short).states);
  }), { numRuns: 60 });
});
