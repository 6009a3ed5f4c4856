import { Link } from 'wouter';
import type { ColonyId } from '#shared/brands.ts';
import type { FamilyLane, LinesPicture } from '#shared/contract/lines.ts';
import { dayText } from '../../parts/format.ts';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { words } from './words.ts';

export interface LaneNoteProps {
  readonly lane: FamilyLane;
  readonly picture: LinesPicture;
  readonly onFamily: ((family: ColonyId) => void) | null;
  /** False where the place has the label for a heading already. */
  readonly headed?: boolean;
}

/** What the margin tells of a lane: how it came and ended, its queens, moves and kin. */
export function LaneNote({ lane, picture, onFamily, headed = true }: LaneNoteProps) {
  const family = picture.families.find(({ id }) => id === lane.family);
  const founder = picture.lanes.find(({ id }) => id === lane.family)?.label ?? family?.name ?? lane.label;
  const labels = new Map(picture.lanes.map(({ id, label }) => [id, label]));
  const daughters = picture.links.filter(({ kind, from }) => kind === 'split' && from === lane.id);
  const united = picture.links.filter(({ kind, to }) => kind === 'combine' && to === lane.id);
  return (
    <div className="lane-note">
      {headed ? <h2>{lane.label}</h2> : null}
      <p>{lane.sentence}</p>
      <p>
        <Link href={`/colonies/${lane.id}`}>{words.open}</Link>
      </p>
      <h3>{words.queenHeading}</h3>
      {lane.queens.length === 0 ? <p className="soft">{words.queenNone}</p> : null}
      <ul>
        {lane.queens.map(({ day, queen }, at) => (
          <li key={`${day} ${at}`}>
            <Link href={`/queens/${queen.id}`}>
              <QueenMark queen={queen} />
            </Link>
            {queen.source === null ? '' : `, ${queen.source}`}, {words.since(dayText(day))}
          </li>
        ))}
      </ul>
      <Facts heading={words.moved} facts={lane.moves.map(({ day, toName }) => words.movedTo(toName, dayText(day)))} />
      <Facts heading={words.daughters} facts={daughters.map(({ to, day }) => words.daughter(labels.get(to) ?? '', dayText(day)))} />
      <Facts heading={words.united} facts={united.map(({ from, day }) => words.unitedFrom(labels.get(from) ?? '', dayText(day)))} />
      {family === undefined ? null : <p className="soft lane-family">{words.family(founder, family.alive, family.colonies)}</p>}
      {onFamily === null ? null : (
        <button type="button" className="link" onClick={() => onFamily(lane.family)}>
          {words.onlyThis}
        </button>
      )}
    </div>
  );
}

function Facts({ heading, facts }: { readonly heading: string; readonly facts: readonly string[] }) {
  if (facts.length === 0) return null;
  return (
    <>
      <h3>{heading}</h3>
      <ul>
        {facts.map((fact, at) => (
          <li key={`${fact} ${at}`}>{fact}</li>
        ))}
      </ul>
    </>
  );
}
