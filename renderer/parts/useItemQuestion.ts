import { useRef, useState } from 'react';
import type { NearItem } from '#shared/contract/nearItems.ts';
import { desk } from '../desk/deskClient.ts';

export interface ItemQuestions {
  /** What is asked now; null where nothing is. */
  readonly found: NearItem | null;
  /** Asks about an item as typed, once for as long as the form stands; false where it is known or was said to be new. */
  asks(typed: string): Promise<boolean>;
  /** Says that the item asked about is a new one. */
  isNew(): void;
  drop(): void;
}

/** Before a form enters an item: whether it may be another one misspelt. */
export function useItemQuestion(): ItemQuestions {
  const [found, setFound] = useState<NearItem | null>(null);
  const meant = useRef(new Set<string>());
  const asking = useRef(false);
  return {
    found,
    asks: async (typed) => {
      if (typed.trim() === '') return false;
      // A second press while the first is under way must not enter it twice.
      if (asking.current) return true;
      asking.current = true;
      const answer = await desk.call('stock.nearItem', { item: typed });
      asking.current = false;
      // What cannot be asked is no reason not to enter it; the desk says itself what is wrong.
      const open = answer.ok && answer.value.found !== null && !meant.current.has(answer.value.found.item) ? answer.value.found : null;
      setFound(open);
      return open !== null;
    },
    isNew: () => {
      if (found !== null) meant.current.add(found.item);
      setFound(null);
    },
    drop: () => setFound(null),
  };
}
