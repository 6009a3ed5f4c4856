import { useId } from 'react';
import { Link } from 'wouter';
import type { Consequence } from '#shared/contract/mending.ts';
import { dayText } from '../../parts/format.ts';
import { storyWords as words } from './storyWords.ts';

export interface ConsequenceNoteProps {
  readonly consequence: Consequence;
  /** "If it is struck" or "With this in its place". */
  readonly heading: string;
  /** Faults of single cells stand at their fields, not here. */
  readonly cellsElsewhere?: boolean;
}

/** What a strike or replacement would do, or the entries that stand in its way; nothing is changed yet. */
export function ConsequenceNote({ consequence, heading, cellsElsewhere = false }: ConsequenceNoteProps) {
  const id = useId();
  const { refusal, colonies } = consequence;
  if (refusal !== null) {
    const cells = cellsElsewhere ? [] : refusal.cells;
    if (refusal.contradictions.length === 0) {
      if (refusal.cells.length > 0 && cells.length === 0) return null;
      return (
        <div className="consequence needs" role="status">
          <p>{refusal.sentence}</p>
          {refusal.mend ? <p>{refusal.mend}</p> : null}
        </div>
      );
    }
    return (
      <div className="consequence" role="status" aria-labelledby={id}>
        <p id={id} className="needs">
          {words.contradicts(refusal.contradictions.length)}
        </p>
        <ul>
          {refusal.contradictions.map((one) => (
            <li key={one.entry}>
              {one.what === null ? null : (
                <>
                  {one.day === null ? '' : `${dayText(one.day)}: `}
                  {one.what}{' '}
                </>
              )}
              {one.colonies.map((colony) => (
                <Link key={colony.id} href={`/colonies/${colony.id}`}>
                  {words.title(colony.label)}
                </Link>
              ))}
              <p className="soft small">{one.sentence}</p>
            </li>
          ))}
        </ul>
      </div>
    );
  }
  return (
    <div className="consequence" role="status" aria-labelledby={id}>
      <p id={id}>{heading}</p>
      {colonies.length === 0 ? <p>{words.noColonyChanges}</p> : null}
      <ul>
        {colonies.map((colony) => (
          <li key={colony.id}>
            {colony.sentences.join(' ')}
            {colony.later > 0 ? ` ${words.laterStand(colony.later)}` : ''}
          </li>
        ))}
      </ul>
    </div>
  );
}
