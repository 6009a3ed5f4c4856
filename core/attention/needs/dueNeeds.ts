import type { EntryId } from '#shared/brands.ts';
import type { DueItem } from '#shared/contract/due.ts';
import type { NeedWeather } from '#shared/contract/needs.ts';
import { addDays } from '#shared/days.ts';
import { numberRule, type RuleValues } from '#core/rules/houseRules.ts';
import { dueRules } from '../colonyDues.ts';
import type { ColonyFacts, Found, NeedFacts, NeedRule, NeedTally, YardFacts } from './needRule.ts';

interface Words {
  readonly title: string;
  readonly why: string;
  /** What holds for all that need it. */
  readonly because: string;
  readonly weather: NeedWeather;
  readonly caution?: string;
  readonly tally?: NeedTally;
}

const labelCaution = 'The label of the product is the law: how, when, what to wear, and when supers must be off.';

const words: Readonly<Record<DueItem['rule'], Words>> = {
  walkAwayLaying: { title: 'Walk-away split: eggs', why: 'A walk-away split raises its own queen; whether she lays shows from the third week on.', because: 'A walk-away split had to raise its own queen.', weather: 'open', tally: { answers: ['inspection'], came: null } },
  newQueenLaying: { title: 'New queen: eggs', why: 'A queen that was given may not be taken; eggs tell.', because: 'A mated queen was given.', weather: 'open', tally: { answers: ['inspection'], came: null } },
  queenlessLaying: { title: 'Queen missing: eggs', why: 'A colony that lost its queen raises another, or cannot.', because: 'The queen was missing.', weather: 'open', tally: { answers: ['inspection', 'requeen', 'combine'], came: 'lost in winter' } },
  swarmCellsLook: { title: 'Swarm cells: look again', why: 'A cell is sealed 8 days after the egg, and the swarm leaves about then.', because: 'Swarm cells were seen.', weather: 'open', tally: { answers: ['inspection', 'split'], came: 'swarmed' } },
  treatmentOff: { title: 'Treatment off', why: 'What is left in the hive past its time breeds resistance and breaks the label.', because: 'The treatment has come to its last day.', weather: 'label', caution: labelCaution },
  miteRecount: { title: 'Mites after a treatment', why: 'Only a count after it tells whether a treatment worked.', because: 'A treatment ended, and no count tells yet whether it worked.', weather: 'open', tally: { answers: ['mites'], came: null } },
};

/** What an entry made due, as it stands on the colony’s page: one rule of the list for each. */
export const dueNeeds: readonly NeedRule[] = dueRules.map(({ key, numbers }): NeedRule => {
  const { because, ...own } = words[key];
  return {
    key, ...own, numbers: key === 'miteRecount' ? [...numbers, 'mites.colonies', 'attention.letGo'] : [...numbers, 'attention.letGo'],
    find: (facts) => (key === 'miteRecount' ? recounts(facts) : asDue(key, because, facts.colonies)),
  };
});

function asDue(key: DueItem['rule'], because: string, colonies: readonly ColonyFacts[]): Found[] {
  return colonies.flatMap((colony) =>
    colony.dues.filter(({ rule }) => rule === key).map(({ what, reason, cause, since, earliest, latest }) => ({ colony, episode: `e${cause}`, act: what, because, detail: reason, records: [{ day: since, words: reason, entry: cause }], earliest, latest })),
  );
}

/** After a treatment of the whole yard a wash of some colonies tells whether it worked; after one of a colony, its own. */
function recounts({ yards, rules }: NeedFacts): Found[] {
  const { because } = words.miteRecount;
  return yards.flatMap((yard) => {
    const asked = yard.standing.flatMap(({ dues }) => dues.filter(({ rule }) => rule === 'miteRecount'));
    const shared = [...Map.groupBy(asked, ({ cause }) => cause).values()].filter((items) => items.length > 1 || items.some(({ cause }) => isOfYard(yard, cause)));
    const causes = new Set(shared.flatMap((items) => items.map(({ cause }) => cause)));
    const single = yard.standing.map((colony) => ({ ...colony, dues: colony.dues.filter(({ cause }) => !causes.has(cause)) }));
    return [...asDue('miteRecount', because, single), ...shared.flatMap((items) => yardRecount(yard, items, because, rules))];
  });
}

/** The treatment was of this whole yard: of its colonies some are enough, though one alone is left that was not counted. */
function isOfYard({ yard, standing }: YardFacts, cause: EntryId): boolean {
  return standing.length > 1 && standing.some(({ treatments }) => treatments.some((span) => span.entry === cause && span.yard === yard.id && span.colony === null));
}

function yardRecount(yard: YardFacts, [first]: readonly DueItem[], because: string, rules: RuleValues): Found[] {
  if (first === undefined) return [];
  const { reason, cause, since, earliest, latest } = first;
  const ended = addDays(earliest, -numberRule(rules, 'attention.recount.from'));
  const counted = yard.standing.filter(({ count }) => count !== null && count.day >= ended).length;
  const left = Math.min(yard.standing.length, numberRule(rules, 'mites.colonies')) - counted;
  if (left <= 0) return [];
  return [{
    yard, episode: `e${cause}`, act: 'Count mites again', because, detail: `${left} of ${yard.standing.length} colonies`, times: left, records: [{ day: since, words: reason, entry: cause }], earliest, latest,
    bring: [{ item: 'mite wash kit', count: 1, unit: '', each: false }],
  }];
}
