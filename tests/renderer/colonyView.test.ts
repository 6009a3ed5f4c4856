import { expect, test } from 'vitest';
import type { ColonyId, EntryId } from '#shared/brands.ts';
import type { ColonyRow } from '#shared/contract/colonies.ts';
import { day } from '#shared/days.ts';
import { columnsFor } from '../../renderer/screens/colonies/colonyColumns.tsx';
import { firstView, rowsOf, type ColonyView } from '../../renderer/screens/colonies/colonyView.ts';

function row(id: number, label: string, part: Partial<ColonyRow> = {}): ColonyRow {
  return {
    id: id as ColonyId, label, yard: 'LB', yardName: 'Larch Bend', origin: 'package', start: day('2025-04-24'), end: null, how: 'alive', queen: null,
    lastLook: null, framesBees: null, framesBrood: null, framesStores: null, mitesDay: null, mites: null, bees: null, supers: 0, honeyLb: null, causes: [],
    ...part,
  };
}

const rows = [
  row(1, 'LB-10', { mites: 9, bees: 300, framesBees: 7 }),
  row(2, 'LB-2', { yard: 'OV', yardName: 'Obere Vührung', mites: 2, bees: 300, causes: ['queen failure'] }),
  row(3, 'lb-1', { queen: { id: 1 as EntryId, year: 2025, colour: 'blue', marked: true, source: 'Sandel Road Bees', since: day('2025-06-01') }, framesBees: 9 }),
];
const columns = columnsFor('living', 'lb');
const labels = (view: Partial<ColonyView>) => rowsOf(rows, { ...firstView, ...view }, columns).map(({ label }) => label);

test('labels sort as people count', () => {
  expect(labels({})).toEqual(['lb-1', 'LB-2', 'LB-10']);
  expect(labels({ down: true })).toEqual(['LB-10', 'LB-2', 'lb-1']);
});

test('what is not known stands last, up or down', () => {
  expect(labels({ sortBy: 'bees' })).toEqual(['LB-10', 'lb-1', 'LB-2']);
  expect(labels({ sortBy: 'bees', down: true })).toEqual(['lb-1', 'LB-10', 'LB-2']);
  expect(labels({ sortBy: 'mites', down: true })).toEqual(['LB-10', 'LB-2', 'lb-1']);
});

test('searching ignores case and accents and takes every word', () => {
  expect(labels({ typed: 'vuhrung' })).toEqual(['LB-2']);
  expect(labels({ typed: 'VÜHRUNG queen' })).toEqual(['LB-2']);
  expect(labels({ typed: 'blue sandel' })).toEqual(['lb-1']);
  expect(labels({ typed: 'blue larch swarm' })).toEqual([]);
  expect(labels({ typed: '  ' })).toHaveLength(3);
});

test('a yard narrows the list', () => {
  expect(labels({ yard: 'OV' })).toEqual(['LB-2']);
});
