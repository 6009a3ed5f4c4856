import { FaultError, refuse } from '#shared/faults.ts';
import { reignsOf } from '#core/lineage/queenRecord.ts';
import { mothersOf, queenStory } from '#core/lineage/queenStory.ts';
import type { Handlers } from './desk.ts';

export const queenHandlers: Handlers<'queen.story'> = {
  'queen.story': async ({ id }, context) => {
    const book = context.open();
    const picture = await book.picture();
    const today = await book.today(context.options.now().day);
    const homes = reignsOf(picture.states, id).map(({ state }) => state.id);
    const own = await book.store.entriesOf([...new Set(homes)]);
    const founding = [...own.values()].flat().find((entry) => entry.id === id);
    const mothers = mothersOf(founding).filter((colony) => !own.has(colony));
    const story = queenStory(id, picture, new Map([...own, ...(await book.store.entriesOf(mothers))]), today);
    if (story === null) throw new FaultError(refuse('unknown', 'That queen is not in this book, or the entry that brought her was struck.'));
    return story;
  },
};
