import { useId } from 'react';
import { Link } from 'wouter';
import type { QueenLink, QueenStory } from '#shared/contract/queens.ts';
import { dayText } from '../../parts/format.ts';
import { QueenMark } from '../../parts/QueenMark.tsx';
import { words } from './words.ts';

/** Her mother and her daughters, as far as the record tells. */
export function QueenKin({ story: { mother, daughters } }: { readonly story: QueenStory }) {
  const id = useId();
  const own = useId();
  return (
    <div className="stack">
      <section aria-labelledby={id}>
        <h2 id={id}>{words.mother}</h2>
        <p>{mother === null ? <span className="soft">{words.motherUnknown}</span> : <QueenName link={mother} />}</p>
      </section>
      <section aria-labelledby={own}>
        <h2 id={own}>{words.daughters}</h2>
      {daughters.length === 0 ? <p className="soft">{words.daughtersNone}</p> : null}
      <ul className="kin">
        {daughters.map((daughter) => (
          <li key={daughter.queen.id}>
            <QueenName link={daughter} />
            <span className="soft">
              , {words.how[daughter.how]}, {dayText(daughter.day)}
            </span>
          </li>
        ))}
      </ul>
      </section>
    </div>
  );
}

function QueenName({ link: { queen, colony } }: { readonly link: QueenLink }) {
  return (
    <Link href={`/queens/${queen.id}`}>
      <QueenMark queen={queen} /> <bdi>{words.motherIn(colony.label)}</bdi>
    </Link>
  );
}
