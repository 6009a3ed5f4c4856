import { Link } from 'wouter';
import type { GestureRow } from '#shared/contract/journal.ts';
import { dayFromIso } from '#shared/days.ts';
import { useRead, useWrite } from '../../desk/useDesk.ts';
import { dayShort } from '../../parts/format.ts';
import { useNotice } from '../../parts/Notice.tsx';
import { words } from './words.ts';

/** Acts asked for; undos among them are left out. */
const asked = 24;

/** What was entered last, with undo for the last that stands and redo for what was taken back last. */
export function EnteredLast({ shown }: { readonly shown: number }) {
  const recent = useRead('journal.recent', { limit: asked });
  const undo = useWrite('journal.undo');
  const redo = useWrite('journal.redo');
  const notice = useNotice();
  const busy = undo.busy || redo.busy;
  const gestures = (recent.data?.gestures ?? []).filter((row) => row.kind !== 'undo' && row.kind !== 'redo');
  const last = gestures.find((row) => !row.undone);
  const canRedo = recent.data?.canRedo ?? null;

  const takeBack = async (row: GestureRow) => {
    const answer = await undo.send({ gesture: row.id });
    notice.say(answer.ok ? answer.value.sentence : [answer.sentence, answer.mend].filter(Boolean).join(' '));
  };
  const bringBack = async () => {
    const answer = await redo.send({});
    if (answer.ok) notice.say(answer.value.sentence, { undoGesture: answer.value.gesture });
    else notice.say([answer.sentence, answer.mend].filter(Boolean).join(' '));
  };

  return (
    <section aria-labelledby="entered-last">
      <h2 id="entered-last">{words.recent.title}</h2>
      {gestures.length === 0 && recent.data ? <p className="soft">{words.recent.none}</p> : null}
      <ul className="lines">
        {gestures.slice(0, shown).map((row) => (
          <li key={row.id}>
            <span>{daysOf(row)}</span>
            <span>
              <Link href={`/acts/${row.id}`} className={row.undone ? 'quiet-link struck soft' : 'quiet-link'}>
                {row.title}
              </Link>{' '}
              {row.undone ? <span className="soft">{words.recent.undone}</span> : null}
              {row.kind === 'import' && !row.undone ? (
                // So much at once is taken back on its own page, which says first what that does.
                <Link href={`/acts/${row.id}`} aria-label={words.recent.takeBackName(row.title)}>
                  {words.recent.takeBack}
                </Link>
              ) : row === last && recent.data?.canUndo ? (
                <button type="button" className="link" disabled={busy} aria-label={words.recent.undoName(row.title)} onClick={() => void takeBack(row)}>
                  {words.recent.undo}
                </button>
              ) : null}
            </span>
          </li>
        ))}
      </ul>
      {gestures.length > shown ? (
        <p>
          <Link href="/acts" className="quiet-link">
            {words.recent.all}
          </Link>
        </p>
      ) : null}
      {canRedo !== null ? (
        <p className="round-redo">
          <button type="button" className="link" disabled={busy} onClick={() => void bringBack()}>
            {words.recent.redoName(canRedo)}
          </button>
        </p>
      ) : null}
    </section>
  );
}

function daysOf({ firstDay, lastDay, at }: GestureRow): string {
  if (firstDay === null || lastDay === null) return dayShort(dayFromIso(at.slice(0, 10)));
  return firstDay === lastDay ? dayShort(firstDay) : `${dayShort(firstDay)} – ${dayShort(lastDay)}`;
}
