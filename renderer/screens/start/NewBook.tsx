import { useId, useState, type FormEvent } from 'react';
import { navigate } from 'wouter/use-hash-location';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { handOver, takeOver } from '../book/handover.ts';
import { words } from './words.ts';

/** An empty book; it opens on the Book screen, where its yards are written down. */
export function NewBook() {
  const create = useWrite('book.create');
  const [name, setName] = useState('');
  const [fault, setFault] = useState<Fault | undefined>();
  const [lacking, setLacking] = useState(false);
  const field = useId();

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setFault(undefined);
    setLacking(name.trim() === '');
    if (name.trim() === '') return;
    navigate('/book');
    const answer = await create.send({ name });
    if (!answer.ok) setFault(answer);
  };

  return (
    <section className="section">
      <h2>{words.startHeading}</h2>
      <p className="soft">{words.startLine}</p>
      <form onSubmit={(event) => void submit(event)} className="one-field" noValidate>
        <NameField id={field} name={name} lacking={lacking} onChange={setName} />
        <button type="submit" className="main" disabled={create.busy}>
          {words.start}
        </button>
      </form>
      <Lacking show={lacking} id={`${field}-fault`} sentence={words.nameFirst} />
      <FaultNote fault={fault} />
    </section>
  );
}

/** A new book named by the person; its Book screen then shows the preview of the chosen file. */
export function ImportStart() {
  const create = useWrite('book.create');
  const [name, setName] = useState('');
  const [file, setFile] = useState<File | null>(null);
  const [fault, setFault] = useState<Fault | undefined>();
  const [asked, setAsked] = useState(false);
  const field = useId();
  const nameLacks = asked && name.trim() === '';
  const fileLacks = asked && file === null;

  const submit = async (event: FormEvent) => {
    event.preventDefault();
    setFault(undefined);
    setAsked(true);
    if (file === null || name.trim() === '') return;
    handOver(file);
    navigate('/book');
    const answer = await create.send({ name });
    if (answer.ok) return;
    takeOver();
    setFault(answer);
  };

  return (
    <section className="section">
      <h2>{words.importHeading}</h2>
      <p className="soft">{words.importLine}</p>
      <form onSubmit={(event) => void submit(event)} className="stacked" noValidate>
        <div className="field">
          <label htmlFor={`${field}-file`}>{words.importFile}</label>
          <input
            id={`${field}-file`}
            type="file"
            accept=".csv,text/csv"
            aria-invalid={fileLacks}
            aria-describedby={fileLacks ? `${field}-file-fault` : undefined}
            onChange={(event) => setFile(event.target.files?.[0] ?? null)}
          />
        </div>
        <Lacking show={fileLacks} id={`${field}-file-fault`} sentence={words.fileFirst} />
        <NameField id={field} name={name} lacking={nameLacks} onChange={setName} />
        <Lacking show={nameLacks} id={`${field}-fault`} sentence={words.nameFirst} />
        <div>
          <button type="submit" disabled={create.busy}>
            {words.import}
          </button>
        </div>
      </form>
      <FaultNote fault={fault} />
    </section>
  );
}

function NameField(props: { readonly id: string; readonly name: string; readonly lacking: boolean; readonly onChange: (name: string) => void }) {
  const { id, name, lacking, onChange } = props;
  return (
    <div className="field">
      <label htmlFor={id}>{words.nameLabel}</label>
      <input
        id={id}
        type="text"
        maxLength={80}
        value={name}
        aria-invalid={lacking}
        aria-describedby={lacking ? `${id}-fault` : undefined}
        onChange={(event) => onChange(event.target.value)}
      />
    </div>
  );
}

function Lacking({ show, id, sentence }: { readonly show: boolean; readonly id: string; readonly sentence: string }) {
  return show ? (
    <p className="field-fault" id={id} role="alert">
      {sentence}
    </p>
  ) : null;
}
