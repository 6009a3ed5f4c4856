import { useCallback, useEffect, useRef, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { OpenBook, YardRow } from '#shared/contract/book.ts';
import type { RoundRow } from '#shared/contract/journal.ts';
import type { Day } from '#shared/days.ts';
import { enterRound } from '../../commands/commands.ts';
import { useOffer } from '../../commands/offers.ts';
import { shortcutText } from '../../commands/shortcut.ts';
import { useRead } from '../../desk/useDesk.ts';
import { Empty } from '../../parts/Empty.tsx';
import { FaultNote } from '../../parts/FaultNote.tsx';
import { OrderDeadlines } from '../../parts/OrderDeadlines.tsx';
import { Page } from '../../parts/Page.tsx';
import { BringHere } from './BringHere.tsx';
import { EnteredLast } from './EnteredLast.tsx';
import { OpenRounds } from './OpenRounds.tsx';
import { MarkEditor } from './MarkEditor.tsx';
import { RoundColumns } from './RoundColumns.tsx';
import { RoundControls, type Panel } from './RoundControls.tsx';
import { RoundMargin } from './RoundMargin.tsx';
import { roomy, RoundSheet, type SheetHandle } from './RoundSheet.tsx';
import type { ColumnKey } from './sheetColumns.ts';
import { RoundWide } from './RoundWide.tsx';
import { dayAhead } from './sheetDay.ts';
import { draftIsEmpty } from './sheetDraft.ts';
import { remarksOnRow } from './sheetRound.ts';
import { readRow } from './sheetRow.ts';
import { useRound } from './useRound.ts';
import type { Rounds } from './useRounds.ts';
import { words } from './words.ts';

interface RoundPageProps {
  readonly book: OpenBook;
  readonly today: Day;
  readonly yard: YardRow;
  readonly day: Day;
  readonly rounds: Rounds;
  onPick(yard: YardRow, day: Day): void;
}

/** The round of one yard on one day, what was entered last, and what still waits to be entered. */
export function RoundPage({ book, today, yard, day, rounds, onPick }: RoundPageProps) {
  const round = useRound(book, yard, day, today, rounds);
  const { rows, draft } = round;
  const [, go] = useLocation();
  const sheet = useRef<SheetHandle>(null);
  const [here, setHere] = useState<{ row: RoundRow; column: ColumnKey } | null>(null);
  const [dayFault, setDayFault] = useState<string | null>(null);
  const [end, setEnd] = useState(false);
  const [panel, setPanel] = useState<Panel | null>(null);
  const ahead = dayAhead(day, today);

  const onHere = useCallback((row: RoundRow, column: ColumnKey) => {
    setHere({ row, column });
    setEnd(false);
  }, []);
  const start = useCallback(() => sheet.current?.goTo({ row: 0, column: 0 }), []);

  const told = useRead('rounds.paper', { yard: yard.id, day }, { enabled: !round.loading && rows.length > 0 });

  // The evening's work begins in the sheet: once it is laid out the keyboard is in its first cell, unless it is elsewhere already.
  const ready = !round.loading && rows.length > 0;
  useEffect(() => {
    const at = document.activeElement;
    if (ready && (at === null || at === document.body || at.tagName === 'H1')) start();
  }, [ready, start]);

  // The panel's buttons go with it; the keyboard goes on to the sheet.
  const closePanel = () => {
    setPanel(null);
    onDone();
  };

  // From the day field on to the sheet, or, while it is being laid out, out of the field, so that the effect above goes there.
  const onDone = () => {
    if (ready) start();
    else if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  };

  const enter = async () => {
    // A day that could not be taken leaves the old one standing; the round must not slip in under it.
    if (dayFault !== null) return;
    const place = await round.enter();
    if (place === 'entered') start();
    // What is said of the whole sheet is mended in its own field.
    else if (place === 'work') document.querySelector<HTMLElement>('.round-work [aria-invalid=true]')?.focus();
    else if (place !== null) sheet.current?.goToPlace(place);
  };
  // By the command, so on the whole window: after a button that went away the keyboard is nowhere, and Ctrl Enter still means the round.
  useOffer('enter the round', ready && !round.busy ? () => void enter() : null);

  useOffer('print the field sheet', ready ? () => go(`/print/round/${yard.id}/${day}`) : null);

  const already = rows.filter((row) => row.already.length > 0).length;
  const others = (rounds.index?.open ?? []).filter((other) => other.yard !== yard.id || other.day !== day);
  const shownHere = (here && rows.find((row) => row.colony === here.row.colony)) ?? null;
  const cues = told.data?.rows.find((row) => row.colony === shownHere?.colony)?.cues ?? [];
  const typedHere = shownHere && draft.draft?.typed[shownHere.colony];
  const spoken = shownHere && draft.draft && typedHere ? remarksOnRow(shownHere.colony, readRow(typedHere, draft.draft.wide, round.setting)) : [];

  return (
    <>
      <Page
        fill
        title={words.head.round(yard.name, day)}
        line={round.loading ? words.loading : words.head.answers(rows.length)}
        action={
          <button type="button" className="main" disabled={round.busy || !ready} onClick={() => void enter()}>
            {words.head.enter}
            <kbd aria-hidden="true">{enterRound.shortcut ? shortcutText(enterRound.shortcut) : null}</kbd>
          </button>
        }
      >
        <RoundControls book={book} today={today} yard={yard} day={day} round={round} panel={panel} onPanel={setPanel} onPick={onPick} onDone={onDone} onFault={setDayFault} />
        {panel === 'columns' ? <RoundColumns round={round} yard={yard} onClose={() => closePanel()} /> : null}
        {panel === 'marks' ? <MarkEditor marks={round.setting.marks} onClose={() => closePanel()} /> : null}
        <RoundWide round={round} onDone={onDone} />
        <OrderDeadlines />
        <div className="round-says" role="status">
          {dayFault !== null ? <p className="needs">{dayFault}</p> : null}
          {round.message !== null ? <p className="needs">{round.message}</p> : null}
          {ahead !== null && round.message === null ? <p className="needs">{ahead}</p> : null}
          {end ? <p>{words.endOfSheet}</p> : null}
        </div>
        <p className="visually-hidden" role="status">
          {spoken.map((remark) => remark.sentence).join(' ')}
        </p>
        <FaultNote fault={round.fault} />
        {draft.apart ? (
          <p className="needs" role="alert">
            {words.elsewhere.sentence}{' '}
            <button type="button" className="link" onClick={draft.takeTheirs}>
              {words.elsewhere.take}
            </button>{' '}
            <button type="button" className="link" onClick={draft.keepMine}>
              {words.elsewhere.mine}
            </button>
          </p>
        ) : null}
        {draft.unread ? <p className="needs">{words.drafts.unread}</p> : null}
        {round.strays.length > 0 ? (
          <p className="needs">
            {words.drafts.stray(round.strays)}{' '}
            <button type="button" className="link" onClick={round.dropStrays}>
              {words.drafts.strayDrop}
            </button>
          </p>
        ) : null}
        {draft.draft !== null && draftIsEmpty(draft.draft) ? <BringHere yard={yard} day={day} others={others} round={round} note={rounds.note} onBrought={start} /> : null}
        {already > 0 ? <p className="soft small">{words.already.on(already)}</p> : null}
        {ready ? (
          <>
            <RoundSheet round={round} caption={words.head.round(yard.name, day)} ref={sheet} onHere={onHere} onEnd={() => setEnd(true)} />
            <dl className="round-legend" aria-label={words.legendName}>
              {words.legend(round.columns, round.setting.marks).map(([mark, meaning]) => (
                <div key={`${mark} ${meaning}`}>
                  <dt>{mark}</dt>
                  <dd>{meaning}</dd>
                </div>
              ))}
            </dl>
          </>
        ) : null}
        {!round.loading && !round.fault && rows.length === 0 ? (
          <Empty sentence={words.empty.noColonies(yard.name, day)} action={<Link href="/colonies">{words.empty.install}</Link>} />
        ) : null}
        <div className="pair round-foot">
          <EnteredLast shown={rows.length > roomy ? 3 : 5} />
          <OpenRounds rounds={others} yards={book.yards} onOpen={onPick} />
        </div>
      </Page>
      <RoundMargin row={shownHere} column={here?.column ?? 'bees'} marks={round.setting.marks} planned={round.planned} cues={cues} />
    </>
  );
}
