import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { OpenBook, YardRow } from '#shared/contract/book.ts';
import type { RoundRow } from '#shared/contract/journal.ts';
import type { RoundSetting } from '#shared/contract/rounds.ts';
import type { PlannedSheet } from '#shared/contract/trips.ts';
import type { DateOrder, Day } from '#shared/days.ts';
import type { Fault } from '#shared/faults.ts';
import { strangeIn } from '#shared/ordinary.ts';
import { marksFrom } from '#shared/roundMarks.ts';
import type { RoundColumn, RoundKind } from '#shared/roundSheets.ts';
import { grouped } from '#shared/grouped.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { plannedColumns } from './plannedColumns.ts';
import { readCell } from './sheetCell.ts';
import { columnsShown, filledIn, withCell, type ColumnKey, type Typed } from './sheetColumns.ts';
import { draftKey, keptQuestion, withoutSent, writeDraft, type SheetDraft } from './sheetDraft.ts';
import { composeRound, enteredLine, filledRows, placeFaults, remarksOn, writtenOut, type Place, type Remark, type RoundSheet } from './sheetRound.ts';
import { untilTrouble, workCells, workTrouble } from './sheetEntries.ts';
import type { SheetWide } from './sheetRow.ts';
import type { SheetSetting } from './sheetSetting.ts';
import { useDraft, type DraftHere } from './useDraft.ts';
import { useEntered } from './useEntered.ts';
import type { Rounds } from './useRounds.ts';
import { words } from './words.ts';

/** The most entries that the desk takes at once. */
const mostEntries = 2000;
/** Acts asked for: the few shown, and room for the undos between them. */
const acts = 24;

export interface Round {
  readonly kind: RoundKind;
  /** The columns that stand on the sheet. */
  readonly columns: readonly RoundColumn[];
  /** What is planned here for this day, as far as it goes onto the sheet. */
  readonly planned: PlannedSheet | null;
  /** What is planned for the yard as a whole. */
  readonly yardWork: RoundSetting['yardWork'];
  /** The columns asked for in each kind of round, here and this season. */
  readonly asked: RoundSetting['columns'];
  readonly season: number;
  readonly setting: SheetSetting;
  /** How the book writes days. */
  readonly dateOrder: DateOrder;
  readonly rows: readonly RoundRow[];
  readonly loading: boolean;
  readonly fault: Fault | undefined;
  readonly draft: DraftHere;
  readonly filled: number;
  /** Typing for colonies that are not on this sheet. */
  readonly strays: readonly string[];
  /** Refusals that the desk answered, by colony. */
  readonly refused: Readonly<Record<string, readonly Remark[]>>;
  /** One sentence about the whole sheet after it was to be entered. */
  readonly message: string | null;
  readonly busy: boolean;
  type(row: RoundRow, column: ColumnKey, text: string): void;
  keepQuestion(remark: Remark): void;
  setWide(wide: Partial<SheetWide>): void;
  dropStrays(): void;
  /** Another kind of round, or (null: the standard ones again) other columns of it; kept for this yard and season. */
  choose(kind: RoundKind, columns?: readonly RoundColumn[] | null): Promise<void>;
  /** Enters the round; answers the place that needs the person, if any. */
  enter(): Promise<Place | 'entered' | 'work' | null>;
}

const noRows: readonly RoundRow[] = [];
const noColumns: RoundSetting['columns'] = { inspection: [], mites: [], feed: [], supers: [], harvest: [], stores: [], mix: [] };
const nothingTyped: Typed = {};
const noYardWork: RoundSetting['yardWork'] = [];

/** One sheet: its colonies, its typing, and entering it. */
export function useRound(book: OpenBook, yard: YardRow, day: Day, today: Day, rounds: Rounds): Round {
  const key = draftKey(yard.id, day);
  const sheet = useRead('round.sheet', { yard: yard.id, day });
  const told = useRead('rounds.setting', { yard: yard.id, day }, { keep: true });
  const layout = useWrite('rounds.layout');
  const recent = useRead('journal.recent', { limit: acts });
  const draft = useDraft(key);
  const notice = useNotice();
  const send = useWrite('journal.enter');
  const [refused, setRefused] = useState<Readonly<Record<string, readonly Remark[]>>>({});
  const [message, setMessage] = useState<string | null>(null);
  const askedOnce = useRef<SheetDraft | null>(null);
  const entering = useRef(false);
  const { change, now } = draft;
  const { note } = rounds;
  const remember = useEntered({ openKey: draft.draft === null ? null : key, gestures: recent.data?.gestures, change, note });

  const rows = sheet.data?.rows ?? noRows;
  const kind = told.data?.kind ?? 'inspection';
  const asked = told.data?.columns ?? noColumns;
  const [changed, massUnit] = [told.data?.marks, told.data?.massUnit ?? 'lb'];
  const setting = useMemo<SheetSetting>(() => ({ marks: marksFrom(changed ?? {}), massUnit }), [changed, massUnit]);
  useEffect(() => {
    setRefused({});
    setMessage(null);
  }, [key, book.path]);

  const typed = draft.draft?.typed;
  const planned = told.data?.planned ?? null;
  const columns = useMemo(() => columnsShown([...asked[kind], ...plannedColumns(planned)], typed ?? nothingTyped), [asked, kind, planned, typed]);
  const filled = useMemo(() => (typed ? filledRows({ colonies: rows, typed }) : 0), [rows, typed]);
  const all = typed ? filledIn(typed) : null;
  useEffect(() => {
    if (all !== null) note(yard.id, day, all);
  }, [note, yard.id, day, all]);

  const strays = useMemo(() => {
    if (!draft.draft || sheet.data === undefined) return [];
    const here = new Set(rows.map((row) => String(row.colony)));
    const { labels } = draft.draft;
    return Object.keys(draft.draft.typed).filter((colony) => !here.has(colony)).map((colony) => labels[colony] ?? `#${colony}`);
  }, [draft.draft, rows, sheet.data]);

  const type = useCallback(
    (row: RoundRow, column: ColumnKey, text: string) => {
      change((before) => ({ ...before, typed: withCell(before.typed, row.colony, column, text), labels: { ...before.labels, [row.colony]: row.label } }));
      setMessage(null);
      setRefused((before) => {
        if (before[row.colony] === undefined) return before;
        const { [row.colony]: _, ...others } = before;
        return others;
      });
    },
    [change],
  );

  const keepQuestion = useCallback(
    (remark: Remark) => change((before) => (before.kept.includes(keptQuestion(remark)) ? before : { ...before, kept: [...before.kept, keptQuestion(remark)] })),
    [change],
  );

  const setWide = useCallback(
    (wide: Partial<SheetWide>) => {
      setMessage(null);
      change((before) => ({ ...before, wide: { ...before.wide, ...wide } }));
    },
    [change],
  );

  const dropStrays = useCallback(() => {
    change((before) => ({ ...before, typed: Object.fromEntries(Object.entries(before.typed).filter(([colony]) => rows.some((row) => String(row.colony) === colony))) }));
  }, [change, rows]);

  const sendLayout = layout.send;
  const choose = useCallback(
    async (next: RoundKind, columns?: readonly RoundColumn[] | null) => {
      await sendLayout({ yard: yard.id, day, kind: next, ...(columns === undefined ? {} : { columns: columns === null ? null : [...columns] }) });
    },
    [sendLayout, yard.id, day],
  );

  const submit = async (): Promise<Place | 'entered' | 'work' | null> => {
    // As if the cell the keyboard is in had been left: what is shown, asked about and entered is one and the same.
    change((before) => {
      const typed = writtenOut(before.typed, setting);
      return typed === before.typed ? before : { ...before, typed };
    });
    const sent = now();
    const stop = (sentence: string, place: Place | null = null) => {
      setMessage(sentence);
      return place;
    };
    if (sent === null || sheet.data === undefined) return null;
    const whole: RoundSheet = { yard, day, kind, colonies: rows, typed: sent.typed, wide: sent.wide, setting };
    const remarks = remarksOn(whole);
    const unread = remarks.filter((remark) => remark.state === 'refused');
    if (unread[0]) return stop(words.before.refused(unread.length), unread[0]);
    const round = composeRound(whole);
    if (round.rows.some((row) => row.entry === 'mites') && readCell('sample', sent.wide.sample, setting).state === 'refused') return stop(words.before.sample);
    // Said once for the sheet, not under each colony that was treated.
    const until = round.rows.some((row) => row.entry === 'treatment') ? untilTrouble(sent.wide, book.dateOrder) : null;
    if (until !== null) return stop(until);
    const work = workTrouble(sent.wide);
    if (work !== null) {
      stop(work);
      return 'work';
    }
    if (round.rows.length === 0) return stop(words.before.nothing);
    if (round.rows.length > mostEntries) return stop(words.before.tooMany(round.rows.length));
    const open = remarks.filter((remark) => remark.state === 'question' && !sent.kept.includes(keptQuestion(remark)));
    // As any form asks about the hours, people and miles of a record.
    const strange = strangeIn(workCells(sent.wide, kind) ?? {}).map(({ sentence }) => sentence);
    if (askedOnce.current !== sent && (open[0] || strange[0] !== undefined || day > today)) {
      askedOnce.current = sent;
      const ahead = day > today ? words.day.aheadAsked(day, today) : '';
      return stop([ahead, ...strange, open[0] || strange[0] !== undefined ? words.before.questions(open.length + strange.length) : ''].filter(Boolean).join(' '), open[0] ?? null);
    }
    // What another window has entered or typed meanwhile must not go in a second time.
    if (!draft.unread && !(await draft.agrees())) return stop(words.before.elsewhere);
    const answer = await send.send({ title: round.title, rows: round.rows });
    if (!answer.ok) {
      const placed = placeFaults(answer.rows ?? [], round.sources);
      setRefused(Object.fromEntries(grouped(placed, (remark) => String(remark.colony))));
      if (placed[0]) return stop(words.before.rowsRefused(new Set(placed.map((remark) => remark.colony)).size), placed[0]);
      return stop(words.before.notRead([answer.sentence, answer.mend].filter(Boolean).join(' ')));
    }
    setRefused({});
    setMessage(null);
    remember({ gesture: answer.value.gesture, yard: yard.id, day, body: writeDraft(sent) });
    change((current) => withoutSent(current, sent, rows.map((row) => row.colony)));
    notice.say(enteredLine(round), { undoGesture: answer.value.gesture });
    return 'entered';
  };

  const enter = async () => {
    // A second press while the first is under way must not enter the round twice.
    if (entering.current) return null;
    entering.current = true;
    try {
      return await submit();
    } finally {
      entering.current = false;
    }
  };

  return {
    kind, columns, planned, yardWork: told.data?.yardWork ?? noYardWork, asked, season: told.data?.season ?? 0, setting, dateOrder: book.dateOrder, rows, loading: sheet.loading || told.stale || draft.draft === null, fault: sheet.fault ?? told.fault, draft, filled, strays, refused, message, busy: send.busy,
    type, keepQuestion, setWide, dropStrays, choose, enter,
  };
}
