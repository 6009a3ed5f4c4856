import type { YardId } from '#shared/brands.ts';
import type { BehindSelector } from '#shared/contract/lossSections.ts';
import { addDays, type Day } from '#shared/days.ts';
import { periodDays, type Period, type Season } from '#shared/seasons.ts';
import type { ColonyState, Stay } from '#core/journal/colonyState.ts';
import { wintered } from './cohortLoss.ts';
import type { ReviewFacts } from './reviewFacts.ts';
import { lostFates, watched, type SurvivalFacts } from './survivalPart.ts';

/** The colonies that a figure counted. `times` is the figure: a colony that moved in twice is in it twice. */
export interface Behind {
  readonly states: readonly ColonyState[];
  readonly times: number;
}

/** Which colonies a figure of the review counted, by the same rules that counted them. */
export function behind(facts: SurvivalFacts, selector: BehindSelector): Behind {
  switch (selector.kind) {
    case 'ledger':
      return behindLedger(facts, selector);
    case 'rate':
      return behindRate(facts, selector);
    case 'cohort': {
      const members = wintered(facts, selector.season).filter(({ fate }) => {
        switch (selector.part) {
          case 'wintered':
            return true;
          case 'lost':
            return fate === 'dead' || fate === 'queen' || fate === 'disaster';
          case 'left':
            return fate === 'sold' || fate === 'given' || fate === 'united';
          case 'dead':
          case 'queen':
          case 'disaster':
            return fate === selector.part;
        }
      });
      return { states: members.map(({ state }) => state), times: members.length };
    }
    case 'survival': {
      const { rows, groups } = watched(facts, selector.asked);
      const own = selector.group === 'all' ? rows : (groups.find(({ key }) => key === selector.group)?.rows ?? []);
      const lost = lostFates(selector.asked);
      const life = selector.asked.axis === 'start';
      const counted = own.filter((row) => (selector.part === 'lost' ? lost.has(row.fate) : life || row.last));
      return { states: statesOf(counted.map(({ id }) => facts.stateOf(id))), times: new Set(counted.map(({ id, season }) => `${id} ${season}`)).size };
    }
    case 'colonies': {
      const known = new Set(selector.ids);
      const states = facts.states.filter(({ id }) => known.has(id));
      return { states, times: states.length };
    }
  }
}

type Of<Kind extends BehindSelector['kind']> = Extract<BehindSelector, { kind: Kind }>;

interface Standing {
  readonly state: ColonyState;
  readonly stay: Stay;
  readonly first: boolean;
  readonly last: boolean;
}

/** Every stay in the yard (or in any), with the colony it is of. */
function* staysIn({ states, yards }: ReviewFacts, code: string): Generator<Standing> {
  const yard: YardId | null = code === 'all' ? null : (yards.find((one) => one.code === code)?.id ?? (0 as YardId));
  for (const state of states) {
    for (const [at, stay] of state.stays.entries()) {
      if (yard === null || stay.yard === yard) yield { state, stay, first: at === 0, last: at === state.stays.length - 1 };
    }
  }
}

function behindLedger(facts: ReviewFacts, { season, yard, column }: Of<'ledger'>): Behind {
  const year = daysOf(facts, season, 'year');
  const winter = daysOf(facts, season, 'winter');
  const fits = (one: Standing): boolean => {
    switch (column) {
      case 'opening':
        return stood(one, year.from) || (one.first && one.state.origin === 'opening' && within(one.stay.from, year));
      case 'packages':
        return began(one, 'package', year);
      case 'nucs':
        return began(one, 'nuc', year);
      case 'swarms':
        return began(one, 'swarm', year);
      case 'splits':
        return began(one, 'split', year);
      case 'boughtColonies':
        return began(one, 'bought colony', year);
      case 'movedIn':
        return !one.first && within(one.stay.from, year);
      case 'movedOut':
        return !one.last && within(one.stay.until, year);
      case 'sold':
      case 'given':
      case 'combined':
      case 'absconded':
        return ended(one, [column], year);
      case 'lostSummer':
        return ended(one, ['lost'], daysOf(facts, season, 'summer'));
      case 'lostWinter':
        return ended(one, ['lost'], winter);
      case 'closing':
        return stood(one, year.until) && one.stay.from < year.until;
      case 'aliveOn1October':
        return stood(one, daysOf(facts, season, 'summer').until) && one.stay.from < daysOf(facts, season, 'summer').until;
    }
  };
  return counted(facts, yard, fits);
}

/** At risk: every stay in the period but those that a sale, gift or move (or uniting, where it is taken out) ended. */
function behindRate(facts: ReviewFacts, { season, yard, period, united, part }: Of<'rate'>): Behind {
  const days = daysOf(facts, season, period);
  if (facts.asOf < days.from) return { states: [], times: 0 };
  const lost = united === 'lost' ? (['lost', 'absconded', 'combined'] as const) : (['lost', 'absconded'] as const);
  return counted(facts, yard, (one) => {
    if (part === 'lost') return ended(one, lost, days);
    if (!(within(one.stay.from, days) || stood(one, days.from))) return false;
    if (!within(one.stay.until, days)) return true;
    return ended(one, lost, days);
  });
}

function counted(facts: ReviewFacts, yard: string, fits: (one: Standing) => boolean): Behind {
  const found = [...staysIn(facts, yard)].filter(fits);
  return { states: statesOf(found.map(({ state }) => state)), times: found.length };
}

function statesOf(states: readonly ColonyState[]): ColonyState[] {
  return [...new Map(states.map((state) => [state.id, state])).values()];
}

/** The days of a period no further than the as-of day; half-open, and empty before it began. */
function daysOf({ borders, asOf }: ReviewFacts, season: Season, period: Period): { from: Day; until: Day } {
  const { from, until } = periodDays(season, period, borders);
  const tomorrow = addDays(asOf, 1);
  const last = tomorrow < until ? tomorrow : until;
  return { from, until: last < from ? from : last };
}

function within(day: Day | null, { from, until }: { from: Day; until: Day }): boolean {
  return day !== null && day >= from && day < until;
}

/** There as that day begins, having come on an earlier one. */
function stood({ stay }: Standing, day: Day): boolean {
  return stay.from < day && (stay.until === null || stay.until >= day);
}

function began({ state, stay, first }: Standing, origin: ColonyState['origin'], days: { from: Day; until: Day }): boolean {
  return first && state.origin === origin && within(stay.from, days);
}

function ended({ state, stay, last }: Standing, how: readonly ColonyState['how'][], days: { from: Day; until: Day }): boolean {
  return last && within(stay.until, days) && how.includes(state.how);
}
