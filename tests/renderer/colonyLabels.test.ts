import fc from 'fast-check';
import { expect, test } from 'vitest';
import { colonyLabels } from '../../renderer/parts/colonyLabels.ts';

const labelsOf = (typed: string, known: readonly string[] = []) => {
  const read = colonyLabels(typed, new Set(known));
  return read.ok ? read.labels : read.sentence;
};

test('one, several, and a range', () => {
  expect(labelsOf('LB-01')).toEqual(['LB-01']);
  expect(labelsOf(' LB-01 , LB-03,')).toEqual(['LB-01', 'LB-03']);
  expect(labelsOf('LB-01..LB-03')).toEqual(['LB-01', 'LB-02', 'LB-03']);
  expect(labelsOf('LB-09 .. LB-11, QY-2')).toEqual(['LB-09', 'LB-10', 'LB-11', 'QY-2']);
  expect(labelsOf('8..10')).toEqual(['8', '9', '10']);
  expect(labelsOf('')).toEqual([]);
});

test('a range that is none is refused with what would mend it', () => {
  expect(labelsOf('LB-01..QY-03')).toContain('same beginning');
  expect(labelsOf('LB-a..LB-c')).toContain('a number at the end');
  expect(labelsOf('LB-05..LB-02')).toContain('backwards');
  expect(labelsOf('LB-1..LB-501')).toContain('more than 500');
  expect(colonyLabels('LB-1..LB-500').ok).toBe(true);
});

test('a label of the book that holds a comma or dots is taken whole', () => {
  expect(labelsOf('old, by the gate', ['old, by the gate'])).toEqual(['old, by the gate']);
  expect(labelsOf('A1..A3', ['A1..A3'])).toEqual(['A1..A3']);
});

test('a range names each number once, in order, as wide as it was typed', () => {
  fc.assert(
    fc.property(fc.constantFrom('', 'LB-', 'Yard 2/'), fc.nat(900), fc.nat(80), fc.integer({ min: 1, max: 4 }), (prefix, first, more, width) => {
      const write = (value: number) => `${prefix}${String(value).padStart(width, '0')}`;
      const labels = labelsOf(`${write(first)}..${write(first + more)}`);
      expect(labels).toEqual(Array.from({ length: more + 1 }, (_, step) => write(first + step)));
    }),
  );
});
