import { Link } from 'wouter';
import type { FamilyLane, LinesPicture } from '#shared/contract/lines.ts';
import { familyWords } from '../../charts/familyWords.ts';
import { dayTight, missing } from '../../parts/format.ts';
import { words } from './words.ts';

/** The picture in words and figures, a line for each lane, in the same order. */
export function LaneTable({ picture }: { readonly picture: LinesPicture }) {
  const names = new Map(picture.families.map(({ id, name }) => [id, name]));
  return (
    <div className="scroll lines-table" tabIndex={0} role="group" aria-label={words.picture}>
      <table className="tight lane-table" aria-label={words.picture}>
        <thead>
          <tr>
            {[words.colony, words.founder, words.cameFrom, words.began, words.ended, words.how, words.queens, words.moves].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {picture.lanes.map((lane) => (
            <tr key={lane.id}>
              <th scope="row">
                <Link href={`/colonies/${lane.id}`}>{lane.label}</Link>
              </th>
              <td>{names.get(lane.family) ?? missing}</td>
              <td>{cameFrom(lane)}</td>
              <td>{dayTight(lane.start)}</td>
              <td>{lane.how === 'alive' ? missing : dayTight(lane.until)}</td>
              <td>{lane.how === 'alive' ? words.alive : familyWords.ending(lane.how, lane.causes, lane.intoLabel)}</td>
              <td>{lane.queens.length === 0 ? missing : lane.queens.map(({ day, queen }) => `${queen.colour === null ? 'year not known' : `${queen.colour} ${queen.year}`}, ${dayTight(day)}`).join('; ')}</td>
              <td>{lane.moves.length === 0 ? missing : lane.moves.map(({ day, to }) => `${familyWords.movedTo(to)}, ${dayTight(day)}`).join('; ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function cameFrom(lane: FamilyLane): string {
  return lane.origin === 'split' && lane.motherLabel !== null ? words.splitFrom(lane.motherLabel) : lane.origin;
}
