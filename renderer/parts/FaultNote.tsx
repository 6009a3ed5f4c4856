import type { Fault } from '#shared/faults.ts';

/** What the desk refused, in its own words, and what would mend it. */
export function FaultNote({ fault }: { readonly fault: Fault | undefined }) {
  if (!fault) return null;
  return (
    <div className="fault-note" role="alert">
      <p>{fault.sentence}</p>
      {fault.mend ? <p>{fault.mend}</p> : null}
    </div>
  );
}
