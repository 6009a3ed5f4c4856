import { seasonName, seasonOf } from '#shared/seasons.ts';
import type { Day } from '#shared/days.ts';
import { useRead } from '../../desk/useDesk.ts';
import { MarginContent } from '../../parts/Margin.tsx';
import './factors.css';
import { factorWords as words } from './factorWords.ts';

/** In the margin of the order: what one wrote to oneself at the end of the last season, or in this one already. */
export function EarlierNotes({ today }: { readonly today: Day }) {
  const season = seasonOf(today);
  const { data } = useRead('losses.notes', { season });
  const note = data === undefined ? null : data.text.trim() !== '' ? { name: seasonName(season), text: data.text } : data.before;
  if (note === null) return null;
  return (
    <MarginContent heading={words.notesBefore(note.name)}>
      <p className="note-text">{note.text}</p>
    </MarginContent>
  );
}
