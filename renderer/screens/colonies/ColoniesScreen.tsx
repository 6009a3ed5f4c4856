import { useDeferredValue, useMemo, useState } from 'react';
import { Link } from 'wouter';
import { useOffer } from '../../commands/offers.ts';
import { useAsOf } from '../../desk/asOfDay.ts';
import { useBook } from '../../desk/useBook.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { Entering } from '../../parts/Entering.tsx';
import { EntryForm } from '../../parts/EntryForm.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { MarginContent } from '../../parts/Margin.tsx';
import { Page } from '../../parts/Page.tsx';
import { words as frameWords } from '../../parts/words.ts';
import { ColonyChoices } from './ColonyChoices.tsx';
import { columnsFor } from './colonyColumns.tsx';
import { ColonyTable } from './ColonyTable.tsx';
import { firstView, rowsOf, type ColonyView } from './colonyView.ts';
import { words } from './words.ts';

/** Kept while the window lives, so that coming back from a colony finds the list as it was left. */
let lastView: ColonyView = firstView;

export function ColoniesScreen() {
  const { book, today } = useBook();
  const asOf = useAsOf();
  const [view, setView] = useState<ColonyView>(lastView);
  const [entering, setEntering] = useState(false);
  useOffer('open the entry form', book && today && asOf === null ? () => setEntering(true) : null);
  const change = (part: Partial<ColonyView>) => {
    lastView = { ...view, ...part };
    setView(lastView);
  };

  const list = useRead('colonies.list', { which: view.which }, { keep: true });
  const massUnit = book?.massUnit ?? 'lb';
  const columns = useMemo(() => columnsFor(view.which, massUnit), [view.which, massUnit]);
  const yards = list.data?.yards ?? [];
  // A yard chosen in another book must not hide everything in this one.
  const yard = yards.some(({ code }) => code === view.yard) ? view.yard : '';
  const wanted = useDeferredValue(view);
  const all = list.data?.rows;
  const rows = useMemo(() => (all ? rowsOf(all, { ...wanted, yard }, columns) : []), [all, wanted, yard, columns]);

  if (!book || !today) return null;
  const empty = book.living === 0 && book.entries === 0;

  return (
    <Page
      title={words.title}
      line={words.line}
      asOf={list.data?.asOf}
      fill={!entering && rows.length > 0}
      action={
        entering || empty ? undefined : (
          <Entering>
            <button type="button" className="main" onClick={() => setEntering(true)}>
              {words.enter}
            </button>
          </Entering>
        )
      }
    >
      {entering ? (
        <Entering>
          <EntryForm book={book} today={today} firstKind="install" onClose={() => setEntering(false)} />
        </Entering>
      ) : null}
      {empty ? (
        entering ? null : (
          <Empty
            sentence={words.none}
            action={
              <button type="button" className="main" onClick={() => setEntering(true)}>
                {words.noneFirst}
              </button>
            }
          />
        )
      ) : (
        <>
          <ColonyChoices view={{ ...view, yard }} yards={yards} onChange={change} />
          <FaultNote fault={list.fault} />
          {list.loading ? <p role="status">{frameWords.loading}</p> : null}
          {rows.length > 0 ? (
            <ColonyTable
              rows={rows}
              all={all?.length ?? 0}
              columns={columns}
              view={view}
              onSort={(key) => change({ sortBy: key, down: view.sortBy === key ? !view.down : false })}
            />
          ) : null}
          {all && rows.length === 0 ? (
            all.length === 0 ? (
              <Empty sentence={view.which === 'ended' ? words.noneEnded : words.noneYet} />
            ) : (
              <Empty
                sentence={words.noneFits}
                action={
                  <button type="button" onClick={() => change({ typed: '', yard: '' })}>
                    {words.clear}
                  </button>
                }
              />
            )
          ) : null}
        </>
      )}
      <MarginContent heading={words.marginHeading}>
        <p>{words.marginText}</p>
        <p>{words.marginHoney}</p>
        <p>{words.marginMites}</p>
        {empty ? null : (
          <p>
            <Link href="/print/tags">{words.tags}</Link>
          </p>
        )}
      </MarginContent>
    </Page>
  );
}
