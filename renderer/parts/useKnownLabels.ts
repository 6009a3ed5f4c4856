import { useMemo } from 'react';
import { useRead } from '../desk/useDesk.ts';
import { byLabel } from './searchText.ts';

/** The labels of all colonies, living and ended, each once. */
export function useKnownLabels(): readonly string[] {
  const { data } = useRead('colonies.list', { which: 'all' });
  return useMemo(() => [...new Set((data?.rows ?? []).map(({ label }) => label))].sort(byLabel), [data]);
}
