import { Link, useLocation } from 'wouter';
import { needsPages } from './needsPages.ts';
import { words } from './words.ts';

/** The pages of what needs doing, one beside the other. */
export function NeedsNav() {
  const [location] = useLocation();
  return (
    <nav className="stock-parts" aria-label={words.needsPages}>
      {needsPages.map(({ at, name }) => (
        <Link key={at} href={at} aria-current={location === at || (at !== '/needs' && location.startsWith(`${at}/`)) ? 'page' : undefined}>
          {name}
        </Link>
      ))}
    </nav>
  );
}
