import { desk } from '../../desk/deskClient.ts';
import { DraftKeeper } from './draftKeeper.ts';
import { isSheetKey } from './sheetDraft.ts';

/** The window's one keeper of drafts; it outlives the screen, so that leaving the screen does not outrun a draft on its way. */
export const drafts = new DraftKeeper({
  keep: (key, body, over) => desk.call('draft.keep', over === undefined ? { key, body } : { key, body, over }),
  drop: (key, over) => desk.call('draft.drop', over === undefined ? { key } : { key, over }),
  fetch: (key) => desk.call('draft.fetch', { key }),
}, 400, isSheetKey);
