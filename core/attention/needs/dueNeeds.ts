import type { DueItem } from '#shared/contract/due.ts';
import type { NeedWeather } from '#shared/contract/needs.ts';
import { dueRules } from '../colonyDues.ts';
import type { NeedRule } from './needRule.ts';

interface Words {
  readonly title: string;
  readonly why: string;
  /** What holds for all that need it. */
  readonly because: string;
  readonly weather: NeedWeather;
  readonly caution?: string;
}

export const labelCaution = 'The label of the product is the law: how, when, what to wear, and when supers must be off.';

const words: Readonly<Record<DueItem['rule'], Words>> = {
  walkAwayLaying: { title: 'Walk-away split: eggs', why: 'A walk-away split raises its own queen; whether she lays shows from the third week on.', because: 'A walk-away split had to raise its own queen.', weather: 'open' },
  newQueenLaying: { title: 'New queen: eggs', why: 'A queen that was given may not be taken; eggs tell.', because: 'A mated queen was given.', weather: 'open' },
  queenlessLaying: { title: 'Queen missing: eggs', why: 'A colony that lost its queen raises another, or cannot.', because: 'The queen was missing.', weather: 'open' },
  swarmCellsLook: { title: 'Swarm cells: look again', why: 'A cell is sealed 8 days after the egg, and the swarm leaves about then.', because: 'Swarm cells were seen.', weather: 'open' },
  treatmentOff: { title: 'Treatment off', why: 'What is left in the hive past its time breeds resistance and breaks the label.', because: 'The treatment has come to its last day.', weather: 'label', caution: labelCaution },
  miteRecount: { title: 'Mites after a treatment', why: 'Only a count after it tells whether a treatment worked.', because: 'A treatment ended, and no count tells yet whether it worked.', weather: 'open' },
};

/** What an entry made due, as it stands on the colony’s page: one rule of the list for each. */
export const dueNeeds: readonly NeedRule[] = dueRules.map(({ key, numbers }): NeedRule => {
  const { because, ...own } = words[key];
  return {
    key, ...own, numbers: [...numbers, 'attention.letGo'],
    find: ({ colonies }) =>
      colonies.flatMap((colony) =>
        colony.dues.filter(({ rule }) => rule === key).map(({ what, reason, cause, since, earliest, latest }) => ({ colony, episode: `e${cause}`, act: what, because, detail: reason, records: [{ day: since, words: reason, entry: cause }], earliest, latest })),
      ),
  };
});
