import type { Day } from '#shared/days.ts';
import { fold, foldedWords } from '#shared/fold.ts';
import { lotOfJar } from '#shared/jarText.ts';
import { compareNames } from '#shared/nameOrder.ts';
import { harvestDays } from '#core/honey/lots/traceLots.ts';
import type { Lot } from '#core/honey/lots/lotBook.ts';
import { bestOf } from './bestOf.ts';
import { matchRank } from './matchRank.ts';

export interface LotFound {
  readonly lot: Lot;
  /** Its first harvest, or what came in first where it has none of its own. */
  readonly from: Day;
  /** Its last harvest. */
  readonly until: Day | null;
  readonly left: boolean;
}

/** Below this it is what rounding left: half a gram. */
const nothing = 0.5;

/** Lots by name, and by all that the code on a jar holds: the best fit first, those with honey left before those gone, the later first. "Lot" alone is all of them. */
export function findLots(lots: Iterable<Lot>, text: string, limit: number): { rows: LotFound[]; total: number } {
  const asked = [foldedWords(text), foldedWords(lotOfJar(text))];
  const fitting = function* () {
    for (const lot of lots) {
      const ranks = asked.map((words) => matchRank(fold(lot.code), words)).filter((rank) => rank !== null);
      const [first, until] = harvestDays(lot.harvests);
      const from = first ?? lot.events[0]?.day;
      if (ranks.length === 0 || from === undefined) continue;
      const left = lot.account.bulk > nothing || [...lot.jars.values()].some(({ filled, sold }) => filled > sold);
      yield { lot, from, until, left, rank: Math.min(...ranks) };
    }
  };
  return bestOf(fitting(), limit, (a, b) => a.rank - b.rank || Number(b.left) - Number(a.left) || (a.from < b.from ? 1 : a.from > b.from ? -1 : compareNames(a.lot.code, b.lot.code)));
}
