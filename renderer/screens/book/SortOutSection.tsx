import { useId } from 'react';
import { Link } from 'wouter';
import { useRead } from '../../desk/useDesk.ts';
import { words } from './words.ts';

/** How many rows of imported files wait, with the way to them. */
export function SortOutSection() {
  const { data } = useRead('sortOut.counts', {});
  const id = useId();
  if (data === undefined) return null;
  return (
    <section className="section" aria-labelledby={id}>
      <h2 id={id}>{words.sortHeading}</h2>
      <p className={data.waiting > 0 ? 'needs' : 'soft'}>{words.sortCounts(data.waiting, data.ready, data.aside)}</p>
      {data.waiting + data.aside + data.entered === 0 ? null : (
        <p>
          <Link href="/book/sort-out">{words.sortThem}</Link>
        </p>
      )}
    </section>
  );
}
