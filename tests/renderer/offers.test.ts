import { expect, test } from 'vitest';
import { offers } from '../../renderer/commands/offers.ts';

test('what waits for a screen is done once when the screen offers it, and not after the person went elsewhere', () => {
  const done: string[] = [];
  offers.ask('export', '/book');
  offers.arrived('/book');
  const leave = offers.make('export', () => done.push('waited'));
  expect(done).toEqual(['waited']);
  leave();
  offers.make('export', () => done.push('again'))();
  expect(done).toEqual(['waited']);

  offers.ask('check', '/book');
  offers.arrived('/losses');
  const stay = offers.make('check', () => done.push('late'));
  expect(done).toEqual(['waited']);
  expect(offers.names().has('check')).toBe(true);
  offers.ask('check', '/book');
  expect(done).toEqual(['waited', 'late']);
  stay();
  expect(offers.names().has('check')).toBe(false);
});
