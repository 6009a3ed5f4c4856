import { expect, test } from 'vitest';
import type { ColonyId, Grams } from '#shared/brands.ts';
import type { StoresColony } from '#shared/contract/stores.ts';
import { hold } from '#shared/figures.ts';
import { gramsFrom } from '#shared/units.ts';
import { todoText, wantsSomething } from '#renderer/screens/stores/storesText.ts';

const colony = (wentShort: Grams | null): StoresColony => ({
  id: 1 as ColonyId, label: 'A', told: null, fed: { times: 0, grams: 0, notReckoned: 0 }, reckoned: gramsFrom(44, 'lb'), target: null, say: 'leave', amount: 0, wentShort, feed: null, reason: '', rests: null, supers: null,
});

test('in winter a colony that was short of its stores wants something, though it is not low; one that was not is left', () => {
  const short = colony(gramsFrom(34, 'lb'));
  expect([wantsSomething(short), todoText(short, 'lb')]).toEqual([true, `heft; it was 34${hold}lb short`]);
  expect([wantsSomething(colony(null)), todoText(colony(null), 'lb')]).toEqual([false, 'leave']);
});
