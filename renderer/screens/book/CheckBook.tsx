import { useId, useState } from 'react';
import type { OutputOf } from '#shared/contract/contract.ts';
import type { Fault } from '#shared/faults.ts';
import { useOffer } from '../../commands/offers.ts';
import { desk } from '../../desk/deskClient.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { counted } from '../../parts/format.ts';
import { words } from './words.ts';

export function CheckBook() {
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<Fault | undefined>();
  const [found, setFound] = useState<OutputOf<'book.check'> | undefined>();
  const id = useId();

  const check = async () => {
    setFault(undefined);
    setFound(undefined);
    setBusy(true);
    const answer = await desk.call('book.check', {});
    setBusy(false);
    if (answer.ok) setFound(answer.value);
    else setFault(answer);
  };

  useOffer('check', busy ? null : () => void check());

  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.checkHeading}</h2>
      <p className="soft">{words.checkLine}</p>
      <div className="acts">
        <button type="button" disabled={busy} onClick={() => void check()}>
          {words.check}
        </button>
      </div>
      <div role="status">
        {busy ? <p>{words.checkBusy}</p> : null}
        {found ? <Finding found={found} /> : null}
      </div>
      <FaultNote fault={fault} />
    </section>
  );
}

function Finding({ found }: { readonly found: OutputOf<'book.check'> }) {
  if (found.sound && found.refoldEqual) return <p className="said">{words.sound(counted(found.entries, 'entry', 'entries'))}</p>;
  return (
    <div className="fault-note">
      <p>{words.notSound}</p>
      {found.refoldEqual ? null : <p>{words.refoldDiffers}</p>}
      <ul>
        {found.findings.map((finding) => (
          <li key={finding}>{finding}</li>
        ))}
      </ul>
    </div>
  );
}
