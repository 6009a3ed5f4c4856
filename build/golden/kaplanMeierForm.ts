import type { KaplanMeier } from '#core/stats/kaplanMeier.ts';
import type { Allowed, Path } from './compare.ts';
import { closedForm } from './tolerances.ts';

/** A Kaplan-Meier curve in the words of the golden file. */
export function kaplanMeierForm(curve: KaplanMeier): unknown {
  const { table } = curve;
  return {
    n: curve.n,
    nEvents: curve.losses,
    table: {
      time: table.time,
      nRisk: table.atRisk,
      nEvent: table.lost,
      surv: table.survival,
      se: table.se,
      lowerLogLog: table.lowerLogLog,
      upperLogLog: table.upperLogLog,
      lowerPlain: table.lowerPlain,
      upperPlain: table.upperPlain,
    },
    quantiles: curve.quantiles,
    rmst: curve.restrictedMean,
  };
}

const COUNTS = new Set(['n', 'nEvents', 'nRisk', 'nEvent']);

export function kaplanMeierTolerance(path: Path): Allowed {
  return path.some((step) => typeof step === 'string' && COUNTS.has(step)) ? 'exact' : closedForm;
}
