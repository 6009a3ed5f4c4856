import { createHash } from 'node:crypto';
import type { Handlers } from './desk.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import { sheetColonies } from '#core/lineage/sheetColonies.ts';
import { yardOn } from '#core/lineage/yardOn.ts';
import { lookSentence, queenOn } from '#core/lineage/colonyWords.ts';
import { enterRows } from './enterRows.ts';
import { redo, replaceEntry, strikeEntry, undo } from './strikeAndUndo.ts';
import { undoState } from './undoState.ts';

type Names =
  | 'journal.recent' | 'journal.enter' | 'journal.undo' | 'journal.redo' | 'journal.strike' | 'journal.replace' | 'round.sheet' | 'draft.keep' | 'draft.fetch' | 'draft.drop';

export const journalHandlers: Handlers<Names> = {
  'journal.recent': async ({ limit }, context) => {
    const { store, day } = context.open();
    const gestures = await store.gestures();
    const { undone, next, redo: redoable } = undoState(gestures);
    return {
      gestures: gestures.slice(-limit).reverse().map(({ undoes: _, ...gesture }) => ({ ...gesture, undone: undone.has(gesture.id) })),
      // An act is taken back today, not on a day that is only looked at.
      canUndo: day === null ? (next?.title ?? null) : null,
      canRedo: day === null ? (redoable?.title ?? null) : null,
    };
  },
  'journal.enter': async ({ rows, title }, context) => {
    const book = context.open();
    return enterRows(book.store, rows, title, (await book.settings()).dateOrder, context.options.now().stamp);
  },
  'journal.undo': ({ gesture }, context) => undo(context.open().store, gesture, context.options.now().stamp),
  'journal.redo': (_, context) => redo(context.open().store, context.options.now().stamp),
  'journal.strike': ({ entry, reason }, context) => strikeEntry(context.open().store, entry, reason, context.options.now().stamp),
  'journal.replace': async ({ entry, cells, reason }, context) => {
    const book = context.open();
    return replaceEntry(book.store, entry, cells, reason, (await book.settings()).dateOrder, context.options.now().stamp);
  },
  'round.sheet': async ({ yard: id, day }, context) => {
    const { states, yardList, stands, names } = await context.open().picture();
    const yard = yardList.find((one) => one.id === id);
    if (yard === undefined) throw new FaultError(refuse('unknown', 'That yard is not in this book.'));
    const here = sheetColonies(states, stands, id, day);
    const today = (await context.open().store.entries({ from: day, until: day })).filter(({ struck }) => struck === null);
    const looks = states.flatMap((state) => (yardOn(state, day) === id ? state.looks.map((look) => look.day).filter((one) => one < day) : []));
    return {
      yard: { id: yard.id, code: yard.code, name: yard.name },
      day,
      rows: here.map((state) => {
        const look = state.looks.findLast((one) => one.day < day);
        const mites = state.miteCounts.findLast((one) => one.day < day);
        return {
          colony: state.id,
          label: state.label,
          queen: queenOn(state, day),
          lastLook: look === undefined ? null : { day: look.day, sentence: lookSentence(look) },
          lastMites: mites === undefined ? null : { ...mites, per100: (mites.mites / mites.bees) * 100 },
          already: today
            .filter(({ entry }) => rulesOf(entry.kind).touches(entry.body).some((touch) => touch.colony === state.id))
            .map(({ entry }) => rulesOf(entry.kind).sentence(entry.body, names)),
        };
      }),
      lastRound: looks.toSorted().at(-1) ?? null,
    };
  },
  'draft.keep': async ({ key, body, over }, context) => {
    const { drafts } = context.open().store;
    if (over !== undefined) checkUntouched(await drafts.fetch(key), over);
    await drafts.keep(key, body);
    return { stamp: stampOf(body) };
  },
  'draft.fetch': async ({ key }, context) => {
    const body = await context.open().store.drafts.fetch(key);
    return { body, stamp: body === null ? null : stampOf(body) };
  },
  'draft.drop': async ({ key, over }, context) => {
    const { drafts } = context.open().store;
    if (over !== undefined) checkUntouched(await drafts.fetch(key), over);
    await drafts.drop(key);
    return {};
  },
};

function stampOf(body: string): string {
  return createHash('sha256').update(body).digest('hex').slice(0, 16);
}

/** Drafts are kept one after the other, and none rests, so nothing comes between this look and the write after it. */
function checkUntouched(kept: string | null, over: string | null): void {
  if ((kept === null ? null : stampOf(kept)) === over) return;
  throw new FaultError(refuse('moved-on', 'Another window has kept other typing under the same sheet.', { mend: 'Choose which of the two is to stay.' }));
}
