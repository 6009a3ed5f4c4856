import type { Grams } from '#shared/brands.ts';
import type { LotLine } from '#shared/contract/lots.ts';
import { weighedTooHeavy } from '#shared/lotScale.ts';
import { massIn, roundTo, type MassUnit } from '#shared/units.ts';
import { csvText } from '../../parts/csv.ts';
import { words } from './words.ts';

/** Whether a lot's account adds up, in a word. */
export function accountWord({ troubles, account, weighed }: LotLine): string {
  if (troubles.length > 0 || account.bulk < -0.5) return words.broken;
  if (weighedTooHeavy(account)) return words.tooHeavy;
  return weighed ? words.balances : words.notWeighed;
}

/** A line for each lot, masses in the book's unit. */
export function lotsCsv(lots: readonly LotLine[], unit: MassUnit): string {
  const mass = (grams: number) => roundTo(massIn(grams as Grams, unit), 2);
  const head = ['lot', 'harvested_from', 'harvested_until', 'yards', `gross_${unit}`, `tare_${unit}`, `net_${unit}`, `poured_in_${unit}`, `scale_difference_${unit}`, `dried_${unit}`, `poured_out_${unit}`, `filled_${unit}`, `lost_${unit}`, `sold_bulk_${unit}`, `left_over_${unit}`, 'water_percent', 'jars_filled', 'jars_sold', 'account'];
  return csvText(
    head,
    lots.map((lot) => {
      const a = lot.account;
      return [
        lot.code, lot.from, lot.until, lot.yards.join('; '), ...[a.gross, a.tare, a.harvested, a.pouredIn, a.difference, a.dried, a.pouredOut, a.filled, a.lost, a.soldBulk, a.bulk].map(mass), lot.water === null ? null : roundTo(lot.water, 2),
        lot.jars.reduce((sum, one) => sum + one.filled, 0), lot.jars.reduce((sum, one) => sum + one.sold, 0), accountWord(lot),
      ];
    }),
  );
}
