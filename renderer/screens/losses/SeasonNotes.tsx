import { useId } from 'react';
import { seasonName } from '#shared/seasons.ts';
import { MarginPart, useMarginNote } from '../../parts/Margin.tsx';
import { factorWords as words } from './factorWords.ts';
import { useSeasonNotes } from './useSeasonNotes.ts';

/** What one wants to remember for the next year, kept with the season as it is typed. */
export function SeasonNotes({ season }: { readonly season: number }) {
  const id = useId();
  const note = useMarginNote();
  const { text, kept, failed, before, write } = useSeasonNotes(season);
  return (
    <div className="season-notes">
      {before !== null && (
        <blockquote className="note-before">
          <p className="soft small">{words.notesBefore(before.name)}</p>
          <p className="note-text">{before.text}</p>
        </blockquote>
      )}
      <div className="field" {...note(<NotesNote />)}>
        <label htmlFor={id}>{words.notesLabel(seasonName(season))}</label>
        <textarea id={id} className="no-print" rows={5} maxLength={20_000} disabled={text === null} value={text ?? ''} onChange={(event) => write(event.target.value)} />
      </div>
      <p className="note-text print-only">{text}</p>
      <p className="soft small no-print" role="status">
        {failed ? words.notesNot : kept === null ? words.notesEmpty : words.notesKept(kept)}
      </p>
    </div>
  );
}

function NotesNote() {
  return (
    <MarginPart heading={words.notesHeading}>
      <p>{words.notesNote}</p>
    </MarginPart>
  );
}
