import { FaultError, refuse } from '#shared/faults.ts';
import { seasonStrip } from '#core/lineage/seasonStrip.ts';
import type { Handlers } from './desk.ts';
import { standing } from './standing.ts';

export const stripHandlers: Handlers<'colony.strip'> = {
  'colony.strip': async ({ id }, context) => {
    const book = context.open();
    const { byId, names, borders } = await book.picture();
    const state = byId.get(id);
    if (state === undefined) throw new FaultError(refuse('unknown', 'That colony is not in this book, or the entry that began it was struck.'));
    const today = await book.today(context.options.now().day);
    const own = (await book.store.entriesOf([id])).get(id) ?? [];
    const treatments = await book.store.entries({ kinds: ['treatment'], from: state.start, ...(state.end === null ? {} : { until: state.end }) });
    return seasonStrip(state, own, standing(treatments), names, borders, today);
  },
};
