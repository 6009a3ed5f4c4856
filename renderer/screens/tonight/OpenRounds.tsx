import type { YardRow } from '#shared/contract/book.ts';
import type { Day } from '#shared/days.ts';
import type { OpenRound } from './roundIndex.ts';
import { words } from './words.ts';

interface OpenRoundsProps {
  readonly rounds: readonly OpenRound[];
  readonly yards: readonly YardRow[];
  onOpen(yard: YardRow, day: Day): void;
}

/** Other sheets that hold typing not entered yet. */
export function OpenRounds({ rounds, yards, onOpen }: OpenRoundsProps) {
  const known = rounds.flatMap((round) => {
    const yard = yards.find(({ id }) => id === round.yard);
    return yard ? [{ ...round, yard }] : [];
  });
  if (known.length === 0) return null;
  return (
    <section aria-labelledby="open-rounds">
      <h2 id="open-rounds">{words.drafts.title}</h2>
      <ul className="lines round-open">
        {known.map(({ yard, day, filled }) => (
          <li key={`${yard.id} ${day}`}>
            <span>{words.drafts.day(day)}</span>
            <span>
              {words.drafts.line(yard.name, filled)}{' '}
              <button type="button" className="link" aria-label={words.drafts.openName(yard.name, day)} onClick={() => onOpen(yard, day)}>
                {words.drafts.open}
              </button>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
