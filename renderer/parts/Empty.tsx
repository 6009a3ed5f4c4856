import type { ReactNode } from 'react';

/** An empty page: one sentence on what will be here, and the one next step. */
export function Empty({ sentence, action }: { readonly sentence: string; readonly action?: ReactNode }) {
  return (
    <div className="empty">
      <p>{sentence}</p>
      {action}
    </div>
  );
}
