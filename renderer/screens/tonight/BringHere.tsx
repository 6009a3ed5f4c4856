import type { YardRow } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import { drafts } from './drafts.ts';
import type { OpenRound } from './roundIndex.ts';
import { draftKey, readDraft } from './sheetDraft.ts';
import type { Round } from './useRound.ts';
import type { Rounds } from './useRounds.ts';
import { words } from './words.ts';

interface BringHereProps {
  readonly yard: YardRow;
  readonly day: Day;
  readonly others: readonly OpenRound[];
  readonly round: Round;
  readonly note: Rounds['note'];
  onBrought(): void;
}

/** On an empty sheet: typing of the same yard under another day, for the sheet that was begun with the wrong day. */
export function BringHere({ yard, day, others, round, note, onBrought }: BringHereProps) {
  const other = others.find((one) => one.yard === yard.id && one.day !== day);
  if (other === undefined) return null;
  const bring = async () => {
    const from = draftKey(yard.id, other.day);
    const answer = await drafts.fetch(from);
    const draft = answer.ok && answer.value.body !== null ? readDraft(answer.value.body) : null;
    if (draft === null) return;
    round.draft.change(() => draft);
    onBrought();
    // Kept here before it is dropped there: a crash in between leaves it twice, never nowhere.
    await drafts.flush();
    drafts.change(from, null);
    note(yard.id, other.day, 0);
  };
  return (
    <p className="soft small">
      {words.drafts.stays(other.day)}{' '}
      <button type="button" className="link" onClick={() => void bring()}>
        {words.drafts.bring}
      </button>
    </p>
  );
}
