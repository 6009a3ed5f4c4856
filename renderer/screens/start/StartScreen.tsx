import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { BookStatus } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { Page } from '../../parts/Page.tsx';
import { ThemeSwitch } from '../../parts/ThemeSwitch.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { ImportStart, NewBook } from './NewBook.tsx';
import { OpenBook } from './OpenBook.tsx';
import { words } from './words.ts';

/** Before any book is open; also when the last one could not be. */
export function StartScreen({ status, fault }: { readonly status: BookStatus | undefined; readonly fault: Fault | undefined }) {
  const client = useQueryClient();
  return (
    <main id="page" className="start" tabIndex={-1}>
      <Page title={frameWords.product} line={words.line}>
        <FaultNote fault={fault} />
        {status ? (
          <div className="pair">
            <div>
              <OpenBook folder={status.folder} books={status.books} />
              <Demo />
            </div>
            <div>
              <NewBook />
              <ImportStart />
            </div>
          </div>
        ) : (
          <button type="button" onClick={() => void client.invalidateQueries()}>
            {words.again}
          </button>
        )}
        <p className="start-foot soft">
          <ThemeSwitch />
        </p>
      </Page>
    </main>
  );
}

function Demo() {
  const demo = useWrite('book.demo');
  const [fault, setFault] = useState<Fault | undefined>();
  const open = async (which: 'ossar' | 'tiny') => {
    setFault(undefined);
    const answer = await demo.send({ which });
    if (!answer.ok) setFault(answer);
  };
  return (
    <section className="section">
      <h2>{words.demoHeading}</h2>
      <p className="soft">{words.demoLine}</p>
      <div className="acts">
        <button type="button" disabled={demo.busy} onClick={() => void open('ossar')}>
          {words.demoOssar}
        </button>
        <span className="soft">{words.demoOssarLine}</span>
      </div>
      <div className="acts">
        <button type="button" disabled={demo.busy} onClick={() => void open('tiny')}>
          {words.demoTiny}
        </button>
        <span className="soft">{words.demoTinyLine}</span>
      </div>
      {demo.busy ? <p role="status">{words.opening}</p> : null}
      <FaultNote fault={fault} />
    </section>
  );
}
