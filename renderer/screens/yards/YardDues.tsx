import { useId } from 'react';
import { Link } from 'wouter';
import type { YardId } from '#shared/brands.ts';
import type { YardDue } from '#shared/contract/due.ts';
import { useRead } from '../../desk/useDesk.ts';
import { DueNote } from '../../parts/DueNote.tsx';
import { dueWords as words } from '../../parts/dueWords.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayTight } from '../../parts/format.ts';
import { useMarginNote } from '../../parts/Margin.tsx';

const mostLines = 8;
const mostColonies = 6;

/** What is open in the yard, the soonest first. */
export function YardDues({ id }: { readonly id: YardId }) {
  const heading = useId();
  const { data, fault } = useRead('yard.due', { id });
  const note = useMarginNote();
  // What the yard as a whole needs, and what its dead-outs do, follows from no colony's entry and stands on the Needs page.
  const needed = [...new Set(useRead('needs.list', { yard: id }).data?.lines.filter(({ status, optional }) => status !== 'coming' && !optional).map(({ act }) => act) ?? [])];
  const items = data?.items ?? [];
  return (
    <section aria-labelledby={heading}>
      <h2 id={heading}>{words.yardHeading}</h2>
      <FaultNote fault={fault} />
      {data !== undefined && items.length === 0 ? <p className="soft">{words.yardNone}</p> : null}
      <ol className="lines due-lines">
        {items.slice(0, mostLines).map((item) => (
          <li key={`${item.rule} ${item.reason} ${item.latest} ${item.colonies[0]?.id ?? ''}`} tabIndex={0} {...note(() => <DueNote item={item} />)}>
            <span>{words.range(dayTight(item.earliest), dayTight(item.latest))}</span>
            <span>
              {item.what}
              {item.status === 'overdue' ? <span className="needs">, {words.status.overdue}</span> : item.status === 'coming' ? <span className="soft">, {words.status.coming}</span> : null}
              <Hives colonies={item.colonies} />
              <span className="soft small due-reason">{item.reason}</span>
            </span>
          </li>
        ))}
      </ol>
      {needed.length > 0 ? (
        <p>
          {words.yardNeeds(needed)} <Link href="/needs">{words.toNeeds}</Link>
        </p>
      ) : null}
      {items.length > mostLines ? <p className="soft">{words.more(items.length - mostLines)}</p> : null}
    </section>
  );
}

function Hives({ colonies }: Pick<YardDue, 'colonies'>) {
  if (colonies.length === 0) return null;
  return (
    <>
      {': '}
      {colonies.slice(0, mostColonies).map(({ id, label }, at) => (
        <span key={id}>
          {at > 0 ? ', ' : ''}
          <Link href={`/colonies/${id}`}>
            <bdi>{label}</bdi>
          </Link>
        </span>
      ))}
      {colonies.length > mostColonies ? ` ${words.more(colonies.length - mostColonies)}` : ''}
    </>
  );
}
