import { Link, useLocation } from 'wouter';
import { words } from './words.ts';
import { workPages } from './workPages.ts';

/** The pages of the work, one beside the other. */
export function WorkNav() {
  const [location] = useLocation();
  return (
    <nav className="stock-parts" aria-label={words.pages}>
      {workPages.map(({ at, name }) => (
        <Link key={at} href={at} aria-current={location === at ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
