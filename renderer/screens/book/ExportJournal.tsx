import { useId, useState } from 'react';
import type { Fault } from '#shared/faults.ts';
import { useOffer } from '../../commands/offers.ts';
import { desk } from '../../desk/deskClient.ts';
import { download } from '../../parts/download.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

export function ExportJournal() {
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>();
  const { say } = useNotice();
  const id = useId();

  const write = async () => {
    setFault(undefined);
    setBusy(true);
    const answer = await desk.call('export.journal', {});
    setBusy(false);
    if (!answer.ok) return setFault(answer);
    download(answer.value.fileName, answer.value.text);
    say(words.exported(counted(answer.value.rows, words.record, words.records), answer.value.fileName));
  };

  useOffer('export', busy ? null : () => void write());

  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.exportHeading}</h2>
      <p className="soft">{words.exportLine}</p>
      <div className="acts">
        <button type="button" disabled={busy} onClick={() => void write()}>
          {words.export}
        </button>
      </div>
      <FaultNote fault={fault} />
    </section>
  );
}
