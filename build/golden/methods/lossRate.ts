import { z } from 'zod';
import type { UnitCounts } from '#core/losses/lossDefinitions.ts';
import { lossRates, type LossRate } from '#core/losses/lossRate.ts';
import { AnyOf } from '../compare.ts';
import type { GoldenMethod } from '../goldenMethod.ts';
import { proportionForm, proportionTolerance } from '../proportionForm.ts';

const counts = z.array(z.number());
const input = z.object({
  units: z.object({
    unit: z.array(z.union([z.string(), z.number()])),
    start: counts,
    splits: counts,
    purchased: counts,
    swarms: counts,
    sold: counts,
    given: counts,
    combined: counts,
    dead: counts,
    queen: counts,
    disaster: counts,
    end: counts,
  }),
});

const COUNTS = new Set(['atRisk', 'lost', 'totalAtRisk', 'totalLost', 'units', 'df']);

export const lossRate: GoldenMethod = {
  method: 'lossRate',
  compute: (given) => {
    const rates = lossRates(unitsOf(input.parse(given).units));
    return {
      us: lossRateForm(rates.us),
      usCombinedAsRemoval: lossRateForm(rates.usCombinedAsRemoval),
      ...(rates.coloss !== null && { coloss: { ...rates.coloss, ...lossRateForm(rates.coloss) } }),
    };
  },
  tolerance: (path) =>
    path.some((step) => typeof step === 'string' && COUNTS.has(step)) ? 'exact' : proportionTolerance(path),
};

function unitsOf({ unit, ...columns }: z.infer<typeof input>['units']): readonly UnitCounts[] {
  const at = (column: keyof typeof columns, row: number): number => {
    const value = columns[column][row];
    if (value === undefined) throw new Error(`units: ${column} has no row ${row}`);
    return value;
  };
  return unit.map((name, row) => ({
    unit: String(name),
    start: at('start', row),
    splits: at('splits', row),
    purchased: at('purchased', row),
    swarms: at('swarms', row),
    sold: at('sold', row),
    given: at('given', row),
    combined: at('combined', row),
    dead: at('dead', row),
    queen: at('queen', row),
    disaster: at('disaster', row),
    end: at('end', row),
  }));
}

function lossRateForm(rate: LossRate): Readonly<Record<string, unknown>> {
  return {
    ...rate,
    quasi: quasiForm(rate),
    total: proportionForm(rate.total),
    perUnit: rate.perUnit.map(proportionForm),
  };
}

/** With one unit and nothing (or everything) lost both reasons hold, and the file may name either. */
function quasiForm({ quasi, totalLost, totalAtRisk }: LossRate): unknown {
  if (quasi.defined || (totalLost !== 0 && totalLost !== totalAtRisk)) return quasi;
  return new AnyOf([quasi, { defined: false, reason: 'total loss is 0 or 1, logit not finite' }]);
}
