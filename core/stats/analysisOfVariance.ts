import type { GroupOfValues } from './groupedValues.ts';
import { meanOf, squaresAround } from './meanInterval.ts';
import { fUpperTail } from './tailProbabilities.ts';

/** Sums of squares within and between groups; mean squares are null without degrees of freedom. */
export interface VarianceComponents {
  readonly groups: number;
  readonly n: number;
  readonly grandMean: number;
  readonly ssWithin: number;
  readonly ssBetween: number;
  readonly dfWithin: number;
  readonly dfBetween: number;
  readonly msWithin: number | null;
  readonly msBetween: number | null;
}

export interface FTest {
  readonly F: number;
  readonly df1: number;
  readonly df2: number;
  readonly p: number;
}

/** Splits the variance of all values into within and between groups. Null without a value. */
export function varianceComponents(groups: readonly GroupOfValues[]): VarianceComponents | null {
  const all = groups.flatMap(({ values }) => values);
  if (all.length === 0) return null;
  const grandMean = meanOf(all);
  const means = groups.map(({ values }) => meanOf(values));
  const ssWithin = groups.reduce((sum, { values }, g) => sum + squaresAround(values, means[g] as number), 0);
  const ssBetween = groups.reduce((sum, { values }, g) => sum + values.length * ((means[g] as number) - grandMean) ** 2, 0);
  const dfWithin = all.length - groups.length;
  const dfBetween = groups.length - 1;
  return {
    groups: groups.length,
    n: all.length,
    grandMean,
    ssWithin,
    ssBetween,
    dfWithin,
    dfBetween,
    msWithin: dfWithin > 0 ? ssWithin / dfWithin : null,
    msBetween: dfBetween > 0 ? ssBetween / dfBetween : null,
  };
}

/** One-way analysis of variance (Fisher 1925): do group means differ? Null with one group, or one value a group. */
export function analysisOfVariance(groups: readonly GroupOfValues[]): FTest | null {
  const parts = varianceComponents(groups);
  if (parts === null || parts.msWithin === null || parts.msBetween === null || parts.msWithin === 0) return null;
  const F = parts.msBetween / parts.msWithin;
  return { F, df1: parts.dfBetween, df2: parts.dfWithin, p: fUpperTail(F, parts.dfBetween, parts.dfWithin) };
}
