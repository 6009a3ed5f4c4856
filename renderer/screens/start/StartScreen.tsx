import type { BookStatus } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { Page } from '../../parts/Page.tsx';
import { useWrite } from '../../desk/useDesk.ts';

export function StartScreen({ status, fault }: { readonly status: BookStatus | undefined; readonly fault: Fault | undefined }) {
  const demo = useWrite('book.demo');
  return (
    <main id="page">
      <Page title="Outyard" line={status?.folder ?? ''}>
        <FaultNote fault={fault} />
        <button type="button" disabled={demo.busy} onClick={() => void demo.send({ which: 'ossar' })}>
          Open the demo book
        </button>
      </Page>
    </main>
  );
}
