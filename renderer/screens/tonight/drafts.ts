import { desk } from '../../desk/deskClient.ts';
import { DraftKeeper } from './draftKeeper.ts';

/** The window's one keeper of drafts; it outlives the screen, so that leaving the screen does not outrun a draft on its way. */
export const drafts = new DraftKeeper({
  keep: (key, body) => desk.call('draft.keep', { key, body }),
  drop: (key) => desk.call('draft.drop', { key }),
  fetch: (key) => desk.call('draft.fetch', { key }),
});
