import type { ReactNode } from 'react';
import type { Fault } from '#shared/faults.ts';
import './behind.css';
import { FaultNote } from './FaultNote.tsx';

interface BehindSectionProps {
  readonly title: string;
  readonly close: string;
  readonly onClose: () => void;
  readonly fault: Fault | undefined;
  readonly children: ReactNode;
}

/** What lies behind an opened figure, with a way to close it again. */
export function BehindSection({ title, close, onClose, fault, children }: BehindSectionProps) {
  return (
    <section className="behind" aria-label={title} aria-live="polite">
      <div className="behind-head">
        <h3>{title}</h3>
        <button type="button" className="link no-print" onClick={onClose}>
          {close}
        </button>
      </div>
      <FaultNote fault={fault} />
      {children}
    </section>
  );
}

/** The table of it, which scrolls within its own place. */
export function BehindTable({ title, children, more }: { readonly title: string; readonly children: ReactNode; readonly more?: ReactNode }) {
  return (
    <div className="scroll behind-list" tabIndex={0} role="group" aria-label={title}>
      <table className="tight">
        <caption className="visually-hidden">{title}</caption>
        {children}
      </table>
      {more}
    </div>
  );
}
