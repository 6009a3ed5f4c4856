import { useId, useState, type FormEvent } from 'react';
import type { BookStatus } from '#shared/contract/book.ts';
import type { Fault } from '#shared/faults.ts';
import { useWrite } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { words } from './words.ts';

/** The books in the folder, and one elsewhere by its path. */
export function OpenBook({ folder, books }: Pick<BookStatus, 'folder' | 'books'>) {
  const opening = useWrite('book.open');
  const [path, setPath] = useState('');
  const [fault, setFault] = useState<Fault | undefined>();
  const [empty, setEmpty] = useState(false);
  const field = useId();

  const open = async (where: string) => {
    setFault(undefined);
    const answer = await opening.send({ path: where });
    if (!answer.ok) setFault(answer);
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const typed = path.trim();
    setEmpty(typed === '');
    if (typed !== '') void open(typed);
  };

  return (
    <section className="section">
      <h2>{words.openHeading}</h2>
      <p className="soft">{books.length > 0 ? words.openIn(folder) : words.openNone(folder)}</p>
      <ul className="books">
        {books.map((book) => (
          <li key={book.path}>
            <button type="button" className="link" disabled={opening.busy} onClick={() => void open(book.path)}>
              {book.name}
            </button>
            <span className="soft">{words.changed(book.modified)}</span>
          </li>
        ))}
      </ul>
      <FaultNote fault={fault} />
      <form onSubmit={submit} className="one-field" noValidate>
        <div className="field">
          <label htmlFor={field}>{words.pathLabel}</label>
          <input
            id={field}
            type="text"
            value={path}
            aria-invalid={empty}
            aria-describedby={empty ? `${field}-fault` : undefined}
            onChange={(event) => setPath(event.target.value)}
          />
        </div>
        <button type="submit" disabled={opening.busy}>
          {words.openPath}
        </button>
      </form>
      {empty ? (
        <p className="field-fault" id={`${field}-fault`} role="alert">
          {words.pathFirst}
        </p>
      ) : null}
      {opening.busy ? <p role="status">{words.opening}</p> : null}
    </section>
  );
}
