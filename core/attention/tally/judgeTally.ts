import type { ColonyId } from '#shared/brands.ts';
import type { RuleTally, TallyShare, TallyVerdict } from '#shared/contract/tally.ts';
import { addDays, type Day } from '#shared/days.ts';
import { percent, percentRange } from '#shared/figures.ts';
import { periodDays, seasonOf, type Borders, type Season } from '#shared/seasons.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';
import { fateIn } from '#core/lineage/winterFates.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { roomsOf } from '#core/rules/ruleBook.ts';
import { proportion } from '#core/stats/proportion.ts';
import { riskDifference } from '#core/stats/riskDifference.ts';
import { sourceOf } from '../needs/needLines.ts';
import type { NeedRule, TallyHarm } from '../needs/needRule.ts';
import { weekly, type Asked } from './replay.ts';

export interface TallyFacts {
  readonly rules: RuleValues;
  readonly borders: Borders;
  /** Every colony as the record has it today: what became of it is known only afterwards. */
  readonly states: ReadonlyMap<ColonyId, ColonyState>;
  /** The first day gone through and the day after the last; seasons between them are over. */
  readonly from: Day;
  readonly until: Day;
}

/** Said once where the tally is shown. */
export const tallyCaveat = 'What was answered and what was left was not drawn by lot: the worse colonies may have been seen to first, or given up. So a difference does not prove that the answer helped, and none does not prove that it did not. Colonies of one yard fare alike, so the ranges are rather too short than too wide. What was put off or dismissed counts as asked.';

type Fate = 'answered' | 'late' | 'left' | 'fell';
interface Unit {
  readonly asked: readonly Asked[];
  readonly fate: Fate;
  /** Null: what became of it is not known. */
  readonly harmed: boolean | null;
}

/** How one rule has done: what it asked for, what was answered, and what came where it was and where it was not. */
export function judgeTally(rule: NeedRule, all: readonly Asked[], facts: TallyFacts): RuleTally {
  const { came = null, answers = [] } = rule.tally ?? {};
  const asked = all.filter((one) => one.rule === rule.key);
  const units = came === null ? asked.map((one): Unit => ({ asked: [one], fate: fateOf(one, facts), harmed: null })) : colonySeasons(asked, came, facts);
  const judged = units.filter(({ fate }) => fate !== 'fell');
  const counted = { asked: units.length, answered: share(judged.filter(({ fate }) => fate === 'answered').length, judged.length), late: judged.filter(({ fate }) => fate === 'late').length, fell: units.length - judged.length };
  const known = judged.filter(({ harmed }) => harmed !== null);
  const done = came === null ? null : harmedOf(known.filter(({ fate }) => fate === 'answered'));
  const left = came === null ? null : harmedOf(known.filter(({ fate }) => fate !== 'answered'));
  const foretold = came === null ? null : foretoldOf(came, asked, facts);
  const others = came === 'lost in winter' ? othersOf(asked, facts) : null;
  const per = came === null ? 'time' : 'colony';
  return {
    rule: rule.key, title: rule.title, why: rule.why, per, ...counted, answers: [...answers], harm: came === null ? null : harmWords[came](facts), done, left, others, foretold,
    ...verdictOf({ ...counted, done, left, others, foretold, came }, facts),
    sources: rule.numbers.flatMap((key) => sourceOf(key, facts.rules)), rooms: roomsOf([...rule.numbers, `needs.grave.${rule.key}`]),
  };
}

const harmWords: Readonly<Record<TallyHarm, (facts: TallyFacts) => string>> = {
  'lost in winter': () => 'lost in the winter that followed',
  swarmed: ({ rules }) => `swarmed within ${numberRule(rules, 'needs.tally.swarm')} days`,
  'lost soon': ({ rules }) => `lost within ${numberRule(rules, 'needs.tally.soon')} days`,
};

/** Once for each colony and season, so that a colony that was asked for again and again does not count again and again. */
function colonySeasons(asked: readonly Asked[], came: TallyHarm, facts: TallyFacts): Unit[] {
  return [...Map.groupBy(asked, ({ colony, first }) => `${colony ?? ''} ${seasonOf(first, facts.borders)}`).values()].map((own) => {
    const fates = own.map((one) => (struck(one, came, facts) ? 'left' : fateOf(one, facts))).filter((fate) => fate !== 'fell');
    const fate = fates.length === 0 ? 'fell' : fates.every((one) => one === 'answered') ? 'answered' : fates.some((one) => one === 'left') ? 'left' : 'late';
    return { asked: own, fate, harmed: harmedBy(own, came, facts) };
  });
}

/** The harm came before an answer, and with it the record asked for nothing more. */
function struck(asked: Asked, came: TallyHarm, { states }: TallyFacts): boolean {
  const state = asked.colony === null ? undefined : states.get(asked.colony);
  if (came === 'lost in winter' || state === undefined) return false;
  return harmDays(state, came).some((day) => day > asked.first && day <= addDays(asked.lastSeen, weekly) && (asked.answered === null || asked.answered > day));
}

/** It fell where it was asked for no more by its last day without an answer, though the colony lived. */
function fateOf({ colony, answered, by, lastSeen }: Asked, { states }: TallyFacts): Fate {
  if (answered !== null && answered <= by) return 'answered';
  const next = addDays(lastSeen, weekly);
  const end = colony === null ? null : (states.get(colony)?.end ?? null);
  if (next <= by && (end === null || end > next)) return 'fell';
  return answered === null ? 'left' : 'late';
}

function harmedBy(asked: readonly Asked[], came: TallyHarm, facts: TallyFacts): boolean | null {
  const [first] = asked;
  const state = first?.colony == null ? undefined : facts.states.get(first.colony);
  if (first === undefined || state === undefined) return null;
  if (came === 'lost in winter') {
    const fate = fateIn(state, periodDays(seasonOf(first.first, facts.borders), 'winter', facts.borders));
    return fate === null ? null : fate === 'lost';
  }
  return harmDays(state, came).some((day) => wasAskedBefore(day, asked, came, facts));
}

/** The days on which a harm that is looked for within days came to a colony. */
function harmDays({ how, end, reigns }: ColonyState, came: Exclude<TallyHarm, 'lost in winter'>): Day[] {
  if (came === 'swarmed') return reigns.flatMap(({ ending, until }) => (ending === 'swarmed' && until !== null ? [until] : []));
  return (how === 'lost' || how === 'absconded') && end !== null ? [end] : [];
}

function wasAskedBefore(day: Day, asked: readonly Asked[], came: TallyHarm, { rules }: TallyFacts): boolean {
  const days = numberRule(rules, came === 'swarmed' ? 'needs.tally.swarm' : 'needs.tally.soon');
  return asked.some(({ first }) => day > first && day <= addDays(first, days));
}

/** Of all that came to the harm in the time gone through, for how many the rule had asked before it. */
function foretoldOf(came: TallyHarm, asked: readonly Asked[], facts: TallyFacts): TallyShare {
  const byColony = Map.groupBy(asked, ({ colony }) => colony);
  let [told, all] = [0, 0];
  for (const state of facts.states.values()) {
    const own = byColony.get(state.id) ?? [];
    if (came === 'lost in winter') {
      for (const season of seasonsIn(facts)) {
        if (fateIn(state, periodDays(season, 'winter', facts.borders)) !== 'lost') continue;
        all += 1;
        if (own.some(({ first }) => seasonOf(first, facts.borders) === season)) told += 1;
      }
    } else {
      for (const day of harmDays(state, came)) {
        if (day < facts.from || day >= facts.until) continue;
        all += 1;
        if (wasAskedBefore(day, own, came, facts)) told += 1;
      }
    }
  }
  return share(told, all);
}

/** The seasons that were gone through and are over; the first one only from the first record on. */
export function seasonsIn({ from, until, borders }: Pick<TallyFacts, 'from' | 'until' | 'borders'>): Season[] {
  const first = seasonOf(from, borders);
  return Array.from({ length: Math.max(0, seasonOf(until, borders) - first) }, (_, at) => first + at);
}

/** Colonies that went into one of those winters and were not asked for in the season before it. */
function othersOf(asked: readonly Asked[], facts: TallyFacts): TallyShare {
  const named = new Set(asked.map(({ colony, first }) => `${colony ?? ''} ${seasonOf(first, facts.borders)}`));
  const fates = seasonsIn(facts).flatMap((season) => {
    const winter = periodDays(season, 'winter', facts.borders);
    return [...facts.states.values()].flatMap((state) => (named.has(`${state.id} ${season}`) ? [] : (fateIn(state, winter) ?? [])));
  });
  return share(fates.filter((fate) => fate === 'lost').length, fates.length);
}

function harmedOf(units: readonly Unit[]): TallyShare {
  return share(units.filter(({ harmed }) => harmed === true).length, units.length);
}

function share(count: number, of: number): TallyShare {
  const { wilson } = proportion(count, of);
  return { count, of, interval: wilson === null ? null : [wilson.lower, wilson.upper] };
}

type Counted = Pick<RuleTally, 'asked' | 'answered' | 'late' | 'done' | 'left' | 'others' | 'foretold'> & { readonly came: TallyHarm | null };

function verdictOf({ asked, answered, late, done, left, others, foretold, came }: Counted, facts: TallyFacts): { verdict: TallyVerdict; says: string } {
  const few = numberRule(facts.rules, 'needs.tally.few');
  if (asked === 0) return { verdict: 'never asked', says: `It asked for nothing in these seasons.${came === null ? '' : missedWords(foretold, came, 1)}` };
  if (done === null || left === null || came === null) {
    const never = answered.of - answered.count - late;
    const rest = late + never === 0 ? 'All were done in time.' : `Of the others ${late === 0 ? 'none' : late} ${late === 1 ? 'was' : 'were'} done within a month after, and ${never === 0 ? 'none was' : `${never} ${never === 1 ? 'was' : 'were'}`} left.`;
    return { verdict: 'no harm looked for', says: answered.of === 0 ? 'Each time a later record asked for it no more.' : rest };
  }
  const missed = missedWords(foretold, came, few);
  const harmed = harmWords[came](facts);
  if (left.of < few) return { verdict: 'few', says: left.of === 0 ? `Nothing it asked for was left undone, so there is nothing to compare.${missed}` : `Only ${left.of} ${left.of === 1 ? 'was' : 'were'} not done in time: too few to tell what comes of it.${missed}` };
  const undone = `Not done in time: ${of(left)} ${harmed}`;
  const beside = done.of >= few ? { other: done, words: 'done in time' } : others !== null && others.of >= few ? { other: others, words: 'of those it never asked for' } : null;
  if (beside === null) return { verdict: left.count === 0 ? 'nothing came' : 'few', says: `${undone}. Too few were done in time to compare.${missed}` };
  const { other, words } = beside;
  const apart = riskDifference({ a: left.count, b: left.of - left.count, c: other.count, d: other.of - other.count })?.newcombe;
  const both = `${undone}; ${words}: ${of(other)}.`;
  if (apart !== undefined && apart.lower > 0) return { verdict: 'bore out', says: `${both} What it warns of came more often where it was not done in time.${missed}` };
  if (apart !== undefined && apart.upper < 0) return { verdict: 'against', says: `${both} It came less often where it was not done in time: the worse ones may have been seen to first, or the rule asks too widely.${missed}` };
  return { verdict: left.count === 0 ? 'nothing came' : 'open', says: `${both} That is no more apart than chance would have it.${missed}` };
}

/** "10 of 18 (56 %, 34–75)" */
function of({ count, of: all, interval }: TallyShare): string {
  return `${count} of ${all} (${percent(count / all)}, ${percentRange(interval).slice(1)}`;
}

/** What came without a word from the rule, where that was most of it. */
function missedWords(foretold: TallyShare | null, came: TallyHarm, few: number): string {
  if (foretold === null || foretold.of < few || foretold.interval === null || foretold.count / foretold.of >= 0.5) return '';
  return ` Of all ${foretold.of} that ${came === 'swarmed' ? 'swarmed' : came === 'lost soon' ? 'were lost' : 'were lost in winter'} it had asked for ${foretold.count} before.`;
}
