import { dayInWords, daysBetween, yearOf, type Day } from '#shared/days.ts';
import type { ColonyState } from '#core/journal/colonyState.ts';

/** What the book knows of the colony's last months, in sentences for beside the look; what is not written down is said. */
export function recordSays(state: ColonyState, day: Day): string[] {
  const before = <Item extends { readonly day: Day }>(items: readonly Item[]) => items.filter((item) => item.day <= day).at(-1);
  const look = before(state.looks);
  const mites = before(state.miteCounts);
  const weight = before(state.storesWeights);
  const feed = before(state.feedings);
  const reign = state.reigns.findLast((one) => one.since <= day);
  return [
    look === undefined ? 'No look into it is written down.' : `Last look ${ago(look.day, day)}: ${seen(look)}.`,
    mites === undefined ? 'No mite count is written down.' : `Last mite count ${ago(mites.day, day)}: ${mites.mites} mites in ${mites.bees} bees.`,
    ...(weight === undefined && feed === undefined ? ['No feeding and no weight of stores is written down.'] : []),
    ...(weight === undefined ? [] : [`Stores last weighed ${ago(weight.day, day)}.`]),
    ...(feed === undefined ? [] : [`Last fed ${ago(feed.day, day)}: ${feed.feed}.`]),
    reign === undefined ? 'Of its queen the book knows nothing.' : reign.year === null ? `Queen since ${dayInWords(reign.since)}; her year is not written down.` : `Queen of ${reign.year}, in her ${age(yearOf(day) - reign.year)} year.`,
  ];
}

function seen({ framesBees, framesBrood, framesStores, eggs, queenSeen }: ColonyState['looks'][number]): string {
  const parts = [
    framesBees === null ? '' : `${framesBees} frames of bees`,
    framesBrood === null ? '' : `${framesBrood} of brood`,
    framesStores === null ? '' : `${framesStores} of stores`,
    eggs === null ? '' : eggs ? 'eggs' : 'no eggs',
    queenSeen === null ? '' : queenSeen ? 'queen seen' : 'queen not seen',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'nothing was counted' : parts.join(', ');
}

function ago(of: Day, day: Day): string {
  const days = daysBetween(of, day);
  return days === 0 ? `on ${dayInWords(of)}, that very day` : `on ${dayInWords(of)}, ${days} ${days === 1 ? 'day' : 'days'} before`;
}

function age(years: number): string {
  return ['first', 'second', 'third', 'fourth', 'fifth'][Math.max(0, years)] ?? `${years + 1}th`;
}
