import { expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import { day } from '#shared/days.ts';
import { named, tracedColony } from '../../renderer/screens/honey/tracedColony.ts';

const colony = (id: number, label: string, from: string) => ({ id: id as ColonyId, label, yard: 'Mill Race', from: day(from) });

test('a colony is found by its label, and a label that several bore asks for one of the list', () => {
  const all = named([colony(1, 'K-12', '2023-05-01'), colony(2, 'k-12', '2025-06-02'), colony(3, 'K-1', '2024-05-01'), colony(4, 'M', '2021-05-01'), colony(5, 'M', '2022-05-01'), colony(6, 'M', '2023-05-01')]);
  expect(tracedColony(all, ' k-1 ')).toEqual({ colony: all[2], said: null });
  expect(tracedColony(all, 'K-12')).toEqual({ colony: undefined, said: 'Two colonies were called K-12: choose one from the list.' });
  expect(tracedColony(all, all[1]!.name)).toEqual({ colony: all[1], said: null });
  expect(tracedColony(all, 'm')).toEqual({ colony: undefined, said: '3 colonies were called m: choose one from the list.' });
  // What may still become a label says nothing; what cannot says so.
  expect(tracedColony(all, 'K')).toEqual({ colony: undefined, said: null });
  expect(tracedColony(all, '')).toEqual({ colony: undefined, said: null });
  expect(tracedColony(all, 'X')).toEqual({ colony: undefined, said: 'No colony that gave honey is called “X”.' });
});
