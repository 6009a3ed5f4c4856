import { useEffect, useId, useRef, useState } from 'react';
import type { YardRow } from '#shared/contract/book.ts';
import { number } from '../../parts/format.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { words } from './words.ts';
import { YardLine } from './YardLine.tsx';

/** The yards of the operation; one at a time is changed in its own row. */
export function Yards({ yards }: { readonly yards: readonly YardRow[] }) {
  const [changing, setChanging] = useState<number | 'new' | null>(null);
  const section = useRef<HTMLElement>(null);
  const left = useRef<number | 'new' | null>(null);
  const marginProps = useMarginNote();
  const id = useId();
  const done = () => {
    left.current = changing;
    setChanging(null);
  };
  // The line that held the keyboard is gone; it is where it came from, so that the next yard is one press away.
  useEffect(() => {
    if (changing !== null || left.current === null) return;
    section.current?.querySelector<HTMLElement>(`[data-opens="${left.current}"]`)?.focus();
    left.current = null;
  }, [changing]);
  const room = yards.reduce((sum, yard) => sum + (yard.room ?? 0), 0);
  const allKnown = yards.every((yard) => yard.room !== null);

  return (
    <section
      ref={section}
      className="section"
      aria-labelledby={id}
      {...marginProps(
        <MarginPart heading={words.marginYard}>
          <p>{words.marginYardText}</p>
          <p className="soft">{words.unknown}</p>
        </MarginPart>,
      )}
    >
      <h2 id={id}>{words.yardsHeading}</h2>
      {yards.length === 0 && changing === null ? <p>{words.yardsNone}</p> : null}
      {yards.length > 0 || changing === 'new' ? (
        <table aria-labelledby={id} className="yards">
          <thead>
            <tr>
              <th scope="col" className="code">
                {words.code}
              </th>
              <th scope="col">{words.yard}</th>
              <th scope="col" className="number">
                {words.room}
              </th>
              <th scope="col" className="number">
                {words.minutes}
              </th>
              <th scope="col" className="number">
                {words.living}
              </th>
              <td />
            </tr>
          </thead>
          <tbody>
            {yards.map((yard) =>
              changing === yard.id ? (
                <YardLine key={yard.id} yard={yard} onDone={done} />
              ) : (
                <tr key={yard.id}>
                  <th scope="row">{yard.code}</th>
                  <td>{yard.name}</td>
                  <td className="number">{number(yard.room)}</td>
                  <td className="number">{number(yard.minutes)}</td>
                  <td className="number">{number(yard.living)}</td>
                  <td className="number">
                    <button type="button" className="link" data-opens={yard.id} aria-label={words.changeYard(yard.name)} onClick={() => setChanging(yard.id)}>
                      {words.change}
                    </button>
                  </td>
                </tr>
              ),
            )}
            {changing === 'new' ? <YardLine onDone={done} /> : null}
          </tbody>
          {yards.length > 1 ? (
            <tfoot>
              <tr>
                <th scope="row" colSpan={2}>
                  {words.allYards}
                </th>
                <td className="number">{allKnown ? number(room) : number(null)}</td>
                <td />
                <td className="number">{number(yards.reduce((sum, yard) => sum + yard.living, 0))}</td>
                <td />
              </tr>
            </tfoot>
          ) : null}
        </table>
      ) : null}
      {changing === 'new' ? null : (
        <div className="acts">
          <button type="button" data-opens="new" onClick={() => setChanging('new')}>
            {words.addYard}
          </button>
        </div>
      )}
    </section>
  );
}
