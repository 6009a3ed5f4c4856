import type { QueenView } from '#shared/contract/journal.ts';
import { missing } from './format.ts';
import { words } from './words.ts';

/** A queen's colour by the international year code: swatch, word and year, never the swatch alone. */
export function QueenMark({ queen }: { readonly queen: Pick<QueenView, 'year' | 'colour' | 'marked'> | null }) {
  if (queen === null) return <span className="soft">{missing}</span>;
  if (queen.colour === null || queen.year === null) return <span className="soft">{words.queenUnknown}</span>;
  return (
    <span className="queen-mark">
      <span className={`queen-dot queen-${queen.colour}${queen.marked ? '' : ' queen-unmarked'}`} aria-hidden="true" />
      {queen.colour} {queen.year}
    </span>
  );
}
