import { useEffect, useId, useRef, useState, type DragEvent, type KeyboardEvent } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { ColonyRow } from '#shared/contract/colonies.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, missing, number } from '../../parts/format.ts';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { useStandOrder } from './useStandOrder.ts';
import { words } from './words.ts';

/** The colonies of a yard in the order they stand in; a line is moved by dragging it or with Alt and an arrow key. */
export function StandTable({ yard, colonies }: { readonly yard: { readonly id: YardId; readonly name: string }; readonly colonies: readonly ColonyRow[] }) {
  const id = useId();
  const { rows, fault, move } = useStandOrder(yard, colonies);
  const body = useRef<HTMLTableSectionElement>(null);
  const [here, setHere] = useState(0);
  const [dragged, setDragged] = useState<number | null>(null);
  const [over, setOver] = useState<number | null>(null);
  const following = useRef(false);

  // The keyboard goes with the line that was moved, or on to the next one.
  useEffect(() => {
    if (!following.current) return;
    following.current = false;
    body.current?.querySelectorAll<HTMLElement>('tr a')[here]?.focus();
  });
  const goTo = (place: number) => {
    following.current = true;
    setHere(Math.max(0, Math.min(rows.length - 1, place)));
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    const steps: Record<string, number> = { ArrowDown: here + 1, ArrowUp: here - 1, Home: 0, End: rows.length - 1 };
    const to = steps[event.key];
    if (to === undefined) return;
    event.preventDefault();
    if (event.altKey) move(here, to);
    goTo(to);
  };
  const dragProps = (place: number) => ({
    draggable: true,
    onDragStart: (event: DragEvent) => {
      event.dataTransfer.effectAllowed = 'move';
      // Firefox-like engines start no drag without data.
      event.dataTransfer.setData('text/plain', rows[place]?.label ?? '');
      setDragged(place);
    },
    onDragOver: (event: DragEvent) => {
      if (dragged === null) return;
      event.preventDefault();
      setOver(place);
    },
    onDrop: (event: DragEvent) => {
      event.preventDefault();
      if (dragged !== null) {
        move(dragged, place);
        setHere(place);
      }
      setDragged(null);
      setOver(null);
    },
    onDragEnd: () => {
      setDragged(null);
      setOver(null);
    },
  });
  const mark = (place: number) => (dragged === null || over !== place || over === dragged ? '' : over < dragged ? ' drop-above' : ' drop-below');

  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.stand}</h2>
      {rows.length === 0 ? (
        <p className="soft">{words.standNone}</p>
      ) : (
        <>
          {rows.length > 1 ? <p className="soft stand-help">{words.standHelp}</p> : null}
          <FaultNote fault={fault} />
          <table aria-label={words.standTable} className="stand">
            <thead>
              <tr>
                <th scope="col" className="number place">
                  {words.place}
                </th>
                <th scope="col">{words.colony}</th>
                <th scope="col">{words.queen}</th>
                <th scope="col">{words.lastLook}</th>
                <Frames name={words.bees} />
                <Frames name={words.brood} />
                <Frames name={words.stores} />
                <th scope="col" className="number">
                  {words.mites}
                  <br />
                  {words.mitesUnit}
                </th>
                <th scope="col" className="number">
                  {words.supers}
                </th>
              </tr>
            </thead>
            <tbody ref={body} onKeyDown={onKey}>
              {rows.map((row, place) => (
                <tr key={row.id} className={`row-open${dragged === place ? ' dragged' : ''}${mark(place)}`} {...dragProps(place)}>
                  <td className="number soft">{place + 1}</td>
                  <th scope="row">
                    <Link className="yard-name" href={`/colonies/${row.id}`} draggable={false} tabIndex={place === Math.min(here, rows.length - 1) ? 0 : -1} onFocus={() => setHere(place)}>
                      {row.label}
                    </Link>
                  </th>
                  <td>
                    <QueenMark queen={row.queen} />
                  </td>
                  <td>{dayText(row.lastLook)}</td>
                  <td className="number">{number(row.framesBees, 1)}</td>
                  <td className="number">{number(row.framesBrood, 1)}</td>
                  <td className="number">{number(row.framesStores, 1)}</td>
                  <td className="number">{row.mites === null || row.bees === null ? missing : words.mitesIn(row.mites, row.bees)}</td>
                  <td className="number">{number(row.supers)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </section>
  );
}

function Frames({ name }: { readonly name: string }) {
  return (
    <th scope="col" className="number">
      {name}
      <br />
      {words.frames}
    </th>
  );
}
