import { startTransition, useEffect, useRef, useState, type ReactNode } from 'react';
import { headId, numberOf, reviewContents, type ReviewSectionId } from './reviewContents.ts';
import { reviewWords as words } from './reviewWords.ts';

/** The short table of contents; the address belongs to the screen, so the jump is made by hand. */
export function ReviewContents() {
  return (
    <nav className="review-contents no-print" aria-label={words.contents}>
      <ol>
        {reviewContents.map(({ id, title }) => (
          <li key={id}>
            <button type="button" className="link" onClick={() => jumpTo(headId(id))}>
              {title}
            </button>
          </li>
        ))}
      </ol>
    </nav>
  );
}

function jumpTo(id: string): void {
  const head = document.getElementById(id);
  head?.scrollIntoView({ block: 'start' });
  head?.focus({ preventScroll: true });
}

/**
 * One numbered section. What is in it is only asked for when the section comes near, or in an idle moment after
 * the ones before it, so that a large book opens at once and the whole page is there to be printed.
 */
export function ReviewSection({ id, children }: { readonly id: ReviewSectionId; readonly children: ReactNode }) {
  const number = numberOf(id);
  const title = reviewContents[number - 1]?.title ?? '';
  const [place, near] = useNear(number - 1);
  return (
    <section ref={place} className="review-section" aria-label={title}>
      <h2 id={headId(id)} tabIndex={-1}>
        <span className="review-number">{number}</span> {title}
      </h2>
      {near ? children : <p className="soft review-waiting">{words.reading}</p>}
    </section>
  );
}

function useNear(turn: number): [React.RefObject<HTMLElement | null>, boolean] {
  const place = useRef<HTMLElement>(null);
  const [near, setNear] = useState(turn === 0);
  useEffect(() => {
    if (near) return undefined;
    // What is known already is drawn in slices, like what has still to be read.
    const come = () => startTransition(() => setNear(true));
    const seen = new IntersectionObserver((entries) => entries.some((entry) => entry.isIntersecting) && come(), { rootMargin: '400px' });
    if (place.current) seen.observe(place.current);
    const idle = requestIdleCallback(come, { timeout: 600 * turn });
    return () => {
      seen.disconnect();
      cancelIdleCallback(idle);
    };
  }, [near, turn]);
  return [place, near];
}
