import { useId } from 'react';
import { Link } from 'wouter';
import { entryForms } from '#shared/entryForms.ts';
import type { YardPage, YardVisit } from '#shared/contract/yards.ts';
import { useBook } from '../../desk/useBook.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText, number } from '../../parts/format.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { StandTable } from './StandTable.tsx';
import { words } from './words.ts';
import { YardDues } from './YardDues.tsx';
import { YardFacts } from './YardFacts.tsx';
import './yards.css';

/** A yard's own page: its colonies as they stand, what was done there, what is there, and how to get in. */
export function YardScreen({ id }: { readonly id: string }) {
  const known = /^\d{1,9}$/.test(id) && Number(id) > 0;
  const asOf = useAsOf();
  const { book } = useBook();
  const { data, fault } = useRead('yard.page', { id: known ? Number(id) : 1 }, { enabled: known });
  if (!known || data === undefined || book === undefined) {
    return (
      <Page title={words.title} line={!known || fault ? (asOf === null ? words.noSuch : '') : words.loading}>
        <FaultNote fault={fault} />
        <Back />
      </Page>
    );
  }
  const { yard, details, colonies, visits, equipment, today } = data;
  return (
    <Page title={yard.name} line={words.pageLine(colonies.length, yard.room, yard.minutes)}>
      <YardDues id={yard.id} />
      <StandTable yard={yard} colonies={colonies} />
      {colonies.length === 0 ? null : (
        <p>
          <Link href={`/print/tags/${yard.id}`}>{words.tags}</Link>
        </p>
      )}
      <div className="pair section">
        <Visits visits={visits} />
        <div className="stack">
          <YardFacts key={yard.id} yard={yard} details={details} today={today} order={book.dateOrder} />
          <Equipment equipment={equipment} />
        </div>
      </div>
      <Back />
      <MarginContent heading={words.marginStand}>
        <p>{words.marginStandText}</p>
      </MarginContent>
      <MarginContent heading={words.marginMites}>
        <p>{words.marginMitesText}</p>
      </MarginContent>
      <MarginContent heading={words.marginVisit}>
        <p>{words.marginVisitText}</p>
      </MarginContent>
      <MarginContent heading={words.marginEquipment}>
        <p>{words.marginEquipmentText}</p>
      </MarginContent>
    </Page>
  );
}

function Back() {
  return (
    <p className="section">
      <Link href="/yards">{words.back}</Link>
    </p>
  );
}

function Visits({ visits }: { readonly visits: readonly YardVisit[] }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.visits}</h2>
      {visits.length === 0 ? <p className="soft">{words.visitsNone}</p> : null}
      <ol className="lines">
        {visits.map((visit) => (
          <li key={visit.day}>
            <span>{dayText(visit.day)}</span>
            {visit.acts.length <= 3 ? (
              <Acts acts={visit.acts} />
            ) : (
              <details>
                <summary>{words.kinds(visit.kinds.map(({ kind, entries }) => ({ label: entryForms[kind].label, entries })))}</summary>
                <Acts acts={visit.acts} />
              </details>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
}

function Acts({ acts }: { readonly acts: YardVisit['acts'] }) {
  return (
    <ul className="acts-said">
      {acts.map((act) => (
        <li key={act.sentence}>
          {act.colonies.map(({ id, label }, place) => (
            <span key={`${id}-${place}`}>
              {place > 0 ? ', ' : ''}
              <Link href={`/colonies/${id}`}>{label}</Link>
            </span>
          ))}
          {act.colonies.length > 0 ? ': ' : ''}
          {act.sentence}
        </li>
      ))}
    </ul>
  );
}

function Equipment({ equipment }: { readonly equipment: YardPage['equipment'] }) {
  const id = useId();
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.equipment}</h2>
      {equipment.length === 0 ? (
        <p className="soft">{words.equipmentNone}</p>
      ) : (
        <table className="tight" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">{words.item}</th>
              <th scope="col" className="number">
                {words.count}
              </th>
            </tr>
          </thead>
          <tbody>
            {equipment.map(({ item, count }) => (
              <tr key={item}>
                <th scope="row">{item}</th>
                <td className="number">{number(count, 1)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
