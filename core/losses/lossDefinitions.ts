import type { AtRiskAndLost } from '#core/stats/atRiskAndLost.ts';

/**
 * What happened to the colonies of one unit (a yard, or the whole operation) in one period. Whole numbers of
 * colonies. `given` = given away, `combined` = united into another colony, `queen` = lost to a queen problem
 * that could not be solved, `disaster` = lost to theft, fire, flood and the like, `dead` = every other loss.
 * `movedIn` and `movedOut` are moves between units; `absconded` colonies count as dead.
 */
export interface UnitCounts {
  readonly unit: string;
  readonly start: number;
  readonly splits: number;
  readonly purchased: number;
  readonly swarms: number;
  readonly movedIn?: number;
  readonly sold: number;
  readonly given: number;
  readonly movedOut?: number;
  readonly combined: number;
  readonly dead: number;
  readonly queen: number;
  readonly disaster: number;
  readonly absconded?: number;
  readonly end: number;
}

/** Colonies that joined the unit in the period. */
export function increases(unit: UnitCounts): number {
  return unit.splits + unit.purchased + unit.swarms + (unit.movedIn ?? 0);
}

/** Colonies that left the unit alive, not counting united ones. */
export function removed(unit: UnitCounts): number {
  return unit.sold + unit.given + (unit.movedOut ?? 0);
}

/** Colonies recorded as lost, whatever the cause; united ones are not among them. */
export function recordedLosses(unit: UnitCounts): number {
  return unit.dead + (unit.absconded ?? 0) + unit.queen + unit.disaster;
}

/** The number of colonies that should stand at the end if every count is right. */
export function expectedEnd(unit: UnitCounts): number {
  return unit.start + increases(unit) - removed(unit) - unit.combined - recordedLosses(unit);
}

/**
 * US national survey rule: at risk = start + increases - removed, lost = at risk - end. A united colony is
 * neither removed nor there at the end, so it counts as lost.
 * Source: vanEngelsdorp et al. 2013, J Apic Res 52, doi 10.3896/IBRA.1.52.4.15 (total colony loss). Swarms
 * caught are not named there; they are treated like a purchase, and a move like a purchase or a sale.
 */
export function usLoss(unit: UnitCounts): AtRiskAndLost {
  const atRisk = unit.start + increases(unit) - removed(unit);
  return { atRisk, lost: atRisk - unit.end };
}

/** As `usLoss`, but a united colony is taken out like a sale: neither at risk nor lost. */
export function usLossCombinedAsRemoval(unit: UnitCounts): AtRiskAndLost {
  return {
    atRisk: unit.start + increases(unit) - removed(unit) - unit.combined,
    lost: recordedLosses(unit),
  };
}

/**
 * COLOSS winter loss: lost = dead or empty + unsolvable queen problem + natural disaster, out of the colonies
 * wintered. Only meaningful while `populationUnchanged` holds, or for counts of the wintered cohort alone.
 * Source: van der Zee et al. 2013, J Apic Res 52(4), doi 10.3896/IBRA.1.52.4.18, section 2.3.
 */
export function colossLoss(unit: UnitCounts): AtRiskAndLost {
  return { atRisk: unit.start, lost: recordedLosses(unit) };
}

/** True if no colony was made, bought, caught, sold, given, moved or united: the COLOSS rule may be used. */
export function populationUnchanged(unit: UnitCounts): boolean {
  return increases(unit) === 0 && removed(unit) === 0 && unit.combined === 0;
}

/** Sentences that say what is wrong with the counts of a unit; empty when they are whole and balance. */
export function faultsInCounts(unit: UnitCounts): readonly string[] {
  const faults: string[] = [];
  for (const [name, count] of Object.entries(unit)) {
    if (typeof count === 'number' && !(Number.isSafeInteger(count) && count >= 0)) {
      faults.push(`${unit.unit}: ${name} is ${count}; give a whole number of colonies, 0 or more.`);
    }
  }
  const expected = expectedEnd(unit);
  if (faults.length === 0 && expected !== unit.end) {
    faults.push(
      `${unit.unit}: the counts lead to ${expected} colonies at the end, but ${unit.end} are given; ` +
        `enter what is missing, or correct the count at the end.`,
    );
  }
  return faults;
}
