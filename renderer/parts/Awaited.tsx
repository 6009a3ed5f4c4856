import type { ReactNode } from 'react';

/** What still answers the question before: paler, and said to be so, until the answer to the one that stands above it is there. */
export function Awaited({ stale, children }: { readonly stale: boolean; readonly children: ReactNode }) {
  return (
    <div className={stale ? 'stale' : undefined} aria-busy={stale}>
      {children}
    </div>
  );
}
