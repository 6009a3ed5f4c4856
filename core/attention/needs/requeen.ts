import { dayInWords, yearOf } from '#shared/days.ts';
import { numberRule } from '#core/rules/houseRules.ts';
import type { NeedRecord } from '#shared/contract/needs.ts';
import type { ColonyFacts, NeedFacts, NeedRule } from './needRule.ts';
import { isNear, stretch } from './seasonDays.ts';

/** Colonies whose queen is old or whose temper is fierce, while queens can be replaced. */
export const requeen: NeedRule = {
  key: 'requeen',
  title: 'Requeening',
  why: 'Colonies with young queens have more brood, more honey and fewer swarm cells, and lose less in winter.',
  numbers: ['needs.requeen.age', 'needs.requeen.temper', 'needs.requeen.from', 'needs.requeen.by'],
  weather: 'open',
  page: '/needs/queens',
  tally: { answers: ['requeen'], came: 'lost in winter' },
  find: (facts) => {
    const asked = stretch(facts.rules, 'needs.requeen.from', 'needs.requeen.by', facts.today);
    if (!isNear(asked, facts.today, facts.ahead)) return [];
    return facts.colonies.flatMap((colony) => {
      const [why] = requeenReasons(colony, facts);
      if (why === undefined) return [];
      return [{ colony, episode: asked.until, act: 'Requeen it', ...why, earliest: asked.from, latest: asked.until, bring: [{ item: 'mated queen', count: 1, unit: '', each: true }] }];
    });
  },
};

export interface RequeenReason {
  readonly because: string;
  readonly detail: string;
  readonly records: NeedRecord[];
}

const ordinals: Readonly<Record<number, string>> = { 2: 'second', 3: 'third' };

/** Every reason that the record gives for a new queen, the gravest first; on any day of the year. */
export function requeenReasons({ state, reign }: ColonyFacts, { rules, today, entryOf }: Pick<NeedFacts, 'rules' | 'today' | 'entryOf'>): RequeenReason[] {
  const reasons: RequeenReason[] = [];
  const looks = state.looks.filter(({ day, temper }) => temper !== null && reign !== null && day >= reign.since).slice(-2);
  const fierce = numberRule(rules, 'needs.requeen.temper');
  if (looks.length === 2 && looks.every(({ temper }) => (temper ?? 0) >= fierce)) {
    reasons.push({ because: `Fierce at two looks in a row: ${fierce} of 5 or more.`, detail: `temper ${looks.map(({ temper }) => temper).join(', ')}`, records: looks.map(({ day, temper }) => ({ day, words: `Temper ${temper ?? ''} of 5.`, entry: entryOf(state.id, 'inspection', day) })) });
  }
  const summer = reign === null || reign.year === null ? 0 : yearOf(today) - reign.year + 1;
  const old = numberRule(rules, 'needs.requeen.age');
  if (reign !== null && summer >= old) {
    reasons.push({ because: `The queen is in her ${ordinals[old] ?? `${old}th`} summer or older.`, detail: `queen of ${reign.year ?? ''}`, records: [{ day: reign.since, words: `Queen of ${reign.year ?? ''}, in the colony since ${dayInWords(reign.since)}.`, entry: reign.queen }] });
  }
  return reasons;
}
