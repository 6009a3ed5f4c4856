import { useState } from 'react';
import type { United } from '#shared/contract/values.ts';
import { fromStore, toStore } from '../../parts/theme.ts';

const key = 'outyard.united';

/** How united colonies count, as last chosen on this machine; the rule of the surveys until chosen otherwise. */
export function useUnited(): [United, (united: United) => void] {
  const [united, setUnited] = useState<United>(() => (fromStore(key) === 'takenOut' ? 'takenOut' : 'lost'));
  return [
    united,
    (next) => {
      toStore(key, next);
      setUnited(next);
    },
  ];
}
