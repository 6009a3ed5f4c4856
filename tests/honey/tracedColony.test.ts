import { expect, test } from 'vitest';
import type { ColonyId } from '#shared/brands.ts';
import { tracedColony } from '../../renderer/screens/honey/tracedColony.ts';

const colony = (id: number, label: string, name = label) => ({ id: id as ColonyId, label, name });

test('a colony is found by its label, and a label that several bore asks for one of the list', () => {
  const all = [colony(1, 'K-12', 'K-12, 1 May 2023 to 3 June 2024, lost'), colony(2, 'k-12', 'k-12, since 2 June 2025'), colony(3, 'K-1'), ...[2021, 2022, 2023].map((year) => colony(year, 'M', `M, since 1 May ${year}`))];
  expect(tracedColony(all, ' k-1 ')).toEqual({ colony: all[2], said: null });
  expect(tracedColony(all, 'K-12')).toEqual({ colony: undefined, said: 'Two colonies were called K-12: choose one from the list.' });
  expect(tracedColony(all, all[1]!.name)).toEqual({ colony: all[1], said: null });
  expect(tracedColony(all, 'm')).toEqual({ colony: undefined, said: '3 colonies were called m: choose one from the list.' });
  // What may still become a label says nothing; what cannot says so.
  expect(tracedColony(all, 'K')).toEqual({ colony: undefined, said: null });
  expect(tracedColony(all, '')).toEqual({ colony: undefined, said: null });
  expect(tracedColony(all, 'X')).toEqual({ colony: undefined, said: 'No colony that gave honey is called “X”.' });
});
