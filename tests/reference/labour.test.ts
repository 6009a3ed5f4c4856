import { describe, expect, test } from 'vitest';
import { minutesFor, ownPace } from '#core/work/ownMinutes.ts';
import { roundOf } from '#core/work/roundPhases.ts';
import { numberRule } from '#core/rules/houseRules.ts';

const house = new Map<string, number | string>();
const unrecorded = ownPace({ recorded: [], states: [], rules: house });

// Time commitment of beekeeping by operation size (docslib.org/doc/5575782; read): hobby up to 3 h for 10 colonies, sideline up to
// 50 h for 250, commercial up to 120 h for 700; the table calls itself an upper bound.
describe('hours of a round', () => {
  test('the house’s minutes are those of the sideline row', () => {
    expect(minutesFor(numberRule(house, 'work.minutes.round'), 250, unrecorded).minutes / 60).toBe(50);
  });
  test.each([
    ['sideline', (50 * 60) / 250, 80, 16.0], ['hobby', (3 * 60) / 10, 8, 2.4], ['commercial', (120 * 60) / 700, 700, 120],
  ])('%s: %f min a colony, %i colonies, %f h', (_, each, colonies, hours) => {
    expect(minutesFor(each, colonies, unrecorded).minutes / 60).toBeCloseTo(hours, 1);
  });
  test('fifteen rounds of a season of 80 colonies are 240 h, 3 h a colony', () => {
    const { minutes } = minutesFor(numberRule(house, 'work.minutes.round'), 80, unrecorded);
    expect((15 * minutes) / 60).toBe(240);
    expect((15 * minutes) / 60 / 80).toBe(3);
  });
  test('rounds come as often as the same table says: every 4 to 6 weeks in the fall, every 6 to 8 in winter', () => {
    expect(roundOf(house, 'late').every).toBeGreaterThanOrEqual(28);
    expect(roundOf(house, 'late').every).toBeLessThanOrEqual(42);
    expect(roundOf(house, 'winter').every).toBeGreaterThanOrEqual(42);
    expect(roundOf(house, 'winter').every).toBeLessThanOrEqual(56);
    // Every 2 to 3 weeks in summer.
    expect(roundOf(house, 'flow').every).toBeGreaterThanOrEqual(14);
    expect(roundOf(house, 'flow').every).toBeLessThanOrEqual(21);
  });
});
