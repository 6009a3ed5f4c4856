import { useId } from 'react';
import { Link } from 'wouter';
import type { ColonyLink, ColonyStory } from '#shared/contract/colonies.ts';
import { dayText } from '../../parts/format.ts';
import { storyWords as words } from './storyWords.ts';
import { words as listWords } from './words.ts';

/** Who it came from and what came from it, each with the day and how that one is now. */
export function Descent({ story }: { readonly story: ColonyStory }) {
  const id = useId();
  const before = story.ancestors.slice(1);
  const none = !story.mother && story.daughters.length === 0 && story.unitedFrom.length === 0 && !story.unitedInto;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{words.descent}</h2>
      {none ? <p className="soft">{words.descentNone}</p> : null}
      <dl className="descent">
        <Links name={words.mother} links={story.mother ? [story.mother] : []} />
        <Links name={words.ancestors} links={before} />
        <Links name={words.daughters} links={story.daughters} />
        <Links name={words.unitedFrom} links={story.unitedFrom} />
        <Links name={words.unitedInto} links={story.unitedInto ? [story.unitedInto] : []} />
      </dl>
    </section>
  );
}

function Links({ name, links }: { readonly name: string; readonly links: readonly ColonyLink[] }) {
  if (links.length === 0) return null;
  return (
    <>
      <dt>{name}</dt>
      {links.map((link) => (
        <dd key={`${link.id}-${link.day}`}>
          <Link href={`/colonies/${link.id}`}>{link.label}</Link>, {dayText(link.day)}
          <span className="soft">, {listWords.endings[link.how]}</span>
        </dd>
      ))}
    </>
  );
}
