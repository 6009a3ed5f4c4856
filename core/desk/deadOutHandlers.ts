import { readDeadOutNote } from '#shared/deadOut.ts';
import type { Ending } from '#shared/contract/values.ts';
import { dayInWords } from '#shared/days.ts';
import { FaultError, refuse } from '#shared/faults.ts';
import { currentYard } from '#core/journal/colonyState.ts';
import { writeRow } from '#core/journal/writeRow.ts';
import { likelyCauses } from '#core/losses/deadOut/likelyCauses.ts';
import { recordSays } from '#core/losses/deadOut/recordSays.ts';
import type { Handlers } from './desk.ts';

const left: Readonly<Record<Exclude<Ending, 'alive' | 'lost'>, string>> = { sold: 'sold', given: 'given away', combined: 'united into another colony', absconded: 'recorded as absconded' };

export const deadOutHandlers: Handlers<'deadOut.open' | 'deadOut.judge'> = {
  'deadOut.open': async ({ id }, context) => {
    const book = context.open();
    const { byId, names } = await book.picture();
    const state = byId.get(id);
    if (state === undefined) throw new FaultError(refuse('unknown', 'That colony is not in this book, or the entry that began it was struck.'));
    const today = await book.today(context.options.now().day);
    const [stored] = state.how === 'lost' && state.endEntry !== null ? await book.store.entries({ ids: [state.endEntry] }) : [];
    const note = stored?.entry.body.note ?? '';
    return {
      id, label: state.label, yardName: names.yard(currentYard(state)).name, how: state.how, end: state.end,
      loss: stored?.entry.kind !== 'loss' ? null : { entry: stored.entry.id, cells: writeRow(stored.entry, names), causes: [...(stored.entry.body.cause ?? [])], ...readDeadOutNote(note) },
      closed: state.how === 'alive' || state.how === 'lost' ? null : `${state.label} was ${left[state.how]} on ${dayInWords(state.end ?? state.lastDay)}, so there is no dead-out to look at. If that is wrong, replace or strike that entry on its page first.`,
      record: recordSays(state, state.end ?? today),
    };
  },
  'deadOut.judge': async ({ signs }) => {
    const { stop, suggestions, remarks } = likelyCauses(signs);
    return {
      stop: stop === null ? null : { ...stop, seen: [...stop.seen] },
      suggestions: suggestions.map((one) => ({ ...one, reasons: one.reasons.map((reason) => ({ ...reason, seen: [...reason.seen] })) })),
      remarks: [...remarks],
    };
  },
};
