import type { ReactNode } from 'react';
import { useLocation } from 'wouter';
import { useOffer } from '../commands/offers.ts';
import { AsOfBar } from './AsOfBar.tsx';
import { FaultBoundary } from './FaultBoundary.tsx';
import { Margin, OpenMargin, useFold, useFreshMargin } from './Margin.tsx';
import { Rail } from './Rail.tsx';
import { useUndoKeys } from './useUndoKeys.ts';
import { words } from './words.ts';

/** Rail, page and margin. */
export function Frame({ children }: { readonly children: ReactNode }) {
  const [fold, setFold] = useFold();
  const [location] = useLocation();
  useFreshMargin(location);
  useUndoKeys();
  // What a fold of `auto` looks like is the style sheet's to say: the margin is asked whether it is seen.
  useOffer('fold the margin', () => setFold(isMarginSeen() ? 'folded' : 'open'));
  return (
    <div className={`frame fold-${fold}`}>
      <a
        className="skip"
        href="#page"
        onClick={(event) => {
          // The address is the screen's; the jump is made by hand.
          event.preventDefault();
          document.getElementById('page')?.focus();
        }}
      >
        {words.skip}
      </a>
      <Rail />
      <main id="page" tabIndex={-1}>
        <AsOfBar />
        <OpenMargin onFold={setFold} />
        <FaultBoundary key={location}>{children}</FaultBoundary>
      </main>
      <Margin onFold={setFold} />
    </div>
  );
}

function isMarginSeen(): boolean {
  const margin = document.querySelector('aside.margin');
  return margin !== null && getComputedStyle(margin).display !== 'none';
}
