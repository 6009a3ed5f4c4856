import { Fragment } from 'react';
import { Link } from 'wouter';
import type { EntryId } from '#shared/brands.ts';
import { entryForms } from '#shared/entryForms.ts';
import { useRead } from '../../desk/useDesk.ts';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { dayText } from '../../parts/format.ts';
import { Page } from '../../parts/Page.tsx';
import { words as frame } from '../../parts/words.ts';
import { NowhereScreen } from '../nowhere/NowhereScreen.tsx';
import { words } from './words.ts';

/** One entry by itself: what was written, when and about which colonies. The Find box leads here. */
export function EntryScreen({ id }: { readonly id: string }) {
  return /^[1-9]\d{0,14}$/.test(id) ? <Entry id={Number(id) as EntryId} /> : <NowhereScreen />;
}

function Entry({ id }: { readonly id: EntryId }) {
  const { data, fault } = useRead('find.entry', { id });
  if (data === undefined) {
    return (
      <Page key={fault ? 'fault' : 'wait'} title={fault ? words.noSuch : words.line} line={fault ? '' : frame.loading}>
        <FaultNote fault={fault} />
      </Page>
    );
  }
  const { entry, colonies, yardName } = data;
  return (
    <Page title={words.title(entryForms[entry.kind].label, dayText(entry.day))} line={words.line}>
      <dl className="facts">
        <dt>{words.says}</dt>
        <dd>
          <bdi>{entry.struck ? <s>{entry.sentence}</s> : entry.sentence}</bdi>
          {entry.struck ? <p className="needs">{words.struck(entry.struckReason)}</p> : null}
        </dd>
        {entry.note !== null && entry.kind !== 'note' ? (
          <>
            <dt>{words.note}</dt>
            <dd>
              <bdi>{entry.note}</bdi>
            </dd>
          </>
        ) : null}
        <dt>{words.day}</dt>
        <dd>{dayText(entry.day)}</dd>
        {yardName === null ? null : (
          <>
            <dt>{words.yard}</dt>
            <dd>
              <bdi>{yardName}</bdi>
            </dd>
          </>
        )}
        <dt>{words.colonies}</dt>
        <dd>
          {colonies.length === 0 ? words.none : null}
          {colonies.map((colony, place) => (
            <Fragment key={colony.id}>
              {place > 0 ? ', ' : ''}
              <Link href={`/colonies/${colony.id}`}>
                <bdi>{colony.label}</bdi>
              </Link>
            </Fragment>
          ))}
        </dd>
      </dl>
    </Page>
  );
}
