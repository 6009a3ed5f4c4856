import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { addDays, type Day } from '#shared/days.ts';

/**
 * What a queen's days are counted from: her own egg, a graft, a ripe cell put in, a split left to raise its queen, or a
 * mated queen put in caged.
 */
export const queenStarts = ['egg', 'graft', 'cell', 'walk-away', 'caged'] as const;
export type QueenStart = (typeof queenStarts)[number];

export type QueenStep =
  | 'cells looked for' | 'cell sealed' | 'emerges' | 'can mate' | 'first eggs' | 'look for eggs' | 'likely unmated' | 'out of the cage' | 'first workers' | 'replace if no eggs';

/** A step and the days between which it is expected; `rules` are the keys of the house rules it rests on. */
export interface QueenDay {
  readonly step: QueenStep;
  readonly from: Day;
  readonly until: Day;
  readonly rules: readonly string[];
}

/** Days from egg to emergence (UC Agriculture and Natural Resources, Beekeeping in California 1987). */
const broodDays = { worker: 21, drone: 24 } as const;

export function broodEmerges(egg: Day, kind: keyof typeof broodDays): Day {
  return addDays(egg, broodDays[kind]);
}

/** A queen's calendar from a day, in the order of its days. Steps that were before the start are left out. */
export function queenCalendar(start: QueenStart, on: Day, rules: RuleValues): QueenDay[] {
  const steps = start === 'caged' ? caged(on, rules) : [...raised(start, on, rules), ...lookedAt(start, on, rules)];
  return steps
    .filter(({ from }) => from >= on)
    .toSorted((a, b) => order(a.from, b.from) || order(a.until, b.until));
}

/** A queen that is still raised: her days count from her egg, which lies before the start by the age of larva or cell. */
function raised(start: Exclude<QueenStart, 'caged'>, on: Day, rules: RuleValues): QueenDay[] {
  const age = { egg: null, graft: 'queens.larva', cell: 'queens.ripe', 'walk-away': 'queens.larva' }[start];
  const before = age === null ? 0 : numberRule(rules, age);
  const own = age === null ? [] : [age];
  const after = (days: number) => addDays(on, days - before);
  const day = (key: string) => numberRule(rules, `queens.${key}`);
  const emerges = day('emerges');
  const step = (name: QueenStep, from: number, until: number, ...keys: string[]): QueenDay => ({
    step: name, from: after(from), until: after(Math.max(from, until)), rules: [...own, ...keys.map((key) => `queens.${key}`)],
  });
  const steps = [
    step('cell sealed', day('sealed'), day('sealed'), 'sealed'),
    step('emerges', emerges, emerges, 'emerges'),
    step('can mate', emerges + day('mature.from'), emerges + day('mature.by'), 'emerges', 'mature.from', 'mature.by'),
    step('likely unmated', emerges + day('unmated'), emerges + day('unmated'), 'emerges', 'unmated'),
  ];
  // A split has days of its own on which it is looked at for eggs; two ranges for one thing would only confuse.
  return start === 'walk-away' ? steps : [...steps, step('first eggs', day('eggs.from'), day('eggs.by'), 'eggs.from', 'eggs.by')];
}

function lookedAt(start: QueenStart, on: Day, rules: RuleValues): QueenDay[] {
  return start === 'walk-away'
    ? [between('cells looked for', on, ['queens.cells.from', 'queens.cells.by'], rules), between('look for eggs', on, ['attention.walkAway.from', 'attention.walkAway.by'], rules)]
    : [];
}

/** A mated queen in a cage: out, her first eggs and workers, and the look that is due for her. */
function caged(on: Day, rules: RuleValues): QueenDay[] {
  const out = between('out of the cage', on, ['queens.cage.outFrom', 'queens.cage.outBy'], rules);
  const keys = [...out.rules, 'queens.cage.eggsFrom', 'queens.cage.eggsBy'];
  const eggs = { from: addDays(out.from, numberRule(rules, 'queens.cage.eggsFrom')), until: addDays(out.until, numberRule(rules, 'queens.cage.eggsBy')) };
  const giveUp = addDays(on, numberRule(rules, 'queens.cage.giveUp'));
  return [
    out,
    { step: 'first eggs', ...ordered(eggs.from, eggs.until), rules: keys },
    { step: 'first workers', ...ordered(broodEmerges(eggs.from, 'worker'), broodEmerges(eggs.until, 'worker')), rules: keys },
    between('look for eggs', on, ['attention.newQueen.from', 'attention.newQueen.by'], rules),
    { step: 'replace if no eggs', from: giveUp, until: giveUp, rules: ['queens.cage.giveUp'] },
  ];
}

function between(step: QueenStep, on: Day, keys: readonly [string, string], rules: RuleValues): QueenDay {
  return { step, ...ordered(addDays(on, numberRule(rules, keys[0])), addDays(on, numberRule(rules, keys[1]))), rules: keys };
}

/** The person may set a first day after the last: then both are the first. */
function ordered(from: Day, until: Day): { from: Day; until: Day } {
  return { from, until: until < from ? from : until };
}

function order(a: Day, b: Day): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
