import { useEffect, type ReactNode } from 'react';
import { Link } from 'wouter';
import type { Fault } from '#shared/faults.ts';
import { FaultNote } from './FaultNote.tsx';
import './paperPage.css';

interface PaperPageProps {
  /** The file's name when the page is printed into one. */
  readonly title: string;
  readonly className?: string;
  readonly print: string;
  /** Whether there is anything to print. */
  readonly ready: boolean;
  readonly backTo: string;
  readonly back: string;
  /** Beside the button. */
  readonly choices?: ReactNode;
  readonly fault?: Fault | undefined;
  readonly children: ReactNode;
}

/** A page to be printed, with what stands above it on the screen alone. */
export function PaperPage({ title, className = '', print, ready, backTo, back, choices, fault, children }: PaperPageProps) {
  useEffect(() => {
    document.title = title;
  }, [title]);
  return (
    <main className={`paper-page ${className}`.trim()}>
      <div className="paper-acts no-print">
        {ready ? (
          <button type="button" className="main" onClick={() => window.print()}>
            {print}
          </button>
        ) : null}
        {choices}
        <Link href={backTo}>{back}</Link>
      </div>
      <FaultNote fault={fault} />
      {children}
    </main>
  );
}
