import type { LossFactors } from '#shared/contract/lossFactors.ts';
import type { Fault } from '#shared/faults.ts';
import { useCalmRead } from '../../desk/useDesk.ts';

export type Scope = LossFactors['scope'];

/** The comparisons of one season's winter, or of all winters that are over. */
export function useFactors(season: number, scope: Scope): { readonly found: LossFactors | undefined; readonly fault: Fault | undefined } {
  const { data: found, fault } = useCalmRead('losses.factors', { season, scope }, { keep: true });
  return { found, fault };
}
