import type { Cause, DeadOutSign } from '#shared/deadOut.ts';

/** How well founded a rule is: read in the source named, custom of the trade, or written from memory. */
export type Footing = 'read' | 'common practice, no source' | 'from memory';

/** One pattern of signs and what it speaks for. `all` must be there, at least one of `any`, none of `not`. */
export interface CauseRule {
  readonly cause: Cause;
  readonly all?: readonly DeadOutSign[];
  readonly any?: readonly DeadOutSign[];
  readonly not?: readonly DeadOutSign[];
  /** `strong`: the pattern is known for this cause; `weak`: it fits, and fits others too. */
  readonly weight: 'strong' | 'weak';
  readonly reason: string;
  readonly source: string | null;
  readonly footing: Footing;
}

const club = 'Skagit Valley Beekeepers, newsletter of December 2020, skagitvalleybeekeepers.org';
const csi = 'CSI: dead-out, backyardbeekeepers.com/csi-deadout';
const custom = { source: null, footing: 'common practice, no source' } as const;
const memory = { source: null, footing: 'from memory' } as const;

export const causeRules: readonly CauseRule[] = [
  { cause: 'starvation', all: ['heads-in-cells'], any: ['stores-none', 'stores-away'], weight: 'strong', reason: 'Bees head first in empty cells with no stores in reach: they were licking the last cells clean.', source: club, footing: 'read' },
  { cause: 'starvation', all: ['stores-away'], any: ['cluster-small', 'cluster-large', 'bees-few'], not: ['heads-in-cells'], weight: 'weak', reason: 'The stores were out of the cluster’s reach; in the cold a cluster can starve a hand’s breadth from honey.', source: csi, footing: 'read' },
  { cause: 'starvation', all: ['stores-none'], not: ['heads-in-cells', 'robbed-combs', 'front-fight'], weight: 'weak', reason: 'No stores were left. It may have starved, or others took the stores after it died.', ...custom },
  { cause: 'starvation', all: ['heads-in-cells'], not: ['stores-none', 'stores-away'], weight: 'weak', reason: 'Bees sit head first in cells in any cold cluster; it speaks for starving only where stores were out of reach.', ...memory },
  { cause: 'mites', all: ['mite-frass'], any: ['brood-spotty', 'brood-none', 'brood-solid', 'bees-few', 'bees-none', 'cluster-small'], weight: 'strong', reason: 'White specks on the roofs of brood cells are droppings of mites: the brood was heavily infested, and few bees were left.', ...memory },
  { cause: 'mites', any: ['mite-frass', 'mites-seen', 'wings-deformed'], weight: 'weak', reason: 'Mites, their droppings or deformed wings were seen; how many there were, only a count before winter tells.', source: club, footing: 'read' },
  { cause: 'mites', any: ['bees-none', 'bees-few', 'cluster-small'], all: ['stores-beside'], not: ['queen-missing', 'brood-drone', 'eggs-many', 'front-heap', 'under-water', 'upset'], weight: 'weak', reason: 'Few bees or none and plenty of stores: often a colony that dwindled in autumn from mites and the viruses they carry.', ...custom },
  { cause: 'queen failure', any: ['brood-drone', 'eggs-many'], weight: 'strong', reason: 'Drone brood in worker cells or several eggs in a cell: a queen that laid drones, or workers that laid.', source: 'van der Zee et al. 2013, J Apic Res 52(4), 2.3 (unsolved queen problem)', footing: 'read' },
  { cause: 'queen failure', any: ['queen-missing', 'queen-cells'], not: ['brood-drone', 'eggs-many'], weight: 'weak', reason: 'No queen was found, or the bees had tried to raise one. In a small heap of dead bees a queen is easily missed.', ...custom },
  { cause: 'weak in autumn', all: ['cluster-small'], not: ['mite-frass', 'mites-seen', 'wings-deformed'], weight: 'weak', reason: 'A cluster no bigger than a fist cannot keep itself warm; it was too small before winter, or dwindled in it.', ...custom },
  { cause: 'cold', all: ['cluster-small', 'stores-beside'], weight: 'weak', reason: 'A small cluster died beside its stores: it could not keep warm, or could not move. Why it was small is the real question.', ...custom },
  { cause: 'moisture', all: ['wet'], any: ['mould', 'stores-beside', 'cluster-large'], weight: 'weak', reason: 'Wet bees or water under the lid while stores were left: damp may have chilled the cluster.', ...custom },
  { cause: 'robbing', all: ['robbed-combs', 'front-fight'], weight: 'strong', reason: 'Torn cappings, and bees were seen fighting while it lived: it was robbed out.', ...custom },
  { cause: 'robbing', all: ['robbed-combs'], not: ['front-fight'], weight: 'weak', reason: 'Torn cappings and crumbs of wax: it was robbed, more often after it died than before.', ...custom },
  { cause: 'pesticide', all: ['front-heap'], weight: 'weak', reason: 'A heap in front with tongues out fits poisoning, and starving too. A sample frozen soon and a report to the state office can settle it.', ...memory },
  { cause: 'bear or vandal', all: ['upset'], weight: 'strong', reason: 'The hive was thrown over or broken open.', ...custom },
  { cause: 'flood', all: ['under-water'], weight: 'strong', reason: 'Mud or a water line in the hive: it stood in water.', ...custom },
  { cause: 'disease', all: ['dysentery'], weight: 'weak', reason: 'Brown streaks come of long confinement, bad stores or nosema; without a look through the microscope they cannot be told apart.', source: club, footing: 'read' },
];

export const foulbroodCaution = 'This may be foulbrood, which is notifiable in most places. Close the hive so that no bee can get in, move nothing from it or to it, and call your local bee inspector before doing anything.';
export const foulbroodWhy = 'Dead brood that draws out in a thread, sunken or pierced cappings, scales and a foul smell are signs of it (backyardbeekeepers.com/csi-deadout; the rest from memory). Sunken caps can have other causes; an inspector or a laboratory can tell, a look cannot.';

/** What was seen and speaks for no cause. */
export const silentSigns: Partial<Readonly<Record<DeadOutSign, string>>> = {
  gnawed: 'Mice move into hives that are weak or dead; seldom are they the cause.',
  'moths-after': 'Wax moths and beetles come when nobody guards the combs: they are the end of it, not the beginning.',
  'queen-found': 'The queen was there when it died, so it was not queenless at the end.',
};
