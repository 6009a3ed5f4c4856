import type { ReactNode } from 'react';
import { useLocation } from 'wouter';
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
        <OpenMargin onFold={setFold} />
        <FaultBoundary key={location}>{children}</FaultBoundary>
      </main>
      <Margin onFold={setFold} />
    </div>
  );
}
