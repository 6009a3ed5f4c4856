import { Link } from 'wouter';
import type { ColonyId } from '#shared/brands.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { Page } from '../../parts/Page.tsx';
import './deadOut.css';
import { DeadOutForm } from './DeadOutForm.tsx';
import { words } from './words.ts';

/** A minute's guided look at a colony that died; what was seen goes into its loss. */
export function DeadOutScreen({ id }: { readonly id: string }) {
  const number = /^[1-9]\d{0,14}$/.test(id) ? Number(id) : null;
  const { book, today } = useBook();
  const { data: place, fault } = useRead('deadOut.open', { id: (number ?? 1) as ColonyId }, { enabled: number !== null, fresh: true });
  if (!place || !book || !today) {
    return (
      <Page title={words.pickTitle} line={number === null || fault ? words.noSuch : ''}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  const recorded = place.loss === null ? '' : words.lostOn(dayText(place.end), place.loss.causes.join('; ') || words.noCause);
  return (
    <Page title={words.title(place.label)} line={`${place.yardName}. ${recorded || words.line}`}>
      {place.closed === null ? (
        // Another loss entry, or none any more, is another form.
        <DeadOutForm key={place.loss?.entry ?? 'alive'} place={place} book={book} today={today} />
      ) : (
        <p className="needs">{place.closed}</p>
      )}
      <p className="section">
        <Link href={`/colonies/${place.id}`}>{words.back(place.label)}</Link>
      </p>
    </Page>
  );
}
