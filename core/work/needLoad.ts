import type { Need, NeedKey } from '#shared/contract/needs.ts';
import type { WorkTask } from '#shared/contract/work.ts';
import { tools, treatmentItem } from '#shared/loadWords.ts';

/** What a rule of the list of needs does not say itself of what its work takes. `each`: for every colony, else once for the visit. */
type Takes = { readonly item: string; readonly each: boolean } | 'treatment';

/** Every rule stands here, so that a new one is asked what it takes. */
const takes: Readonly<Record<NeedKey, readonly Takes[]>> = {
  walkAwayLaying: [], newQueenLaying: [], queenlessLaying: [], swarmCellsLook: [], swarmRisk: [], noEggs: [], look: [], heft: [],
  treatmentOff: [{ item: tools.stripBag, each: false }],
  miteRecount: [{ item: tools.washKit, each: false }],
  mitesCount: [{ item: tools.washKit, each: false }],
  mitesSoon: [{ item: tools.washKit, each: false }],
  mitesOver: ['treatment'],
  winterBees: ['treatment'],
  supersOff: [{ item: tools.escape, each: false }],
  harvest: [{ item: tools.escape, each: false }],
  storesAutumn: [], storesWinter: [], addBox: [], splitBy: [], requeen: [], weakAutumn: [], winterList: [],
  deadOut: [{ item: 'screen or board for closing an entrance', each: true }],
  renewal: [], orders: [], mend: [],
};

/** What needs of one kind take along. `colonies`: how many it is about; `fitting`: the ingredients that fit there then. */
export function loadOf(group: readonly Need[], colonies: () => number, fitting: () => readonly string[]): WorkTask['bring'] {
  const found = new Map<string, number>();
  for (const { bring } of group) {
    for (const { item, count, unit, each } of bring) {
      // A task counts things; what is measured is counted in its measure.
      const thing = unit === '' ? item : `${unit} of ${item}`;
      found.set(thing, each ? (found.get(thing) ?? 0) + count : Math.max(found.get(thing) ?? 0, count));
    }
  }
  const [first] = group;
  for (const taken of first === undefined ? [] : takes[first.rule]) {
    if (taken === 'treatment') found.set(treatmentItem(fitting()), colonies());
    else if (!found.has(taken.item)) found.set(taken.item, taken.each ? group.length : 1);
  }
  return [...found].map(([item, count]) => ({ item, count }));
}
