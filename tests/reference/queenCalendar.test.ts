import { expect, test } from 'vitest';
import { day, daysBetween } from '#shared/days.ts';
import { broodEmerges, queenCalendar, type QueenStart, type QueenStep } from '#core/lineage/queenCalendar.ts';

type Values = ReadonlyMap<string, number | string>;
const none: Values = new Map();
const at = (start: QueenStart, on: string, step: QueenStep, rules: Values = none) => {
  const found = queenCalendar(start, day(on), rules).find((one) => one.step === step);
  return found === undefined ? null : [found.from, found.until];
};

// Sealed on day 8 (Southport and District Beekeepers, read), out on day 16 (UC Agriculture and Natural Resources 1987, read), mature 5 to 6
// days on (McNeil 2015, read).
test('a queen’s egg of 1 May 2025: sealed on 9 May, out on the 17th, mature on the 22nd to 23rd', () => {
  expect(at('egg', '2025-05-01', 'cell sealed')).toEqual(['2025-05-09', '2025-05-09']);
  expect(at('egg', '2025-05-01', 'emerges')).toEqual(['2025-05-17', '2025-05-17']);
  expect(at('egg', '2025-05-01', 'can mate')).toEqual(['2025-05-22', '2025-05-23']);
  // Eggs from day 23 (an encyclopedia's table, read-weak) to day 35 (from memory).
  expect(at('egg', '2025-05-01', 'first eggs')).toEqual(['2025-05-24', '2025-06-05']);
});

// 21 and 24 days: UC Agriculture and Natural Resources 1987 (read).
test('worker and drone eggs of 1 May 2025', () => expect([broodEmerges(day('2025-05-01'), 'worker'), broodEmerges(day('2025-05-01'), 'drone')]).toEqual(['2025-05-22', '2025-05-25']));

// Emergency cells from larvae a day old: out 12 days after the loss (arithmetic), eggs 21 to 28 days after it (read-weak and from memory).
test('a colony that lost its queen on 1 June 2025: a virgin on the 13th, eggs looked for from the 22nd to the 29th', () => {
  expect(at('walk-away', '2025-06-01', 'emerges')).toEqual(['2025-06-13', '2025-06-13']);
  expect(at('walk-away', '2025-06-01', 'look for eggs')).toEqual(['2025-06-22', '2025-06-29']);
});

// Cells at 4 to 5 days and a laying queen from day 21 (buttsbees.com, read-weak), verdict on day 28 (from memory).
test('a walk-away split of 20 May 2025: cells on the 24th to 25th, laying from 10 June, given up after the 17th', () => {
  expect(at('walk-away', '2025-05-20', 'cells looked for')).toEqual(['2025-05-24', '2025-05-25']);
  expect(at('walk-away', '2025-05-20', 'look for eggs')).toEqual(['2025-06-10', '2025-06-17']);
});

// 8 and 16 days (as above): the prime swarm leaves when the first cell is sealed, the first cast when the first virgin is out.
test('an egg in a queen cup on 10 May 2025: swarm risk on the 18th, cast on the 26th', () => {
  expect(at('egg', '2025-05-10', 'cell sealed')?.[0]).toBe('2025-05-18');
  expect(at('egg', '2025-05-10', 'emerges')?.[0]).toBe('2025-05-26');
});

// A graft is a larva a day old, day 4 from the egg; a ripe cell is put in ten days later (from memory). Days by arithmetic.
test('a graft of 5 May 2025 is sealed on the 9th and out on the 17th; its ripe cell, put in on the 15th, two days on', () => {
  expect(at('graft', '2025-05-05', 'cell sealed')?.[0]).toBe('2025-05-09');
  expect(at('graft', '2025-05-05', 'emerges')?.[0]).toBe('2025-05-17');
  expect(at('cell', '2025-05-15', 'emerges')?.[0]).toBe('2025-05-17');
  expect(at('cell', '2025-05-15', 'first eggs')).toEqual(at('graft', '2025-05-05', 'first eggs'));
});

// A page that compares packages: the queen is out after 2 to 5 days, eggs 2 to 5 days on (read-weak); workers after 21 (read).
test('a package of 15 April 2025, queen out on day 3, eggs 3 days on: new workers on 12 May, 27 days after hiving', () => {
  const rules: Values = new Map([['queens.cage.outFrom', 3], ['queens.cage.outBy', 3], ['queens.cage.eggsFrom', 3], ['queens.cage.eggsBy', 3]]);
  expect(at('caged', '2025-04-15', 'first eggs', rules)).toEqual(['2025-04-21', '2025-04-21']);
  expect(at('caged', '2025-04-15', 'first workers', rules)).toEqual(['2025-05-12', '2025-05-12']);
  expect(daysBetween(day('2025-04-15'), day('2025-05-12'))).toBe(27);
  expect(at('caged', '2025-04-15', 'first eggs')).toEqual(['2025-04-19', '2025-04-25']);
  // Eggs looked for on day 7 to 10, replaced from day 14: extension package guides (from memory).
  expect(at('caged', '2025-04-15', 'look for eggs')).toEqual(['2025-04-22', '2025-04-25']);
  expect(at('caged', '2025-04-15', 'replace if no eggs')?.[0]).toBe('2025-04-29');
});

// Unmated after 3 to 4 weeks: likely a drone layer (breconshirebeekeeping.co.uk, read).
test('a queen that has not mated four weeks after she emerged', () => expect(at('graft', '2025-05-05', 'likely unmated')?.[0]).toBe('2025-06-14'));
