import type { EntryId, GestureId } from '#shared/brands.ts';
import type { ActConsequence, ActLine } from '#shared/contract/acts.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { rulesOf } from '#core/journal/kinds.ts';
import type { Gesture, Store } from '#core/book/store.ts';
import { contradictionFault, judgeStanding } from './changeStanding.ts';
import type { Handlers } from './desk.ts';
import { keptRows } from './keptRows.ts';
import { storyEntries } from './mendingHandlers.ts';
import { namesOf } from './names.ts';
import { undoPlan } from './strikeAndUndo.ts';
import { undoState } from './undoState.ts';

export const actHandlers: Handlers<'act.page' | 'act.consequence'> = {
  'act.page': async ({ id, from, limit }, context) => {
    const { store } = context.open();
    const gestures = await store.gestures();
    const act = gestures.find((gesture) => gesture.id === id);
    if (act === undefined) throw new FaultError(refuse('unknown', `There is no act ${id} in this book.`));
    const { undone, redo } = undoState(gestures);
    const { undoes, ...row } = act;
    const about = gestures.find((gesture) => gesture.id === undoes);
    const all = await linesOf(store, act);
    return {
      act: { ...row, undone: undone.has(id) },
      about: about === undefined ? null : { id: about.id, title: about.title },
      canRedo: redo?.id === id,
      total: all.length,
      lines: await told(store, all.slice(from, from + limit)),
      unsorted: await broughtBy(store, id),
    };
  },
  'act.consequence': async ({ id }, context) => consequenceOfUndo(context.open().store, id),
};

interface Line {
  readonly what: ActLine['what'];
  readonly entry: EntryId;
}

/** What the act entered, in the journal's order, then what it struck or brought back. */
async function linesOf(store: Store, act: Gesture): Promise<Line[]> {
  const own = act.entries === 0 ? [] : await store.entries({ gesture: act.id });
  const marks = await store.marksOf(act.id);
  return [
    ...own.map(({ entry }): Line => ({ what: 'entered', entry: entry.id })),
    ...marks.map(({ entry, what }): Line => ({ what: what === 'strike' ? 'struck' : 'brought back', entry })),
  ];
}

async function told(store: Store, lines: readonly Line[]): Promise<ActLine[]> {
  const names = await namesOf(store);
  const stored = await store.entries({ ids: lines.map(({ entry }) => entry) });
  const stories = new Map((await storyEntries(store, stored, names)).map((story) => [story.id, story]));
  const touched = new Map(stored.map(({ entry }) => [entry.id, rulesOf(entry.kind).touches(entry.body).map(({ colony }) => ({ id: colony, label: names.colony(colony) }))]));
  return lines.flatMap(({ what, entry: id }) => {
    const entry = stories.get(id);
    return entry === undefined ? [] : [{ what, entry, colonies: touched.get(id) ?? [] }];
  });
}

/** Rows to sort out that this import brought. */
async function broughtBy(store: Store, id: GestureId): Promise<number> {
  return (await keptRows(store)).filter((row) => row.imports.includes(id)).length;
}

async function consequenceOfUndo(store: Store, id: GestureId): Promise<ActConsequence> {
  const none = { allowed: false, struck: 0, lifted: 0, gone: 0, changed: 0, goneLabels: [], unsorted: 0 };
  try {
    const { change } = await undoPlan(store, id);
    const { before, after, contradictions } = await judgeStanding(store, change);
    if (contradictions.length > 0) {
      const { sentence, mend } = contradictionFault(contradictions);
      return { ...none, refusal: { sentence, mend: mend ?? null } };
    }
    const { undone } = undoState(await store.gestures());
    const gone = [...after].flatMap(([colony, state]) => (state === null ? [before.get(colony)?.label ?? ''] : []));
    const changed = [...after].filter(([colony, state]) => state !== null && JSON.stringify(state) !== JSON.stringify(before.get(colony)));
    const along = (await keptRows(store)).filter(({ imports }) => imports.includes(id) && imports.every((one) => one === id || undone.has(one)));
    return {
      allowed: true, struck: change.strike.length, lifted: change.lift.length, gone: gone.length, changed: changed.length,
      goneLabels: gone.slice(0, 12), unsorted: along.filter(({ state }) => state === 'waiting' || state === 'set aside').length, refusal: null,
    };
  } catch (error) {
    if (!(error instanceof FaultError)) throw error;
    return { ...none, refusal: { sentence: error.fault.sentence, mend: error.fault.mend ?? null } };
  }
}
